import type { Problem } from "../problem/index.ts";
import { addDays, celsius, HOUR, type Instant, instant, instantAt, localHour } from "../quantity/index.ts";
import type { ForetoldHour } from "../weather/index.ts";
import { collapsed } from "./collapsed.ts";
import { dateColumn } from "./dateColumn.ts";
import type { DateOrder } from "./dialect.ts";
import type { Units } from "./faults.ts";
import { AIR_WORDS, cloudIn, ORDER_HINT, type ReadForecast, rainIn, titledIssue } from "./forecastFile.ts";
import { daysOfSteps, hoursOfSteps, type Step } from "./foretoldSteps.ts";
import { parseClock, parseDate } from "./moment.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import type { Row, Table } from "./row.ts";
import type { Column } from "./tableHeader.ts";
import { type Entry, tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "date", required: false },
  { name: "time", required: true },
  { name: "temperature", required: true, kind: "temperature" },
  { name: "wind", required: false, kind: "speed" },
  { name: "cloud", required: false, kind: "share" },
  { name: "radiation", required: false },
  { name: "rain", required: false, kind: "length" },
];

/** Other names people and stations give these columns. */
const ALSO: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^\s*(?:date ?[/&]? ?time|datetime|timestamp|hour|valid time)\b/iu, "time"],
  [/^\s*temp\b/iu, "temperature"],
  [/^\s*(?:cloud cover|clouds)\b/iu, "cloud"],
  [/^\s*wind speed\b/iu, "wind"],
];

/** More than the sun gives above the atmosphere. [W/m²] */
const BRIGHTEST = 1400;

/** Rows further apart say nothing of the hours between. [h] */
const APART = 3;

const renamed = (cell: string): string => {
  const plain = cell.replace(/^\uFEFF/u, "").replaceAll("_", " ");
  const known = ALSO.find(([pattern]) => pattern.test(plain));
  return known === undefined ? plain : plain.replace(known[0], known[1]);
};

const has = (cells: readonly string[], name: string): boolean =>
  cells.some((cell) => new RegExp(`^\\s*${name}(?![a-z])`, "iu").test(renamed(cell)));

const isHeader = (cells: readonly string[]): boolean =>
  has(cells, "time") && has(cells, "temperature") && !has(cells, "low") && !has(cells, "high");

/** An instant written with its offset, or a whole hour of universal time as the folder keeps it. */
function universal(text: string): Instant | null {
  const written = /^\d{4}-\d\d-\d\dT\d\dZ$/u.test(text) ? text.replace("Z", ":00Z") : text;
  if (!/^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(?::\d\d)?(?:Z|[+-]\d\d:?\d\d)$/u.test(written)) return null;
  const at = Date.parse(written.replace(" ", "T"));
  return Number.isNaN(at) ? null : instant(at);
}

/** A date and a time of the farm's clock, the date written year first. */
function onClock(text: string, zone: string): Instant | null {
  const [day = "", clock = ""] = text.trim().split(/[T\s]+(.*)/su);
  const date = parseDate(day);
  if (date === null) return null;
  if (/^24:00(?::00)?$/u.test(clock)) return instantAt(zone, addDays(date, 1), 0);
  const hour = parseClock(clock.replace(/^(\d{1,2}:\d\d):\d\d/u, "$1"));
  return hour === null ? null : instantAt(zone, date, hour);
}

const written = (entry: Entry): string => {
  const date = entry.text("date");
  return date === "" ? entry.text("time") : `${date} ${entry.text("time")}`;
};

/** Has a table a header of hours? */
export const looksLikeHours = (opening: readonly (readonly string[])[]): boolean => opening.some(isHeader);

/** Times further from now are a clock set wrong, and closer to each other than an hour a log. [h] judgement */
const BEHIND = 3 * 24;
const AHEAD = 20 * 24;

/** Do the first lines of such a table reach beyond now, hour by hour? What lies ahead was foretold, not logged. */
export function reachesBeyond(
  opening: readonly (readonly string[])[],
  zone: string,
  order: DateOrder | null,
  now: Instant,
): boolean {
  const rows = opening.map((cells, index): Row => ({ line: index + 1, cells }));
  const { times } = timesOf({ file: "", rows }, zone, order, "US");
  const known = times.map(({ at }) => at).filter((at) => at !== null);
  const near = (at: Instant): boolean => at > now - BEHIND * HOUR && at < now + AHEAD * HOUR;
  const apart = known.slice(1).every((at, index) => Math.abs(at - known[index]!) >= HOUR);
  return known.some((at) => at > now + HOUR) && known.every(near) && apart;
}

interface Timed {
  readonly entry: Entry;
  readonly at: Instant | null;
}

