import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { leafCurve, leafLength } from "../../src/growth/index.ts";
import { learnFromLeaves, normalBelow, normalQuantile } from "../../src/learn/index.ts";
import { degreeDays } from "../../src/quantity/index.ts";

const { crops, settings } = catalogue();
const crop = crops.get("lettuce-mix")!;
const curve = leafCurve(crop, crop.requirement, settings);
/** A leaf as long as a bed would have that needs some more thermal time than the catalogue says. */
const leafOf = (thermalTime: number, ratio: number) => ({
  thermalTime,
  length: leafLength(curve, thermalTime / ratio),
});

describe("learning a requirement from measured leaves", () => {
  it("believes the catalogue when nothing was measured", () => {
    expect(learnFromLeaves(0.1, curve, [], settings)).toEqual({
      shift: 0,
      spread: 0.1,
      head: 0,
      surprising: false,
      measured: 0,
    });
  });

  it("moves towards what was seen and grows surer, never past what was seen", () => {
    const slow = leafOf(250, 1.2);
    const once = learnFromLeaves(0.15, curve, [slow], settings);
    const thrice = learnFromLeaves(0.15, curve, [slow, slow, slow], settings);
    expect(once.shift).toBeGreaterThan(0);
    expect(thrice.shift).toBeGreaterThan(once.shift);
    expect(thrice.shift).toBeLessThan(Math.log(1.2) + 1e-9);
    expect(thrice.spread).toBeLessThan(once.spread);
    expect(thrice.measured).toBe(3);
  });

  it("gives the same belief whatever the order of measuring", () => {
    const leaves = [leafOf(180, 1.1), leafOf(240, 0.9), leafOf(300, 1.05)];
    const forth = learnFromLeaves(0.2, curve, leaves, settings);
    const back = learnFromLeaves(0.2, curve, [...leaves].reverse(), settings);
    expect(back.shift).toBeCloseTo(forth.shift, 12);
    expect(back.spread).toBeCloseTo(forth.spread, 12);
  });

  it("has the bed as long as the last leaf measured, and calls a leaf far from all expectation surprising", () => {
    for (const ratio of [0.5, 0.9, 1, 1.3, 2.5]) {
      const leaf = leafOf(200, ratio);
      const { shift, head, surprising } = learnFromLeaves(0.1, curve, [leaf], settings);
      expect(leafLength(curve, (leaf.thermalTime + head) * Math.exp(-shift))).toBeCloseTo(leaf.length, 6);
      expect(Math.abs(shift)).toBeLessThanOrEqual(0.2 + 1e-12);
      expect(surprising).toBe(ratio === 0.5 || ratio === 2.5);
    }
  });

  it("never becomes surer than the floor", () => {
    const many = Array.from({ length: 200 }, () => leafOf(260, 1));
    expect(learnFromLeaves(0.2, curve, many, settings).spread).toBe(settings.spreadFloor);
  });

  it("answers with the normal distribution of the tables", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.1, table of the normal distribution: 1.28 → 0.89973, 1.96 → 0.97500.
    expect(normalBelow(1.28)).toBeCloseTo(0.89973, 5);
    expect(normalBelow(1.96)).toBeCloseTo(0.975, 5);
    expect(normalQuantile(0.975)).toBeCloseTo(1.96, 2);
  });

  it("finds the thermal time again that a length came from", () => {
    for (const thermalTime of [120, 200, 303, 380]) {
      expect(learnFromLeaves(0.2, curve, [leafOf(thermalTime, 1)], settings).shift).toBeCloseTo(0, 6);
    }
    expect(leafLength(curve, degreeDays(crop.requirement))).toBeCloseTo(crop.smallest, 9);
  });
});
