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
  guess: 0,
  length: leafLength(curve, thermalTime / ratio),
});

describe("learning a requirement from measured leaves", () => {
  it("believes the catalogue when nothing was measured", () => {
    expect(learnFromLeaves(0.1, 0, curve, [], settings)).toEqual({
      shift: 0,
      spread: 0.1,
      head: 0,
      surprising: false,
      measured: 0,
    });
  });

  it("moves towards what was seen and grows surer, never past what was seen", () => {
    const slow = leafOf(250, 1.2);
    const once = learnFromLeaves(0.15, 0, curve, [slow], settings);
    const thrice = learnFromLeaves(0.15, 0, curve, [slow, slow, slow], settings);
    expect(once.shift).toBeGreaterThan(0);
    expect(thrice.shift).toBeGreaterThan(once.shift);
    expect(thrice.shift).toBeLessThan(Math.log(1.2) + 1e-9);
    expect(thrice.spread).toBeLessThan(once.spread);
    expect(thrice.measured).toBe(3);
  });

  it("gives the same belief whatever the order of measuring", () => {
    const leaves = [leafOf(180, 1.1), leafOf(240, 0.9), leafOf(300, 1.05)];
    const forth = learnFromLeaves(0.2, 0, curve, leaves, settings);
    const back = learnFromLeaves(0.2, 0, curve, [...leaves].reverse(), settings);
    expect(back.shift).toBeCloseTo(forth.shift, 12);
    expect(back.spread).toBeCloseTo(forth.spread, 12);
  });

  it("has the bed as long as the last leaf measured, and calls a leaf far from all expectation surprising", () => {
    for (const ratio of [0.5, 0.9, 1, 1.3, 2.5]) {
      const leaf = leafOf(200, ratio);
      const { shift, head, surprising } = learnFromLeaves(0.1, 0, curve, [leaf], settings);
      expect(leafLength(curve, (leaf.thermalTime + head) * Math.exp(-shift))).toBeCloseTo(leaf.length, 6);
      expect(Math.abs(shift)).toBeLessThanOrEqual(0.2 + 1e-12);
      expect(surprising).toBe(ratio === 0.5 || ratio === 2.5);
    }
  });

  it("learns less from a leaf whose thermal time is guessed, and still has the bed as long as that leaf", () => {
    const leaf = leafOf(250, 1.3);
    const guessed = { ...leaf, guess: 0.2 };
    const sure = learnFromLeaves(0.15, 0, curve, [leaf], settings);
    const unsure = learnFromLeaves(0.15, 0, curve, [guessed], settings);
    expect(unsure.shift).toBeLessThan(sure.shift);
    expect(unsure.spread).toBeGreaterThan(sure.spread);
    expect(leafLength(curve, (250 + unsure.head) * Math.exp(-unsure.shift))).toBeCloseTo(leaf.length, 6);
  });

  it("spreads wider by what is guessed since the last leaf, or since sowing", () => {
    expect(learnFromLeaves(0.15, 0.2, curve, [], settings).spread).toBeCloseTo(0.25, 12);
  });

  it("takes the size of a leaf measured before the model had anything grow", () => {
    const { head, measured } = learnFromLeaves(
      0.15,
      0,
      curve,
      [{ ...leafOf(100, 1), thermalTime: 0 }],
      settings,
    );
    expect([head.toFixed(6), measured]).toEqual(["100.000000", 1]);
  });

  it("never becomes surer than the floor", () => {
    const many = Array.from({ length: 200 }, () => leafOf(260, 1));
    expect(learnFromLeaves(0.2, 0, curve, many, settings).spread).toBe(settings.spreadFloor);
  });

  it("answers with the normal distribution of the tables", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.1, table of the normal distribution: 1.28 → 0.89973, 1.96 → 0.97500.
    expect(normalBelow(1.28)).toBeCloseTo(0.89973, 5);
    expect(normalBelow(1.96)).toBeCloseTo(0.975, 5);
    expect(normalQuantile(0.975)).toBeCloseTo(1.96, 2);
  });

  it("finds the thermal time again that a length came from", () => {
    for (const thermalTime of [120, 200, 303, 380]) {
      expect(learnFromLeaves(0.2, 0, curve, [leafOf(thermalTime, 1)], settings).shift).toBeCloseTo(0, 6);
    }
    expect(leafLength(curve, degreeDays(crop.requirement))).toBeCloseTo(crop.smallest, 9);
  });
});
