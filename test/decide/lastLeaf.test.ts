import { describe, expect, test } from "vitest";
import { type Cases, lastLeafDraws, ownTime, timeOf } from "../../src/decide/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { leafCurve, leafLength, thermalTimeAt } from "../../src/growth/index.ts";
import { normalQuantile } from "../../src/learn/index.ts";
import { centimetre, degreeDays } from "../../src/quantity/index.ts";
import { draws } from "../../src/weather/index.ts";
import { gauss } from "../real/foretold.ts";

const { crops, settings } = catalogue();
const arugula = crops.get("arugula")!;
const curve = leafCurve(arugula, arugula.requirement, settings);
const exact = { ...settings, spreadFloor: 0 };
const CASES = 1024;

/** What one leaf makes of a requirement of its own: a normal prior and one normal reading of it, textbook. */
function afterLeaf(
  length: number,
  counted: number,
  given: typeof settings,
  guess: { before: number; since: number },
) {
  const grown = thermalTimeAt(curve, centimetre(length));
  const at = (error: number): number => Math.log(thermalTimeAt(curve, centimetre(length * Math.exp(error))));
  const measuring = (at(given.leafError) - at(-given.leafError)) / 2;
  const [prior, reading] = [
    arugula.requirementSpread ** 2,
    given.thermalError ** 2 + guess.before ** 2 + measuring ** 2,
  ];
  const shift = (prior / (prior + reading)) * Math.log(counted / grown);
  const spread = Math.hypot(Math.sqrt((prior * reading) / (prior + reading)), guess.since);
  const head = grown * Math.exp(shift) - counted;
  return { shift, spread: Math.max(given.spreadFloor, spread), head, surprising: false, measured: 1 };
}

/** A bed whose leaf of some length was measured when the model had given it so much. */
function cases(length: number, counted: number, given = exact, guess = { before: 0, since: 0 }): Cases {
  const belief = afterLeaf(length, counted, given, guess);
  const draw = draws(given.seed, "requirement bed");
  const requirements = Float64Array.from({ length: CASES }, (_, i) =>
    Math.exp(belief.shift + belief.spread * normalQuantile(draw(i))),
  );
  return { requirements, leaf: lastLeafDraws(curve, belief, counted, guess, requirements, "bed", given) };
}

/** Mean and standard deviation. */
function moments(values: readonly number[]): readonly [number, number] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return [mean, Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)];
}

const logs = (of: Cases, more: number): readonly number[] =>
  Array.from(of.requirements, (_, i) => Math.log(ownTime(of, i, of.leaf!.thermalTime + more)));

describe("a bed whose leaf was measured", () => {
  const counted = thermalTimeAt(curve, centimetre(8)) * 1.1;
  const measured = cases(8, counted);

  test("has that leaf on the middle of all cases, as surely as it was measured", () => {
    const [mean, spread] = moments(logs(measured, 0));
    expect(leafLength(curve, Math.exp(mean))).toBeCloseTo(8, 1);
    const at = (error: number): number => Math.log(thermalTimeAt(curve, centimetre(8 * Math.exp(error))));
    const measuring = (at(settings.leafError) - at(-settings.leafError)) / 2;
    expect(spread).toBeLessThan(measuring);
    expect(spread).toBeGreaterThan(0.85 * measuring);
  });

  test("grows on as its requirement has it: what comes after the leaf is less sure than the leaf", () => {
    const part = (more: number): number => moments(logs(measured, more))[1];
    expect(part(200)).toBeGreaterThan(part(0));
    expect(part(5000)).toBeCloseTo(moments([...measured.requirements].map(Math.log))[1], 1);
  });

  test("is less sure where days without a log lie before or since", () => {
    const since = moments(logs(cases(8, counted, exact, { before: 0, since: 0.1 }), 0))[1];
    expect(since).toBeGreaterThan(Math.hypot(moments(logs(measured, 0))[1], 0.08));
  });

  test("has as large a leaf at the end as beds drawn at random and measured like it, in four cases of five", () => {
    const numbers = gauss(7);
    const normal = (): number => numbers.next().value;
    let [within, all] = [0, 0];
    for (let k = 0; k < 400; k++) {
      const requirement = Math.exp(arugula.requirementSpread * normal());
      const warmer = Math.exp(settings.thermalError * normal());
      const grown = (counted * warmer) / requirement;
      const seen = leafLength(curve, grown) * Math.exp(settings.leafError * normal());
      const believed = cases(seen, counted);
      const end = grown + 60 / requirement;
      const times = Float64Array.from(believed.requirements, (_, i) =>
        ownTime(believed, i, believed.leaf!.thermalTime + 60),
      ).sort();
      all += 1;
      if (end >= times[Math.floor(0.1 * CASES)]! && end <= times[Math.floor(0.9 * CASES)]!) within += 1;
    }
    // Two standard deviations of the binomial at 0.8.
    expect(Math.abs(within / all - 0.8)).toBeLessThan(0.04);
  });
});

test("thermal time and what a case has grown lead to each other", () => {
  const measured = cases(6, thermalTimeAt(curve, centimetre(6)));
  const unmeasured = { ...measured, leaf: null };
  for (const of of [measured, unmeasured])
    for (const i of [0, 1, 17]) {
      for (const time of [10, 150, 400, 900])
        expect(timeOf(of, i, ownTime(of, i, time))).toBeCloseTo(time, 6);
      const [a, b, c] = [100, 300, 500].map((time) => ownTime(of, i, degreeDays(time)));
      expect(a!).toBeLessThan(b!);
      expect(b!).toBeLessThan(c!);
    }
});
