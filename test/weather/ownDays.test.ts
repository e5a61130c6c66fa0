import { describe, expect, test } from "vitest";
import { celsius, hourOf, instantAt, type LocalDate, utcHour } from "../../src/quantity/index.ts";
import { type DailyRecord, type HourlyRecord, ownDays } from "../../src/weather/index.ts";

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
