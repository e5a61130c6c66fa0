import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { linearSpread, shadeFactor, warmthFactor } from "../../src/learn/index.ts";
import { coverTrials } from "../proof/coverTrials.ts";

const { settings } = catalogue();
const { warmthSpread, shadeSpread, warmthFloor } = settings;
const pair = (expected: number, measured: number, error = 0.5) => ({ expected, measured, error });

describe("what a cover does on this farm", () => {
  it("is the catalogue's while nothing was measured, and near it with few pairs", () => {
    expect(warmthFactor(warmthSpread, warmthFloor, [])).toMatchObject({
      factor: 1,
      spread: warmthSpread,
      own: 0,
    });
    const little = warmthFactor(warmthSpread, warmthFloor, [pair(0.5, 0.2)]);
    expect(little.factor).toBeGreaterThan(0.95);
    expect(little.own).toBeLessThan(0.1);
  });

  // The conjugate normal answer, textbook.
  it("of shade is the mean weighed with the catalogue's, and as much the farm's own as it weighs", () => {
    const pairs = [pair(-20, -10, 10), pair(-20, -6, 10)];
    const information = 8;
    const prior = 1 / linearSpread(shadeSpread) ** 2;
    const { factor, own } = shadeFactor(shadeSpread, 0, pairs);
    expect(factor).toBeCloseTo((information * 0.4 + prior) / (information + prior), 12);
    expect(own).toBeCloseTo(information / (information + prior), 12);
  });

  it("never lies further off than three spreads, whatever a logger in the sun says", () => {
    const hot = Array.from({ length: 60 }, () => pair(2, 16));
    expect(warmthFactor(warmthSpread, warmthFloor, hot).factor).toBeCloseTo(Math.exp(3 * warmthSpread), 12);
  });

  it("is the same in any order of its pairs", () => {
    const pairs = Array.from({ length: 30 }, (_, i) => pair(1 + (i % 7), 0.5 + (i % 5) * 0.7));
    expect(warmthFactor(warmthSpread, warmthFloor, [...pairs].reverse())).toEqual(
      warmthFactor(warmthSpread, warmthFloor, pairs),
    );
  });

  it("is told from ten measured pairs: half the warmth, no shade at all, and the catalogue's own", () => {
    for (const { what, truth, low, high, before, inside, seeds } of coverTrials(60)) {
      expect(low, what).toBeLessThanOrEqual(truth);
      expect(high, what).toBeGreaterThanOrEqual(truth);
      expect(high - low, what).toBeLessThanOrEqual(before / 2);
      expect(inside / seeds, what).toBeGreaterThan(0.6);
    }
  });
});
