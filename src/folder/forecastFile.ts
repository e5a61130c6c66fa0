import type { Problem } from "../problem/index.ts";
import { type Instant, instantAt, type LocalDate } from "../quantity/index.ts";
import type { DailyRecord, Forecast } from "../weather/index.ts";
import { collapsed } from "./collapsed.ts";
import { type DateColumn, dateColumn } from "./dateColumn.ts";
import type { DateOrder } from "./dialect.ts";
import { type Units, unknownName } from "./faults.ts";
import { parseClock, parseDate } from "./moment.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import type { Row, Table } from "./row.ts";
import { SKY, WET } from "./sky.ts";
import { snowAsWater } from "./snowAsWater.ts";
import type { Column } from "./tableHeader.ts";
import { type Entry, tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "date", required: true },
  { name: "low", required: true, kind: "temperature" },
  { name: "high", required: true, kind: "temperature" },
  { name: "wind", required: false, kind: "speed" },
  { name: "sky", required: false },
  { name: "cloud", required: false, kind: "share" },
  { name: "rain", required: false, kind: "length" },
  { name: "snow", required: false, kind: "length" },
];

/** No day has more rain, or snow as water. [mm] */
export const MOST_RAIN = 1000;

export const ORDER_HINT = "Say --dates mdy when the month comes first, --dates dmy when the day does.";

/** Air on a farm, in words. */
export const AIR_WORDS = "a temperature from −60 to 60 °C (−76 to 140 °F)";

/** Why a forecast counts as issued when it does. */
export type IssuedBy = "option" | "file" | "firstDay" | "firstHour" | "now";

export interface ReadForecast {
  readonly forecast: Forecast | null;
  readonly issuedBy: IssuedBy | null;
  readonly problems: readonly Problem[];
}

const isTitle = (row: Row): boolean => !row.cells.some((cell) => /^\s*\uFEFF?date\b/iu.test(cell));

/** A table is a forecast when it has a date, a low and a high, and no time of day. */
export function looksLikeForecast(header: readonly string[]): boolean {
  const names = header.map((cell) =>
    cell
      .replace(/^\uFEFF/u, "")
      .trim()
      .toLowerCase(),
  );
  const has = (word: string): boolean =>
    names.some((name) => new RegExp(`^${word}(?![a-z/])`, "u").test(name));
  return has("date") && has("low") && has("high") && !has("time");
}

/** The moment named in a title line, as "issued 2026-04-20 05:00" or 2026-04-20T09:00Z. */
export function titledIssue(titles: readonly Row[], zone: string): Instant | null {
  const text = titles.map(({ cells }) => cells.join(" ")).join(" ");
  const match = /issued\D{0,12}(\d{4}-\d{2}-\d{2})(?:[T\s]+(\d{1,2}:\d{2}(?:\s*[ap]m)?)(Z?))?/iu.exec(text);
  const date = match === null ? null : parseDate(match[1]!);
  const hour = match?.[2] === undefined ? 0 : parseClock(match[2]);
  if (date === null || hour === null) return null;
  return instantAt(match![3] === "Z" ? "UTC" : zone, date, hour);
}

/** Share of the sky under cloud; null when nothing is said, and with a problem when it is none. [1] */
export function cloudIn(entry: Entry): number | null {
  const share = entry.text("cloud") === "" ? null : entry.quantity("cloud", "share");
  return share === null || (share >= 0 && share <= 1)
    ? share
    : entry.fault(
        "cloud",
        "cloud-out-of-range",
        "a share of the sky from 0 to 100 %",
        "Write the % sign behind it, or once in the header, like cloud (%).",
      );
}

/** null when nothing is said, and with a problem when it is none. [mm] */
export function rainIn(entry: Entry): number | null {
  const depth = entry.text("rain") === "" ? null : entry.quantity("rain", "length");
  if (depth === null) return null;
  return depth >= 0 && depth * 1000 <= MOST_RAIN
    ? depth * 1000
    : entry.fault(
        "rain",
        "rain-out-of-range",
        "an amount of rain like 3 mm or 0.1 in",
        "Correct the number.",
      );
}

/** New snow as water; null when nothing is said, and with a problem when it is none. [mm] */
function snowIn(entry: Entry): number | null {
  const depth = entry.text("snow") === "" ? null : entry.quantity("snow", "length");
  if (depth === null) return null;
  const water = snowAsWater(depth);
  return water >= 0 && water <= MOST_RAIN
    ? water
    : entry.fault(
        "snow",
        "snow-out-of-range",
        "a depth of new snow like 5 cm or 2 in",
        "Correct the number.",
      );
}

