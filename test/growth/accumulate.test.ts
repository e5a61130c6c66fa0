import fc from "fast-check";
import { expect, test } from "vitest";
import type { Climate } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { accumulate, between, lightShare, response } from "../../src/growth/index.ts";

const { crops, settings } = catalogue();

const DAYS = 6;
const hourly = (min: number, max: number): fc.Arbitrary<Float64Array> =>
  fc
    .array(fc.double({ min, max, noNaN: true }), { minLength: DAYS * 24, maxLength: DAYS * 24 })
    .map((values) => Float64Array.from(values));

const climates = fc
  .record({ growing: hourly(-60, 60), radiation: hourly(0, 1100) })
  .map(({ growing, radiation }): Climate => {
    const same = growing.slice();
    return { from: 5, growing, radiation, seedbed: same, frost: same, frostPromised: same, heat: same };
  });
const crop = fc.constantFrom(...crops.values());
const mornings = Array.from({ length: DAYS }, (_, day) => 5 + 7 + 24 * day);
const hour = fc.integer({ min: 5, max: 5 + DAYS * 24 });

test("splitting a stretch anywhere keeps its sum", () => {
  fc.assert(
    fc.property(climates, crop, hour, hour, hour, (climate, of, ...marks) => {
      const [a, b, c] = marks.sort((x, y) => x - y) as [number, number, number];
      const sums = accumulate(of, climate, mornings, settings);
      for (const sum of [sums.thermalTime, sums.pace, sums.light, sums.heat]) {
        const parts = between(sum, sums.from, a, b) + between(sum, sums.from, b, c);
        expect(parts).toBeCloseTo(between(sum, sums.from, a, c), 8);
      }
    }),
    { seed: 1, numRuns: 50 },
  );
});

test("sums are numbers that never fall, and pace never passes thermal time", () => {
  fc.assert(
    fc.property(climates, crop, (climate, of) => {
      const { thermalTime, pace, light, heat } = accumulate(of, climate, mornings, settings);
      for (const sum of [thermalTime, pace, light, heat]) {
        expect(sum.every((value, i) => Number.isFinite(value) && value >= (sum[i - 1] ?? 0) - 1e-9)).toBe(
          true,
        );
      }
      expect(pace.every((value, i) => value <= thermalTime[i]! + 1e-9)).toBe(true);
    }),
    { seed: 1, numRuns: 50 },
  );
});

test("a whole day from morning to morning earns its thermal time times the share its light allows", () => {
  fc.assert(
    fc.property(climates, crop, fc.integer({ min: 0, max: DAYS - 2 }), (climate, of, day) => {
      const [from, to] = [mornings[day]!, mornings[day + 1]!];
      let [warmth, sun] = [0, 0];
      for (let i = from - 5; i < to - 5; i++) {
        warmth += response(climate.growing[i]!, of.growth) / 24;
        sun += climate.radiation[i]! * 0.0036;
      }
      const { pace } = accumulate(of, climate, mornings, settings);
      expect(between(pace, 5, from, to)).toBeCloseTo(warmth * lightShare(warmth, sun, of.lightOnPace), 8);
    }),
    { seed: 1, numRuns: 50 },
  );
});
