import { beforeAll, describe, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { course } from "../../src/decide/index.ts";
import { exampleWeek } from "../sheet/exampleWeek.ts";
import { sample } from "../sheet/sample.ts";

describe("the course of a leaf over the days planned, on the example farm", () => {
  let outcome: Outcome;
  beforeAll(async () => {
    outcome = await exampleWeek();
  });

  test("has at every pick the length the answer gives there, with the plan and left as it is", () => {
    let compared = 0;
    for (const outlook of outcome.successions) {
      const points = course(outcome, outlook);
      for (const { pick, planned, unchanged } of outlook.atPicks.filter(({ pick }) => pick.planned)) {
        const point = points.find(({ at }) => at === pick.at);
        if (point === undefined || point.planned === null || point.unchanged === null) continue;
        expect(point.planned).toBeCloseTo(planned.middle, 10);
        expect(point.unchanged).toBeCloseTo(unchanged.middle, 10);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(20);
  });

  test("has where the plan cuts it the length the answer gives there", () => {
    const cut = outcome.successions.filter(({ fate, atFate }) => fate.kind === "hold" && atFate !== null);
    expect(cut.length).toBeGreaterThan(3);
    for (const outlook of cut) {
      const at = outlook.fate.kind === "hold" ? outlook.fate.cut : null;
      const point = course(outcome, outlook).find((each) => each.at === at);
      expect(point?.planned).toBeCloseTo(outlook.atFate!.size.middle, 10);
    }
  });

  test("begins at the first walk, ends with the days planned, and never shrinks", () => {
    for (const outlook of outcome.successions) {
      const points = course(outcome, outlook);
      expect([points[0]?.at, points.at(-1)?.at]).toEqual([outcome.walks[0]!.at, outcome.air!.until]);
      const lengths = points.map(({ planned }) => planned ?? 0);
      expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
    }
  });
});

test("a succession that does not grow in the time looked at has no course", () => {
  const outcome = sample();
  expect(outcome.successions.map((outlook) => course(outcome, outlook))).toEqual([[], [], [], [], []]);
});
