import type { Problem } from "../problem/index.ts";
import { addDays, HOUR, type Instant, instant, instantAt, localHour } from "../quantity/index.ts";
import { dateColumn } from "./dateColumn.ts";
import type { DateOrder } from "./dialect.ts";
import type { Units } from "./faults.ts";
import { ORDER_HINT } from "./forecastFile.ts";
import { parseClock, parseDate } from "./moment.ts";
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

/** Do the first lines of such a table reach beyond a moment, hour by hour? What lies ahead was foretold, not logged. */
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

export interface Timed {
  readonly entry: Entry;
  readonly at: Instant | null;
}

/** Every row with its moment; null with a problem where there is none. */
export function timesOf(
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
