import { describe, expect, it } from "vitest";
import { bestSchedule, evaluate } from "../src/decide/index.ts";
import { replay } from "../src/play.ts";
import { randomProblem } from "./decide/randomProblem.ts";

describe("a plan changed by hand", () => {
  it("is worth what the search says when nothing is changed, and never more than the best", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const problem = randomProblem(seed);
      const { choice } = bestSchedule(problem);
      const best = replay(problem, choice);
      expect(best.worth).toBe(evaluate(problem, choice).worth);
      const stay = replay(
        problem,
        choice.map(() => problem.now),
      );
      expect(stay.gravity > best.gravity || stay.worth <= best.worth + 1e-6).toBe(true);
    }
  });

  it("refuses a schedule of another length", () => {
    const problem = randomProblem(1);
    expect(() => replay(problem, [])).toThrow(`expected ${problem.intervals} settings`);
  });
});
