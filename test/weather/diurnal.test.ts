import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CURVES, catalogue } from "../../src/farm/index.ts";
import { response } from "../../src/growth/index.ts";
import {
  DIURNALS,
  type Diurnal,
  goudriaanVanLaar,
  linvill,
  partonLogan,
  type Turning,
} from "../../src/weather/index.ts";
import published from "../published/diurnal.json" with { type: "json" };
import { scoreOf } from "../real/hourlyNormals.ts";

const { rise, length, low, high } = published.goudriaanVanLaar;
const day = (number: number): Turning => ({ rise: rise + 24 * number, length, low, high });

/** One day repeated, by the clock: before sunrise it is still the night of the day before. */
const at = (curve: Diurnal, hour: number): number =>
  hour < rise ? curve(day(-1), day(0), hour) : curve(day(0), day(1), hour);

const HALF_DIGIT = 0.5e-6 + 1e-12;

describe.each([
  { name: "Goudriaan and van Laar", curve: goudriaanVanLaar, vector: published.goudriaanVanLaar, from: 0 },
  { name: "Parton and Logan", curve: partonLogan, vector: published.partonLogan, from: 0 },
  { name: "Linvill", curve: linvill, vector: published.linvill, from: rise },
])("the curve of $name", ({ curve, vector, from }) => {
  test.each(vector.points)("at %d h is the %d °C of the derived vector", (hour, temperature) => {
    expect(Math.abs(at(curve, hour! + from) - temperature!)).toBeLessThanOrEqual(HALF_DIGIT);
  });

  test("has the derived mean over the day", () => {
    const steps = 24_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += at(curve, ((i + 0.5) * 24) / steps);
    expect(Number((sum / steps).toFixed(3))).toBe(vector.mean);
  });
});

describe("the curve of Goudriaan and van Laar", () => {
  test("meets the next minimum exactly, whatever it is", () => {
    for (const nextLow of [-12, 4, 10, 17, 25]) {
      for (const nextRise of [28.5, 30, 31.2]) {
        const next = { rise: nextRise, length: 11, low: nextLow, high: 30 };
        expect(goudriaanVanLaar(day(0), next, nextRise)).toBeCloseTo(nextLow, 12);
      }
    }
  });

  test("begins at its own low and reaches its high an hour and a half after solar noon", () => {
    expect(goudriaanVanLaar(day(0), day(1), rise)).toBe(low);
    expect(goudriaanVanLaar(day(0), day(1), rise + length / 2 + 1.5)).toBe(high);
  });

  test("passes sunset without a step", () => {
    const set = rise + length;
    expect(goudriaanVanLaar(day(0), day(1), set + 1e-9)).toBeCloseTo(
      goudriaanVanLaar(day(0), day(1), set),
      6,
    );
  });
});

const temperature = fc.double({ min: -60, max: 60, noNaN: true });

describe.each(CURVES)("the curve %s", (name) => {
  test("is a temperature for any day, polar and turned upside down too, and stays within what it was given", () => {
    fc.assert(
      fc.property(
        fc.record({
          length: fc.double({ min: 0, max: 24, noNaN: true }),
          low: temperature,
          high: temperature,
        }),
        fc.record({ low: temperature, late: fc.double({ min: 0, max: 1, noNaN: true }) }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (today, next, share) => {
          const nextRise = Math.max(24 + next.late, today.length);
          const found = DIURNALS[name](
            { rise: 0, ...today },
            { rise: nextRise, length: today.length, low: next.low, high: today.high },
            share * nextRise,
          );
          const all = [today.low, today.high, next.low];
          // The sines begin at the low or, for one of them, a little before it.
          const slack = Math.abs(today.high - today.low) + 1e-9;
          expect(found).toBeGreaterThanOrEqual(Math.min(...all) - slack);
          expect(found).toBeLessThanOrEqual(Math.max(...all) + slack);
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });

  test("is level on a day whose low is its high and the next low", () => {
    const level = { rise: 6, length: 12, low: 9, high: 9 };
    for (let hour = 6; hour <= 30; hour += 0.5) {
      expect(DIURNALS[name](level, { ...level, rise: 30 }, hour)).toBeCloseTo(9, 12);
    }
  });
});

test("the default comes nearest to the hourly normals of Seattle in thermal time and in the mean, if not hour by hour", () => {
  const { growth } = catalogue().crops.get("lettuce-mix")!;
  const [own, ...others] = CURVES.map((name) => scoreOf(DIURNALS[name], (each) => response(each, growth)));
  for (const other of others) {
    expect(Math.abs(own!.thermalTime)).toBeLessThan(Math.abs(other.thermalTime));
    expect(Math.abs(own!.bias)).toBeLessThan(Math.abs(other.bias));
    expect(own!.rmse).toBeGreaterThan(other.rmse);
  }
});