/** Every row with its moment; null with a problem where there is none. */
function timesOf(
  table: Table,
  zone: string,
  order: DateOrder | null,
  units: Units,
): { readonly times: readonly Timed[]; readonly problems: Problem[]; readonly titles: readonly Row[] } {
  const start = Math.max(
    0,
    table.rows.findIndex(({ cells }) => isHeader(cells)),
  );
  const rows = table.rows
    .slice(start)
    .map(({ line, cells }, index) => ({ line, cells: index === 0 ? cells.map(renamed) : cells }));
  const { entries, problems } = tableReader({ file: table.file, rows }, COLUMNS, undefined, units);
  const local = entries.map(written).filter((text) => universal(text) === null);
  const dates = dateColumn(local, order);
  const titles = table.rows.slice(0, start);
  if (dates.ambiguous !== null) {
    const first = entries.find((entry) => written(entry) === dates.ambiguous!.text)!;
    first.fault("time", "forecast-dates-ambiguous", "dates whose order can be told", ORDER_HINT);
    return { times: [], problems, titles };
  }
  let before: Instant | null = null;
  const times = entries.map((entry): Timed => {
    const text = written(entry);
    const stated = universal(text);
    let at = stated ?? onClock(dates.yearFirst(text), zone);
    // An hour the clock shows twice is the second time the later one.
    if (stated === null && at !== null && before !== null && at <= before) {
      const later = instant(at + HOUR);
      if (localHour(zone, later) === localHour(zone, at) && later > before) at = later;
    }
    if (at === null)
      entry.fault(
        "time",
        "time-unreadable",
        "a date and time like 2026-04-20 13:00",
        "Use year-month-day and the farm's clock.",
      );
    else if (before !== null && at <= before)
      entry.fault(
        "time",
        "time-not-later",
        "a time later than on the line above",
        "Put the lines in order, each time once.",
      );
    before = at ?? before;
    return { entry, at };
  });
  return { times, problems, titles };
}

/** What a row says of its moment. */
type Point = Omit<Step, "to" | "low" | "high">;

function radiationIn(entry: Entry): number | null {
  const text = entry.text("radiation");
  if (text === "") return null;
  const value = Number(text);
  if (value >= 0 && value <= BRIGHTEST) return value;
  return entry.fault(
    "radiation",
    "radiation-unreadable",
    `radiation in W/m² from 0 to ${BRIGHTEST}`,
    "Write a plain number, or leave it out.",
  );
}

function pointOf({ entry, at }: Timed): Point | null {
  const air = entry.quantity("temperature", "temperature");
  const wind = entry.text("wind") === "" ? null : entry.quantity("wind", "speed");
  const more = { cloud: cloudIn(entry), radiation: radiationIn(entry), rain: rainIn(entry) };
  if (air === null || at === null) return null;
  if (air < ON_A_FARM.coldest || air > ON_A_FARM.warmest)
    return entry.fault(
      "temperature",
      "temperature-out-of-range",
      AIR_WORDS,
      "Look at the number and its unit.",
    );
  return { from: at, mean: air, wind, ...more };
}

/** Hours from each row to the next: the temperature on a straight line, all else as the row says. */
function stepsOf(points: readonly Point[]): readonly Step[] {
  return points.flatMap((here, index): readonly Step[] => {
    const [before, next] = [points[index - 1], points[index + 1]];
    const ahead = next === undefined ? Number.NaN : (next.from - here.from) / HOUR;
    const behind = before === undefined ? 1 : (here.from - before.from) / HOUR;
    const joined = ahead >= 1 && ahead <= APART;
    const long = Math.floor(joined ? ahead : Math.min(behind, APART));
    return Array.from({ length: Math.max(1, long) }, (_, k): Step => {
      const mean = joined ? here.mean + ((next!.mean - here.mean) * k) / ahead : here.mean;
      const rain = here.rain === null ? null : here.rain / Math.max(1, long);
      const from = instant(here.from + k * HOUR);
      return { ...here, from, to: instant(from + HOUR), mean, low: mean, high: mean, rain };
    });
  });
}

/**
 * Reads a forecast by the hour: time, temperature and, where known, wind, cloud, radiation and rain. A row holds from its
 * moment to the next.
 *
 * @param said - When it was issued, if the grower says so; else a title line counts, else its first hour, or now where that
 * lies ahead.
 */
export function forecastHours(
  table: Table,
  zone: string,
  said: Instant | null,
  now: Instant,
  { dates = null, units = "US" }: { readonly dates?: DateOrder | null; readonly units?: Units } = {},
): ReadForecast {
  const { times, problems, titles } = timesOf(table, zone, dates, units);
  const points = times.map(pointOf).filter((point) => point !== null);
  if (points.length === 0 && problems.length === 0)
    problems.push({
      code: "forecast-empty",
      weight: "stops",
      file: table.file,
      line: null,
      column: null,
      expected: "at least one hour with time and temperature",
      received: "none",
      hint: `Write one line an hour under the header time,temperature (${units === "US" ? "F" : "C"}).`,
    });
  if (problems.some(({ weight }) => weight === "stops"))
    return { forecast: null, issuedBy: null, problems: collapsed(problems) };
  const steps = stepsOf(points);
  const titled = titledIssue(titles, zone);
  const first = points[0]!.from;
  const issued = said ?? titled ?? instant(Math.min(first, now));
  const issuedBy = said !== null ? "option" : titled !== null ? "file" : first <= now ? "firstHour" : "now";
  const forecast = { issued, days: daysOfSteps(zone, steps), hours: hoursOfSteps(steps) };
  return { forecast, issuedBy, problems: collapsed(problems) };
}

/** Hours of a kept forecast, as they were written. */
export function keptHours(table: Table): {
  readonly hours: readonly ForetoldHour[];
  readonly problems: readonly Problem[];
} {
  const { times, problems } = timesOf(table, "UTC", null, "metric");
  const steps = times.map(pointOf).flatMap((point): readonly Step[] => {
    if (point === null) return [];
    const { mean } = point;
    return [{ ...point, to: instant(point.from + HOUR), low: celsius(mean), high: celsius(mean) }];
  });
  return { hours: hoursOfSteps(steps), problems: collapsed(problems) };
}
