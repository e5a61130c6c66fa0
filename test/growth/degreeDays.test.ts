import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { COUNTINGS, CUT_OFFS } from "../../src/farm/index.ts";
import {
  clampedAverage,
  countedDay,
  type DayShape,
  doubleDegreeDays,
  fourCaseDegreeDays,
  simpleAverage,
  singleDegreeDays,
} from "../../src/growth/index.ts";
import { celsius } from "../../src/quantity/index.ts";
import vectors from "../published/degree-days-1.3.json" with { type: "json" };
import fahrenheit from "../published/degree-days-86-50.json" with { type: "json" };
import averages from "../published/degree-days-average.json" with { type: "json" };
import { integrated } from "./integrated.ts";

/** Half of the last printed digit of the vectors, with room for the binary fraction. [°C·d] */
const HALF_DIGIT = 0.5e-6 + 1e-12;

const shapeOf = (shape: string): DayShape => (shape === "sine" ? "sine" : "triangle");

describe("degree-days of one day against the derived vectors", () => {
  test.each(vectors.single)(
    "single $shape, case $case, $low to $high °C",
    ({ shape, low, high, lower, upper, ...row }) => {
      for (const cutOff of CUT_OFFS) {
        const found = singleDegreeDays({ low, high }, { lower, upper }, shapeOf(shape), cutOff);
        expect(Math.abs(found - row[cutOff]), cutOff).toBeLessThanOrEqual(HALF_DIGIT);
      }
    },
  );

  test.each(vectors.double)(
    "double $shape, $low to $high and down to $next °C",
    ({ shape, low, high, next, lower, upper, ...row }) => {
      for (const cutOff of CUT_OFFS) {
        const found = doubleDegreeDays({ low, high }, next, { lower, upper }, shapeOf(shape), cutOff);
        expect(Math.abs(found - row[cutOff]), cutOff).toBeLessThanOrEqual(HALF_DIGIT);
      }
    },
  );

  test.each(averages.averages)("averages, sine and triangle of $low to $high °C above $base °C", (row) => {
    const thresholds = { lower: row.base, upper: row.upper ?? Number.POSITIVE_INFINITY };
    expect(simpleAverage(row, thresholds)).toBe(row.method1);
    expect(clampedAverage(row, thresholds)).toBe(row.method2);
    for (const shape of ["sine", "triangle"] as const) {
      const found = singleDegreeDays(row, thresholds, shape, "horizontal");
      expect(Math.abs(found - row[shape]), shape).toBeLessThanOrEqual(HALF_DIGIT);
    }
  });

  test.each(averages.fourCase)(
    "four-case formula of $low to $high °C above $base °C",
    ({ low, high, base, result }) => {
      expect(fourCaseDegreeDays({ low, high }, base)).toBe(result);
    },
  );

  test("the four-case formula gives nothing on a day that stays at or below the base", () => {
    expect(fourCaseDegreeDays({ low: -6, high: 4 }, 4)).toBe(0);
  });
});

describe("the 50 to 86 °F average against worked numbers of extension and a course", () => {
  const { lower, upper, days } = fahrenheit;

  test.each(days)("$low to $high °F gives $result ($source)", ({ low, high, result }) => {
    expect(clampedAverage({ low, high }, { lower, upper })).toBe(result);
  });

  test("the column's three days sum as printed", () => {
    const sum = days.slice(0, 3).reduce((total, day) => total + clampedAverage(day, { lower, upper }), 0);
    expect(sum).toBe(fahrenheit.sumOfFirstThree);
  });

  test("no day gives more than the printed most", () => {
    expect(clampedAverage({ low: 90, high: 110 }, { lower, upper })).toBe(fahrenheit.mostPerDay.result);
  });
});

const temperature = fc.double({ min: -60, max: 60, noNaN: true });
const days = fc.record({ low: temperature, high: temperature });
const thresholds = fc
  .tuple(temperature, fc.double({ min: 0, max: 60, noNaN: true }))
  .map(([lower, range]) => ({ lower, upper: lower + range }));
