import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  crpsFair,
  crpsMembers,
  crpsNormal,
  intervalScore,
  normalBelow,
  pinball,
  quantile,
  sumVariance,
} from "../../src/learn/index.ts";
import { scoresOfForecasts } from "../proof/accuracy/scores.ts";

const FIVE = [21, 22, 22, 24, 27];

test.each(scoresOfForecasts.checks.map((check) => [check.what, check] as const))("%s", (_, check) => {
  expect(Math.abs(check.ours() - (check.published as number))).toBeLessThanOrEqual(check.tolerance);
});

describe("scores", () => {
  test("of a normal forecast are what twice the pinball loss over all quantiles comes to", () => {
    // Middle points of a fine division; 0.602441 is the value section 7.4 checked numerically.
    const steps = 20_000;
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      const p = (k + 0.5) / steps;
      let [low, high] = [-10, 10];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (normalBelow(middle) < p) low = middle;
        else high = middle;
      }
      sum += (2 * pinball(p, low, 1)) / steps;
    }
    expect(sum).toBeCloseTo(crpsNormal(0, 1, 1), 4);
  });

  test("of members, however many and wherever, are what all pairs come to, and never below 0", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 2, maxLength: 20 }),
        fc.integer({ min: -500, max: 500 }),
        (members, outcome) => {
          let pairs = 0;
          for (const a of members) for (const b of members) pairs += Math.abs(a - b);
          const off = members.reduce((sum, a) => sum + Math.abs(a - outcome), 0) / members.length;
          expect(crpsMembers(members, outcome)).toBeCloseTo(off - pairs / (2 * members.length ** 2), 8);
          expect(crpsMembers(members, outcome)).toBeGreaterThanOrEqual(-1e-9);
          expect(crpsFair(members, outcome)).toBeLessThanOrEqual(crpsMembers(members, outcome) + 1e-9);
        },
      ),
      { numRuns: 200, seed: 11 },
    );
  });

  test("grow with every step of an outcome beyond a range", () => {
    const scores = [20, 23, 26, 27, 28].map((outcome) => intervalScore(20, 26, 0.8, outcome));
    expect(scores.map((score) => Number(score.toFixed(9)))).toEqual([6, 6, 6, 16, 26]);
  });

  test("of errors that keep a part of themselves are what the covariances of all pairs of days come to", () => {
    for (const kept of [0, 0.3, 0.64, 0.9]) {
      let sum = 0;
      for (let i = 0; i < 14; i++) for (let j = 0; j < 14; j++) sum += 4 * kept ** Math.abs(i - j);
      expect(sumVariance(2, kept, 14)).toBeCloseTo(sum, 9);
    }
  });

  test("leave the members as they are given", () => {
    const given = [...FIVE].reverse();
    crpsMembers(given, 23);
    expect(given).toEqual([...FIVE].reverse());
    expect(quantile(FIVE, 0)).toBe(21);
    expect(quantile(FIVE, 1)).toBe(27);
  });
});
