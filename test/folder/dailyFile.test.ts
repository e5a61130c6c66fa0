import { expect, test } from "vitest";
import { type DayRange, dailyOf, mergeDays, readDaily, storeOf, writeDaily } from "../../src/folder/index.ts";
import type { LocalDate } from "../../src/quantity/index.ts";
import { messages } from "./fixtures.ts";

const day = (date: string, low: number, high: number): DayRange => ({ date: date as LocalDate, low, high });
const days = [day("2026-03-01", -2, 8), day("2026-03-02", 1.555, 11)];
const text = `leafpace daily temperature 1,sensor outside,degrees Celsius
date,low,high
2026-03-01,-2,8
2026-03-02,1.56,11
`;

test("daily records are written in hundredths of a degree and read back", () => {
  expect(writeDaily("outside", days)).toBe(text);
  expect(readDaily("d.csv", text)).toEqual({ days: [days[0], day("2026-03-02", 1.56, 11)], problems: [] });
});

test("their files are not those of hours", () => {
  expect(dailyOf("outside-2026-daily.csv")).toEqual({ sensor: "outside", year: 2026 });
  expect(storeOf("outside-2026-daily.csv")).toBeNull();
  expect(dailyOf("outside-2026.csv")).toBeNull();
});

test("what a spreadsheet does to the file is forgiven; a line that is no day is told", () => {
  const saved = text.replaceAll(",", ";").replaceAll("\n", "\r\n");
  expect(readDaily("d.csv", saved).days).toHaveLength(2);
  expect(messages(readDaily("d.csv", `${text}2026-03-03,9,2\n`))).toEqual([
    'd.csv:5: expected a date like 2026-04-20 with its low and high, received "2026-03-03,9,2". Delete the line, then import the record again.',
  ]);
  expect(messages(readDaily("d.csv", "date,low,high\n"))).toHaveLength(1);
});

test("a later import wins", () => {
  expect(mergeDays(days, [day("2026-03-02", 0, 5), day("2026-02-28", 1, 2)])).toEqual([
    day("2026-02-28", 1, 2),
    days[0],
    day("2026-03-02", 0, 5),
  ]);
});