function dayOf(entry: Entry, dates: DateColumn, problems: Problem[]): DailyRecord | null {
  const date =
    dates.read(entry.text("date")) ??
    entry.fault(
      "date",
      "date-unreadable",
      "a date like 2026-04-20",
      dates.noSuchDay(entry.text("date")) ?? "Use year-month-day.",
    );
  const low = entry.quantity("low", "temperature");
  const high = entry.quantity("high", "temperature");
  const wind = entry.text("wind") === "" ? null : entry.quantity("wind", "speed");
  const word = entry.text("sky").toLowerCase();
  const sky = Object.hasOwn(SKY, word) ? SKY[word]! : null;
  if (word !== "" && sky === null)
    problems.push(
      unknownName(entry.spot("sky"), word, "sun, mixed or cloud", Object.keys(SKY), "sky-unknown"),
    );
  const cloud = cloudIn(entry);
  const fallen = [rainIn(entry), snowIn(entry)].filter((water) => water !== null);
  if (date === null || low === null || high === null) return null;
  const wrong = [low, high].findIndex((each) => each < ON_A_FARM.coldest || each > ON_A_FARM.warmest);
  if (wrong >= 0)
    return entry.fault(
      wrong === 0 ? "low" : "high",
      "temperature-out-of-range",
      AIR_WORDS,
      "Look at the number and its unit.",
    );
  const more = {
    ...(cloud === null ? {} : { cloud }),
    ...(fallen.length > 0
      ? { rain: fallen.reduce((sum, water) => sum + water, 0) }
      : WET.includes(word)
        ? { wet: true as const }
        : {}),
  };
  if (low <= high) return { date, low, high, wind, sky, ...more };
  return entry.fault("high", "low-above-high", "a high not below the low", "Swap the two.");
}

/** Days of a table, sorted, with what stands above its header. */
export function forecastDays(
  table: Table,
  order: DateOrder | null,
  units: Units,
): {
  readonly days: readonly DailyRecord[];
  readonly titles: readonly Row[];
  readonly problems: Problem[];
} {
  const start = table.rows.findIndex((row) => !isTitle(row));
  const titles = start < 0 ? [] : table.rows.slice(0, start);
  const rows = start < 0 ? table.rows : table.rows.slice(start);
  const { entries, problems } = tableReader({ ...table, rows }, COLUMNS, undefined, units);
  const dates = dateColumn(
    entries.map((entry) => entry.text("date")),
    order,
  );
  if (dates.ambiguous !== null) {
    const { text } = dates.ambiguous;
    const first = entries.find((entry) => entry.text("date") === text)!;
    first.fault("date", "forecast-dates-ambiguous", "dates whose order can be told", ORDER_HINT);
    return { days: [], titles, problems };
  }
  const days = new Map<LocalDate, DailyRecord>();
  for (const entry of entries) {
    const day = dayOf(entry, dates, problems);
    if (day !== null && days.has(day.date))
      entry.fault("date", "date-twice", "each date once", "Take one of the two lines out.");
    if (day !== null) days.set(day.date, day);
  }
  return { days: [...days.values()].sort((a, b) => (a.date < b.date ? -1 : 1)), titles, problems };
}

/**
 * Reads a forecast of daily lows and highs.
 *
 * @param issued - When it was issued, if the grower says so; else a title line "issued 2026-04-20 05:00" counts,
 * else the first moment of its first day.
 * @param written - How it is written where it does not say so itself: the order of its dates, and the units the farm uses.
 */
export function forecastFile(
  table: Table,
  zone: string,
  issued: Instant | null,
  written: { readonly dates?: DateOrder | null; readonly units?: Units } = {},
): ReadForecast {
  const { units = "US" } = written;
  const { days, titles, problems } = forecastDays(table, written.dates ?? null, units);
  if (days.length === 0 && problems.length === 0)
    problems.push({
      code: "forecast-empty",
      weight: "stops",
      file: table.file,
      line: null,
      column: null,
      expected: "at least one day with date, low and high",
      received: "none",
      hint: `Write one line a day under the header ${units === "US" ? "date,low (F),high (F)" : "date,low (C),high (C)"}.`,
    });
  if (problems.some(({ weight }) => weight === "stops"))
    return { forecast: null, issuedBy: null, problems: collapsed(problems) };
  const titled = titledIssue(titles, zone);
  const at = issued ?? titled ?? instantAt(zone, days[0]!.date, 0);
  const issuedBy = issued !== null ? "option" : titled !== null ? "file" : "firstDay";
  return { forecast: { issued: at, days }, issuedBy, problems };
}