const shapes = fc.constantFrom("sine" as const, "triangle" as const);
const cutOffs = fc.constantFrom(...CUT_OFFS);
const RUNS = { seed: 1, numRuns: 1000 };

describe("degree-days of any day", () => {
  test("are the integral of what each instant earns, to a billionth", () => {
    fc.assert(
      fc.property(days, temperature, thresholds, shapes, cutOffs, (day, next, between, shape, cutOff) => {
        const rising = integrated(day, between, shape, cutOff);
        const falling = integrated({ low: next, high: day.high }, between, shape, cutOff);
        expect(Math.abs(singleDegreeDays(day, between, shape, cutOff) - rising)).toBeLessThan(1e-9);
        const double = doubleDegreeDays(day, next, between, shape, cutOff);
        expect(Math.abs(double - (rising + falling) / 2)).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  test("never fall when the day warms and stays below the upper threshold", () => {
    const warmer = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        days,
        thresholds,
        warmer,
        fc.constantFrom(...COUNTINGS),
        (day, { lower, upper }, by, method) => {
          const top = upper - Math.max(day.low, day.high);
          fc.pre(top > 0);
          const rise = Math.min(by, top);
          const counting = {
            method,
            base: celsius(lower),
            upper: celsius(upper),
            cutOff: "horizontal" as const,
          };
          const cool = countedDay(counting, day, day.low);
          const warm = countedDay(counting, { low: day.low + rise, high: day.high + rise }, day.low + rise);
          expect(warm).toBeGreaterThanOrEqual(cool - 1e-9);
        },
      ),
      RUNS,
    );
  });

  test("pass every threshold without a step, save that the vertical cut-off drops a level day", () => {
    const step = 1e-7;
    fc.assert(
      fc.property(
        days,
        thresholds,
        shapes,
        fc.constantFrom("none" as const, "horizontal" as const, "intermediate" as const),
        (day, { lower, upper }, shape, cutOff) => {
          for (const at of [lower, upper]) {
            for (const extreme of ["low", "high"] as const) {
              const of = (off: number): number =>
                singleDegreeDays({ ...day, [extreme]: at + off }, { lower, upper }, shape, cutOff);
              expect(Math.abs(of(step) - of(-step))).toBeLessThan(4 * step);
            }
          }
        },
      ),
      RUNS,
    );
  });

  test("of the vertical cut-off pass it without a step too when the day is not level", () => {
    const of = (high: number): number =>
      singleDegreeDays({ low: 10, high }, { lower: 4, upper: 24 }, "triangle", "vertical");
    expect(of(24 + 1e-9)).toBeCloseTo(of(24 - 1e-9), 6);
    expect(singleDegreeDays({ low: 24, high: 24 }, { lower: 4, upper: 24 }, "sine", "vertical")).toBe(20);
    expect(singleDegreeDays({ low: 25, high: 25 }, { lower: 4, upper: 24 }, "sine", "vertical")).toBe(0);
  });

  test("are a number by every way of counting, without an upper threshold too", () => {
    fc.assert(
      fc.property(
        days,
        temperature,
        thresholds,
        fc.constantFrom(...COUNTINGS),
        cutOffs,
        (day, next, { lower, upper }, method, cutOff) => {
          const capped = { method, base: celsius(lower), upper: celsius(upper), cutOff };
          expect(Number.isFinite(countedDay(capped, day, next))).toBe(true);
          expect(Number.isFinite(countedDay({ ...capped, upper: null }, day, next))).toBe(true);
        },
      ),
      RUNS,
    );
  });

  test("by the simple average are never more than by the clamped one", () => {
    fc.assert(
      fc.property(days, temperature, (day, base) => {
        const open = { lower: base, upper: Number.POSITIVE_INFINITY };
        expect(simpleAverage(day, open)).toBeLessThanOrEqual(clampedAverage(day, open) + 1e-9);
      }),
      RUNS,
    );
  });
});
