import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { snowOf } from "../../src/weather/index.ts";
import published from "../published/rain-snow.json" with { type: "json" };

const { settings } = catalogue();

/** Snow through days of one temperature each, with what falls in the first hour of each. [°C], [mm] */
function through(...days: readonly (readonly [air: number, falls: number])[]) {
  const hours = days.length * 24;
  const of = (value: (day: number, hour: number) => number): Float64Array =>
    Float64Array.from({ length: hours }, (_, i) => value(Math.floor(i / 24), i % 24));
  return snowOf(
    of((day) => days[day]![0]),
    of((day, hour) => (hour === 0 ? days[day]![1] : 0)),
    of((day) => day),
    settings,
  );
}

describe("precipitation", () => {
  test(`falls as snow up to ${published.threshold.celsius} °C and as rain above (Jennings and others 2018)`, () => {
    const { rain, snowfall } = through([1, 5], [1.01, 5]);
    expect([snowfall[0], rain[0], snowfall[24], rain[24]]).toEqual([5, 0, 0, 5]);
  });
});

describe("snow", () => {
  // Melt as remembered of NRCS chapter 11, from memory: 0.06 in for each °F of the day's mean above freezing, 2.74 mm for each °C.
  const REMEMBERED = 2.74;

  test("lies after snowfall at −1 °C and is gone after the melt as remembered of NRCS chapter 11, from memory", () => {
    const { snow } = through([-1, 8], [2, 0], [2, 0]);
    expect(snow[1]).toBe(8);
    expect(snow[24]).toBe(8);
    expect(snow[48]).toBeCloseTo(8 - 2 * REMEMBERED, 9);
    expect(snow[71]).toBe(0);
  });

  test("of a day whose mean is below freezing stays, however warm its noon", () => {
    const air = Float64Array.from({ length: 48 }, (_, i) => (i % 24 === 13 ? 10 : -2));
    const falls = Float64Array.from({ length: 48 }, (_, i) => (i === 0 ? 6 : 0));
    const days = Float64Array.from({ length: 48 }, (_, i) => Math.floor(i / 24));
    expect(snowOf(air, falls, days, settings).snow[47]).toBe(6);
  });

  test("melts in the warm hours of a day and not before", () => {
    const air = Float64Array.from({ length: 25 }, (_, i) => (i >= 12 ? 6 : 0));
    const falls = Float64Array.from({ length: 25 }, (_, i) => (i === 0 ? 20 : 0));
    const days = Float64Array.from({ length: 25 }, (_, i) => Math.floor(i / 24));
    const { snow } = snowOf(air, falls, days, settings);
    expect([snow[12], snow[24]]).toEqual([20, expect.closeTo(20 - 3 * REMEMBERED, 9)]);
  });
});
