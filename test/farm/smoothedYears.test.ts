import { describe, expect, test } from "vitest";
import { type DatedRange, smoothedYears } from "../../src/farm/index.ts";
import { addDays, celsius, dayOfYear, type LocalDate } from "../../src/quantity/index.ts";

/** Days of some years, each by its date. */
const years = (from: number, count: number, range: (date: LocalDate, year: number) => [number, number]) => {
  const days: DatedRange[] = [];
  for (
    let date = `${from}-01-01` as LocalDate;
    Number(date.slice(0, 4)) < from + count;
    date = addDays(date, 1)
  ) {
    const [low, high] = range(date, Number(date.slice(0, 4)));
    days.push({ date, low: celsius(low), high: celsius(high) });
  }
  return days;
};
const on = (days: readonly DatedRange[], month: number, day: number, least = 1) =>
  smoothedYears(days, least).find((each) => each.month === month && each.day === day);

describe("the usual weather of several years", () => {
  test("is the mean of the years, a week before and after each date", () => {
    const days = years(2019, 5, (_date, year) => [year - 2019, year - 2009]);
    expect(on(days, 4, 20)).toEqual({ month: 4, day: 20, low: 2, high: 12, years: 5 });
    expect(smoothedYears(days, 5)).toHaveLength(366);
  });
  test("follows the course of the year as a straight line does", () => {
    const days = years(2021, 1, (date) => [dayOfYear(date) / 10, dayOfYear(date) / 5]);
    expect(on(days, 7, 1)!.low).toBeCloseTo(18.2, 1);
  });
  test("goes over the turn of the year", () => {
    const days = years(2021, 3, (date) => [date.slice(5) === "12-31" ? 15 : 0, 15]);
    expect(on(days, 1, 2)!.low).toBeCloseTo(1, 9);
  });
  test("says nothing of a date too few years tell of", () => {
    const days = years(2021, 3, () => [1, 2]).filter(({ date }) => date < "2023-04-20");
    expect(on(days, 4, 10, 3)?.years).toBe(3);
    expect(on(days, 4, 21, 3)?.years).toBeUndefined();
    expect(on(days, 4, 21, 2)?.years).toBe(2);
  });
});
