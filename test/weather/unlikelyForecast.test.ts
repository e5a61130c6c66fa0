import { expect, test } from "vitest";
import type { UsualMonth } from "../../src/farm/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import {
  celsius,
  fahrenheit,
  HOUR,
  hourOf,
  type Instant,
  instantAt,
  type LocalDate,
} from "../../src/quantity/index.ts";
import { type HourlyRecord, unlikelyForecast } from "../../src/weather/index.ts";

// The limits, 15 °C from the season and 50 °C, are judgement.

const ISSUED = instantAt("UTC", "2026-04-15", 6);
const APRIL: readonly UsualMonth[] = [3, 4, 5].map((month) => ({
  month,
  low: celsius(3),
  high: celsius(15),
}));

const log = (mean: number, end: Instant = ISSUED): HourlyRecord[] =>
  Array.from({ length: 48 }, (_, index) => ({
    hour: hourOf((end - (48 - index) * HOUR) as Instant),
    mean: celsius(mean),
    lowest: celsius(mean),
    highest: celsius(mean),
    count: 1,
  }));

const told = (
  low: number,
  high: number,
  beside: { usual?: readonly UsualMonth[]; outside?: readonly HourlyRecord[]; units?: "US" | "metric" },
): string[] => {
  const day = {
    date: "2026-04-15" as LocalDate,
    low: celsius(low),
    high: celsius(high),
    wind: null,
    sky: null,
  };
  const known = { usual: [], outside: [], units: "metric" as const, ...beside };
  return unlikelyForecast("forecast.txt", { issued: ISSUED, days: [day] }, known).map(formatProblem);
};

test("a forecast far from the usual weather of its days is asked for its unit", () => {
  expect(told(30, 48, { usual: APRIL })).toEqual([
    "forecast.txt: expected a forecast near the usual weather of its days, 9 °C in the mean of day and night, received 39 °C. Are these °F? Write the unit behind a number, like 62F 41F.",
  ]);
  expect(told(fahrenheit(5), fahrenheit(17), { usual: APRIL, units: "US" })).toEqual([
    "forecast.txt: expected a forecast near the usual weather of its days, 48 °F in the mean of day and night, received 11 °F. Are these °C? Write the unit behind a number, like 17C 5C.",
  ]);
  expect(told(-25, -15, { usual: APRIL })[0]).toMatch(/Look at its numbers, its unit and its dates\.$/u);
});

test("what was measured in the last days stands in for usual weather, and where both are known both must be far", () => {
  expect(told(30, 48, { outside: log(12) })).toEqual([
    "forecast.txt: expected a forecast near what the log has of the days before, 12 °C in the mean of day and night, received 39 °C. Are these °F? Write the unit behind a number, like 62F 41F.",
  ]);
  expect(told(30, 48, { usual: APRIL, outside: log(30) })).toEqual([]);
  expect(told(30, 48, { outside: log(12, (ISSUED - 30 * 24 * HOUR) as Instant) })).toEqual([]);
});

test("no more than 15 °C away nothing is said, nor where nothing is known", () => {
  expect(told(18, 30, { usual: APRIL })).toEqual([]);
  expect(told(30, 48, {})).toEqual([]);
});

test("a high above 50 °C is always worth a look", () => {
  expect(told(41, 58, {})).toEqual([
    "forecast.txt: expected highs up to 50 °C, received 58 °C on 2026-04-15. Are these °F? Write the unit behind a number, like 62F 41F.",
  ]);
  expect(told(20, 55, { units: "US" })).toEqual([
    "forecast.txt: expected highs up to 122 °F, received 131 °F on 2026-04-15. Look at its numbers, its unit and its dates.",
  ]);
});
