import { describe, expect, it } from "vitest";
import { ALONE, evaluate, NOW, type Priced, searcher } from "../src/decide/index.ts";
import { replay } from "../src/play.ts";
import { randomProblem } from "./decide/randomProblem.ts";

const BREACH = 1e5;

describe("a plan changed by hand", () => {
  it("is worth what the search says when nothing is changed, and never more than the best", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const problem = randomProblem(seed);
      let found: Priced | null = null;
      const floor = (): number => found?.worth ?? Number.NEGATIVE_INFINITY;
      searcher(problem).search(ALONE(problem, BREACH), floor, (better) => {
        found = better;
      });
      const { schedule, worth } = found!;
      const best = replay(problem, schedule);
      expect(best.worth).toBe(evaluate(problem, schedule).worth);
      expect(best.worth - BREACH * best.gravity).toBeCloseTo(worth, 6);
      const stay = replay(
        problem,
        schedule.map(() => NOW),
      );
      expect(stay.gravity > best.gravity || stay.worth <= best.worth + 1e-6).toBe(true);
    }
  });

  it("refuses a schedule of another length", () => {
    const problem = randomProblem(1);
    expect(() => replay(problem, [])).toThrow(`expected ${problem.intervals} lays`);
  });
});
