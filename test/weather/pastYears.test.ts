import { describe, expect, test } from "vitest";
import { celsius, hourOf, instantAt, type LocalDate, utcHour } from "../../src/quantity/index.ts";
import { type DailyRecord, type HourlyRecord, ownDays, pastYears } from "../../src/weather/index.ts";

const ZONE = "America/New_York";
const day = (date: string, low: number, high: number): DailyRecord => ({
  date: date as LocalDate,
  low: celsius(low),
  high: celsius(high),
  wind: null,
  sky: null,
});
const log = (date: string, count: number): HourlyRecord[] => {
  const from = hourOf(instantAt(ZONE, date, 0));
  return Array.from({ length: count }, (_, k) => ({
    hour: utcHour(from + k),
    mean: celsius(k),
    lowest: celsius(k - 1),
    highest: celsius(k + 1),
    count: 4,
  }));
};

describe("a farm's own days", () => {
  test("are those of which the log has twenty hours", () => {
    expect(ownDays(ZONE, log("2025-04-20", 24 + 19), [])).toEqual([day("2025-04-20", -1, 24)]);
    expect(ownDays(ZONE, [], [])).toEqual([]);
  });
  test("come from a daily record where the log has none, oldest first", () => {
    const daily = [day("2025-04-20", 0, 0), day("2025-04-19", 3, 9)];
    expect(ownDays(ZONE, log("2025-04-20", 24), daily)).toEqual([
      day("2025-04-19", 3, 9),
      day("2025-04-20", -1, 24),
    ]);
  });
});

describe("earlier years at the same dates", () => {
  const range = (from: string, until: string, own: readonly DailyRecord[]) =>
    pastYears(own, from as LocalDate, until as LocalDate).map(({ before, days }) => [
      before,
      days.map(({ date }) => date),
    ]);
  test("are the nearest year first, and a year without any of them is left out", () => {
    const own = ["2022-04-20", "2022-04-21", "2022-05-01", "2024-04-20", "2025-03-01", "2026-04-19"];
    expect(
      range(
        "2026-04-20",
        "2026-04-22",
        own.map((date) => day(date, 1, 2)),
      ),
    ).toEqual([
      [2, ["2024-04-20"]],
      [4, ["2022-04-20", "2022-04-21"]],
    ]);
  });
  test("go over the turn of the year", () => {
    const own = ["2024-12-31", "2025-01-01"].map((date) => day(date, 1, 2));
    expect(range("2025-12-30", "2026-01-02", own)).toEqual([[1, ["2024-12-31", "2025-01-01"]]]);
  });
  test("have the 28th of February for the 29th", () => {
    const own = ["2023-02-28", "2020-02-29"].map((date) => day(date, 1, 2));
    expect(
      range(
        "2024-02-29",
        "2024-02-29",
        own.sort((a, b) => (a.date < b.date ? -1 : 1)),
      ),
    ).toEqual([
      [1, ["2023-02-28"]],
      [4, ["2020-02-29"]],
    ]);
  });
});
