import { describe, expect, test } from "vitest";
import { CUT_OFFS, type CutOff } from "../../src/farm/index.ts";
import {
  clampedAverage,
  type DayShape,
  doubleDegreeDays,
  fourCaseDegreeDays,
  type LowHigh,
  simpleAverage,
  singleDegreeDays,
  type Thresholds,
} from "../../src/growth/index.ts";
import vectors from "../published/degree-days-1.3.json" with { type: "json" };
import fahrenheit from "../published/degree-days-86-50.json" with { type: "json" };
import averages from "../published/degree-days-average.json" with { type: "json" };

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

/** Seeded numbers from 0 to 1 (a linear congruential generator). */
function* random(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    yield state / 2 ** 32;
  }
}

/** Temperature through the rising half of the day, from 0 at the low to 1 at the high; the falling half mirrors it. [°C] */
const rising = ({ low, high }: LowHigh, shape: DayShape, time: number): number =>
  low + (high - low) * (shape === "sine" ? (1 - Math.cos(Math.PI * time)) / 2 : time);

/** What one instant earns. [°C·d/d] */
function rateAt(temperature: number, { lower, upper }: Thresholds, cutOff: CutOff): number {
  const earned = Math.max(0, temperature - lower);
  if (temperature <= upper || cutOff === "none") return earned;
  return { horizontal: upper - lower, intermediate: 2 * upper - lower - temperature, vertical: 0 }[cutOff];
}

/** Where the rising half crosses a temperature, by bisection; 0 or 1 when it does not. */
function crossing(day: LowHigh, shape: DayShape, temperature: number): number {
  let [before, after] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (before + after) / 2;
    if (rising(day, shape, middle) < temperature) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
}

/** Midpoints between the crossings, refined by Richardson: shares nothing with the closed form. */
function integrated(day: LowHigh, thresholds: Thresholds, shape: DayShape, cutOff: CutOff): number {
  const edges = [0, crossing(day, shape, thresholds.lower), crossing(day, shape, thresholds.upper), 1];
  const midpoints = (from: number, to: number, steps: number): number => {
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      sum += rateAt(rising(day, shape, from + ((to - from) * (i + 0.5)) / steps), thresholds, cutOff);
    }
    return (sum * (to - from)) / steps;
  };
  return edges.slice(0, -1).reduce((total, from, i) => {
    const to = edges[i + 1]!;
    return total + (4 * midpoints(from, to, 400) - midpoints(from, to, 200)) / 3;
  }, 0);
}

test("the closed forms equal numeric integration on 300 random days, all shapes and cut-offs", () => {
  const numbers = random(20_260_420);
  const next = (from: number, to: number): number => from + (to - from) * numbers.next().value;
  let worst = 0;
  for (let i = 0; i < 300; i++) {
    const low = next(-15, 30);
    const day = { low, high: low + next(0, 25) };
    const lower = next(-2, 12);
    const thresholds = { lower, upper: lower + next(5, 25) };
    const after = Math.min(day.high, next(-15, 30));
    for (const shape of ["sine", "triangle"] as const) {
      for (const cutOff of CUT_OFFS) {
        const single = integrated(day, thresholds, shape, cutOff);
        const falling = integrated({ low: after, high: day.high }, thresholds, shape, cutOff);
        worst = Math.max(
          worst,
          Math.abs(singleDegreeDays(day, thresholds, shape, cutOff) - single),
          Math.abs(doubleDegreeDays(day, after, thresholds, shape, cutOff) - (single + falling) / 2),
        );
      }
    }
  }
  expect(worst).toBeLessThan(1e-6);
});
