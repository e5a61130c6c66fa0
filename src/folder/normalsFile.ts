import { type DatedRange, smoothedYears, type Usual } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Celsius, OtherUnits } from "../quantity/index.ts";
import { MONTHS, nameAt } from "./calendarNames.ts";
import { collapsed } from "./collapsed.ts";
import { dateColumn } from "./dateColumn.ts";
import { dateIn } from "./dayInWords.ts";
import type { Units } from "./faults.ts";
import { AIR_WORDS } from "./forecastFile.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import type { Table } from "./row.ts";
import type { Column } from "./tableHeader.ts";
import { type Entry, tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "month", required: false },
  { name: "date", required: false },
  { name: "low", required: true, kind: "temperature" },
  { name: "high", required: true, kind: "temperature" },
];

/** A station's years that make a mean not rough. judgement, as of the farm's own */
const YEARS = 5;

/** Any leap year: the 29th of February is a date of normals. */
const LEAP = 2024;

/** Month and day of a date without a year: 04-20, 4/20, Apr 20 or 20 Apr. */
function dayOfYear(text: string): { readonly month: number; readonly day: number } | null {
  const numbers = /^(\d{1,2})[-/](\d{1,2})$/u.exec(text);
  const words = /^([a-z]{3,9})\.? (\d{1,2})$|^(\d{1,2})\.? ([a-z]{3,9})$/iu.exec(text);
  const month = numbers ? Number(numbers[1]) : nameAt(words?.[1] ?? words?.[4] ?? "", MONTHS) + 1;
  const day = Number(numbers?.[2] ?? words?.[2] ?? words?.[3] ?? 0);
  return month >= 1 && month <= 12 && dateIn(LEAP, { month, day }) !== null ? { month, day } : null;
}

/** A month by its number or its name; 0 for none. */
const monthOf = (text: string): number =>
  /^\d{1,2}$/u.test(text) ? (Number(text) <= 12 ? Number(text) : 0) : nameAt(text, MONTHS) + 1;

/** Low and high of a line, the low not above the high. */
function rangeOf(entry: Entry): { readonly low: Celsius; readonly high: Celsius } | null {
  const low = entry.quantity("low", "temperature");
  const high = entry.quantity("high", "temperature");
  if (low === null || high === null) return null;
  const wrong = ([low, high] as const).findIndex(
    (each) => each < ON_A_FARM.coldest || each > ON_A_FARM.warmest,
  );
  if (wrong >= 0)
    return entry.fault(
      wrong === 0 ? "low" : "high",
      "temperature-out-of-range",
      AIR_WORDS,
      "Look at the number and its unit.",
    );
  if (low > high) return entry.fault("high", "low-above-high", "a high not below the low", "Swap the two.");
  return { low, high };
}

function monthly(entries: readonly Entry[]): readonly Usual[] {
  const seen = new Set<number>();
  return entries.flatMap((entry) => {
    const month = monthOf(entry.text("month"));
    const range = rangeOf(entry);
    if (month === 0) entry.fault("month", "month-unknown", "a month like April or 4", "Write its name.");
    else if (seen.has(month))
      entry.fault("month", "month-twice", "each month once", "Take one of the two out.");
    if (month === 0 || range === null || seen.has(month)) return [];
    seen.add(month);
    return [{ month, ...range }];
  });
}

/** Dates without a year, each once: normals as they stand. */
function daily(entries: readonly Entry[]): readonly Usual[] {
  const seen = new Set<string>();
  return entries.flatMap((entry) => {
    const date = dayOfYear(entry.text("date"));
    const range = rangeOf(entry);
    const key = `${date?.month}-${date?.day}`;
    if (date === null)
      entry.fault(
        "date",
        "date-unreadable",
        "a day of the year like 04-20 or Apr 20",
        "Write month and day.",
      );
    else if (seen.has(key)) entry.fault("date", "date-twice", "each date once", "Take one of the two out.");
    if (date === null || range === null || seen.has(key)) return [];
    seen.add(key);
    return [{ ...date, ...range }];
  });
}

/** Dates of many years: a station's record, smoothed. */
function yearly(file: string, entries: readonly Entry[], problems: Problem[]): readonly Usual[] {
  const dates = dateColumn(
    entries.map((entry) => entry.text("date")),
    null,
  );
  if (dates.ambiguous !== null) {
    const { text, meanings } = dates.ambiguous;
    entries
      .find((entry) => entry.text("date") === text)!
      .fault(
        "date",
        "dates-ambiguous",
        "dates whose order can be told",
        `Write ${meanings.join(" or ")}, whichever is meant, and so down the column.`,
      );
    return [];
  }
  const days = new Map<string, DatedRange>();
  for (const entry of entries) {
    const date = dates.read(entry.text("date"));
    const range = entry.text("low") === "" && entry.text("high") === "" ? null : rangeOf(entry);
    if (date === null)
      entry.fault("date", "date-unreadable", "a date like 2026-04-20", "Use year-month-day.");
    else if (range !== null) days.set(date, { date, ...range });
  }
  const smoothed = smoothedYears([...days.values()], 1);
  const most = Math.max(0, ...smoothed.map(({ years }) => years));
  if (most < YEARS && smoothed.length > 0)
    problems.push({
      code: "normals-few-years",
      weight: "needsYou",
      file,
      line: null,
      column: "date",
      expected: `${YEARS} years or more of a station's days`,
      received: `${most}`,
      hint: "Their mean is used, and is rough.",
    });
  return smoothed.map(({ month, day, low, high }) => ({ month, day, low, high }));
}

/**
 * Reads a table of usual weather: by month, by day of the year, or a station's days of many years.
 *
 * @returns Usual low and high at times of the year; null with problems.
 */
export function normalsFile(
  table: Table,
  other?: OtherUnits,
  units: Units = "US",
): { readonly usual: readonly Usual[]; readonly problems: readonly Problem[] } {
  const { entries, problems, indexOf } = tableReader(table, COLUMNS, other, units);
  if (problems.some(({ weight }) => weight === "stops")) return { usual: [], problems };
  const byDate = indexOf.has("date");
  if (!byDate && !indexOf.has("month")) {
    problems.push({
      code: "column-missing",
      weight: "stops",
      file: table.file,
      line: null,
      column: null,
      expected: 'a column "month" or "date"',
      received: "none",
      hint: "Add one of them to the first line; the order does not matter.",
    });
    return { usual: [], problems };
  }
  const usual = !byDate
    ? monthly(entries)
    : entries.every((entry) => dayOfYear(entry.text("date")) !== null)
      ? daily(entries)
      : yearly(table.file, entries, problems);
  return { usual, problems: collapsed(problems) };
}
