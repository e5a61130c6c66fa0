import type { Problem } from "../problem/index.ts";
import { celsius, type LocalDate } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import type { DayRange } from "./daySums.ts";
import { shown } from "./faults.ts";
import { parseDate } from "./moment.ts";
import { tidyName } from "./storeFile.ts";

export type { DayRange } from "./daySums.ts";

const TITLE = "leafpace daily temperature 1";
const HEADER = "date,low,high";

/** Name of a file of daily records. @example dailyName("outside", 2026) // => "outside-2026-daily.csv" */
export const dailyName = (sensor: string, year: number): string => `${sensor}-${year}-daily.csv`;

/** Sensor and year a file name stands for, or null. */
export function dailyOf(name: string): { readonly sensor: string; readonly year: number } | null {
  const match = /^([\w-]+)-(\d{4})-daily\.csv$/u.exec(name);
  return match === null ? null : { sensor: match[1]!, year: Number(match[2]) };
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** One sensor's year of lows and highs as text. */
export function writeDaily(sensor: string, days: readonly DayRange[]): string {
  const lines = days.map(({ date, low, high }) => `${date},${hundredth(low)},${hundredth(high)}`);
  return `${TITLE},sensor ${sensor},degrees Celsius\n${HEADER}\n${lines.join("\n")}\n`;
}

/** Reads one file of daily records. Forgives what a spreadsheet does to a file on saving. */
export function readDaily(
  file: string,
  text: string,
): { readonly days: readonly DayRange[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const days: DayRange[] = [];
  const lines = text.replace(/^\uFEFF/u, "").split(/\r?\n/u);
  const problem = (line: number, code: string, expected: string, received: string, hint: string): void => {
    problems.push({
      code,
      weight: "stops",
      file,
      line,
      column: null,
      expected,
      received: shown(received),
      hint,
    });
  };
  if (!lines[0]!.replace(/^"/u, "").startsWith(TITLE)) {
    problem(
      1,
      "store-version",
      `a first line "${TITLE}"`,
      lines[0]!,
      "This folder is written by leafpace import; keep other files elsewhere.",
    );
    return { days, problems };
  }
  lines.slice(2).forEach((line, index) => {
    if (/^[\s,;"]*$/u.test(line)) return;
    const [first = "", ...rest] = line.replaceAll('"', "").split(/[,;\t]/u);
    const [low, high] = rest.map((cell) => (cell.trim() === "" ? Number.NaN : Number(cell)));
    const date = parseDate(first);
    if (date !== null && low !== undefined && high !== undefined && low <= high)
      days.push({ date, low, high });
    else
      problem(
        index + 3,
        "store-line-unreadable",
        "a date like 2026-04-20 with its low and high",
        line,
        "Delete the line, then import the record again.",
      );
  });
  return { days, problems };
}

/** Stored days with an import laid over them: the later import wins. */
export function mergeDays(stored: readonly DayRange[], imported: readonly DayRange[]): readonly DayRange[] {
  const merged = new Map<LocalDate, DayRange>([...stored, ...imported].map((day) => [day.date, day]));
  return [...merged.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** A day that an import gave another low or high than the store had. */
export interface DifferingDay {
  readonly before: DayRange;
  /** The file that changed it. */
  readonly origin: string;
}

/** Stored days that an import changes. @param origin - Name of its file. */
export function differingDays(
  stored: readonly DayRange[],
  imported: readonly DayRange[],
  origin: string,
): readonly DifferingDay[] {
  const known = new Map(stored.map((day) => [day.date, day]));
  const alike = (a: number, b: number): boolean => hundredth(a) === hundredth(b);
  return imported.flatMap((after) => {
    const before = known.get(after.date);
    if (before === undefined || (alike(before.low, after.low) && alike(before.high, after.high))) return [];
    return [{ before, origin: tidyName(origin) }];
  });
}

/** A stored day as the model reads it. */
export const dailyRecordOf = ({ date, low, high }: DayRange): DailyRecord => ({
  date,
  low: celsius(low),
  high: celsius(high),
  wind: null,
  sky: null,
});
