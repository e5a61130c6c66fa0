import { describe, expect, it } from "vitest";
import { ALONE, evaluate, searcher } from "../../src/decide/index.ts";
import { randomProblem } from "./randomProblem.ts";

const BREACH = 1e5;

describe("the search for one tunnel's schedule", () => {
  it("finds the same in the same order whenever it is asked", () => {
    for (let seed = 1; seed <= 10; seed++) {
      const problem = randomProblem(seed);
      const ask = () => searcher(problem).search(ALONE(problem, BREACH), 5, Number.NEGATIVE_INFINITY);
      expect(ask()).toEqual(ask());
    }
  });

  it("prices what it finds as evaluating it does", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const problem = randomProblem(seed);
      const { found } = searcher(problem).search(ALONE(problem, BREACH), 20, Number.NEGATIVE_INFINITY);
      expect(found.length).toBeGreaterThan(0);
      for (const { schedule, cuts, worth } of found) {
        const { worth: own, gravity } = evaluate(problem, schedule, cuts);
        expect(own - BREACH * gravity).toBeCloseTo(worth, 6);
      }
    }
  });
});
