import { describe, expect, it } from "vitest";
import { ALONE, evaluate, NOW, searcher } from "../src/decide/index.ts";
import { replay } from "../src/play.ts";
import { randomProblem } from "./decide/randomProblem.ts";

const BREACH = 1e5;

describe("a plan changed by hand", () => {
  it("is worth what the search says when nothing is changed, and never more than the best", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const problem = randomProblem(seed);
      const { found } = searcher(problem).search(ALONE(problem, BREACH), 1, Number.NEGATIVE_INFINITY);
      const { schedule, worth } = found[0]!;
      const best = replay(problem, schedule);
      expect(best.worth).toBe(evaluate(problem, schedule).worth);
      expect(best.worth - BREACH * best.gravity).toBeCloseTo(worth, 6);
      const stay = replay(
        problem,
        schedule.map(() => NOW),
      );
      // The grower may keep something else from a walk on.
      const may = schedule.every((_, i) => problem.possible[i * problem.lays.length + NOW]);
      expect(!may || stay.gravity > best.gravity || stay.worth <= best.worth + 1e-6).toBe(true);
    }
  });

  it("refuses a schedule of another length", () => {
    const problem = randomProblem(1);
    expect(() => replay(problem, [])).toThrow(`expected ${problem.intervals} lays`);
  });
});
