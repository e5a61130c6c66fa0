import { expect, test } from "vitest";
import { addDays, celsius, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, pastYears } from "../../src/weather/index.ts";

/** Years as warm as told, each day of each the same. */
const years = (levels: readonly number[]): readonly DailyRecord[] =>
  levels.flatMap((level, back) =>
    Array.from({ length: 366 }, (_, i) => addDays(`${2025 - back}-01-01`, i))
      .filter((date) => date.startsWith(String(2025 - back)))
      .map((date) => ({
        date,
        low: celsius(level),
        high: celsius(level + 10),
        wind: null,
        sky: null,
      })),
  );
const date = "2026-05-10" as LocalDate;

test("the usual is the mean of the same days of earlier years, from two years on", () => {
  expect(pastYears([]).usual(date)).toBeNull();
  expect(pastYears(years([5])).usual(date)).toBeNull();
  const { low, high } = pastYears(years([5, 7, 9])).usual(date)!;
  expect([low, high]).toEqual([7, 17]);
});

test("departures and spread are wider the fewer years they stand on", () => {
  // Two years 1 °C to either side of their mean: 1 × √((2 + 1)/(2 − 1)).
  const two = pastYears(years([6, 8]));
  expect(two.spread(date)!.low).toBeCloseTo(Math.sqrt(3), 9);
  expect(new Set(two.stretches(date, 5).map((days) => Math.abs(days[4]!.high).toFixed(6)))).toEqual(
    new Set([Math.sqrt(3).toFixed(6)]),
  );
  const four = pastYears(years([6, 8, 6, 8]));
  expect(four.spread(date)!.low).toBeCloseTo(Math.sqrt(5 / 3), 9);
});

test("a stretch is a year shifted by up to ten days, and only one that has all its days", () => {
  expect(pastYears(years([6, 8])).stretches(date, 20).length).toBe(2 * 21);
  // December 2025 is not followed by a January that has been; the Decembers of 2024 and 2023 are, and of 2022 what lies in January 2023.
  expect(pastYears(years([6, 8, 6])).stretches("2026-12-25" as LocalDate, 20).length).toBe(2 * 21 + 4);
});
