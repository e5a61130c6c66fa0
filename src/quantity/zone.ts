import { tzOffset } from "@date-fns/tz";
import { HOUR, type Instant, type LocalDate, startOf, type UtcHour } from "./time.ts";

const MINUTE = 60_000;
const DAY = 24 * HOUR;

/** Minutes the zone is ahead of universal time at an instant. [min] NaN never leaves: an unknown zone is a Problem found when the folder is read. */
const offset = (zone: string, at: Instant): number => tzOffset(zone, new Date(at));

const iso = (ms: number): string => new Date(ms).toISOString();

/** The farm's calendar date at an instant. @example localDate("America/New_York", instant(0)) // => "1969-12-31" */
export function localDate(zone: string, at: Instant): LocalDate {
  return iso(at + offset(zone, at) * MINUTE).slice(0, 10) as LocalDate;
}

/** Hours since the farm's midnight at an instant, as the clock on the wall shows them. [h] @example localHour("Asia/Kolkata", instant(0)) // => 5.5 */
export function localHour(zone: string, at: Instant): number {
  const wall = at + offset(zone, at) * MINUTE;
  return (((wall % DAY) + DAY) % DAY) / HOUR;
}

/** Date and clock of the farm at an instant, to the minute. @example localMinute("Asia/Kolkata", instant(0)) // => "1970-01-01 05:30" */
export function localMinute(zone: string, at: Instant): string {
  return iso(at + offset(zone, at) * MINUTE)
    .slice(0, 16)
    .replace("T", " ");
}

/**
 * The instant at which the farm's clock shows `hour` on `date`.
 * A wall time that does not exist (clocks going forward) gives the instant just after the jump;
 * one that comes twice gives the first.
 *
 * @example instantAt("America/New_York", "2026-03-08", 7) // => 1772967600000
 */
export function instantAt(zone: string, date: LocalDate | string, hour: number): Instant {
  const wall = Date.parse(`${date}T00:00:00Z`) + Math.round(hour * 60) * MINUTE;
  const before = offset(zone, (wall - 24 * HOUR) as Instant);
  const after = offset(zone, (wall + 24 * HOUR) as Instant);
  const fits = [before, after]
    .map((minutes) => ({ at: wall - minutes * MINUTE, minutes }))
    .filter(({ at, minutes }) => offset(zone, at as Instant) === minutes)
    .map(({ at }) => at);
  return (fits.length > 0 ? Math.min(...fits) : wall - before * MINUTE) as Instant;
}

/** Days from 1 January 1970 to a calendar date. [d] */
const dayNumber = (date: LocalDate | string): number => Date.parse(date) / DAY;

/** The date `days` later on the calendar. @example addDays("2026-02-27", 2) // => "2026-03-01" */
export function addDays(date: LocalDate | string, days: number): LocalDate {
  return iso((dayNumber(date) + days) * DAY).slice(0, 10) as LocalDate;
}

/** Days from one calendar date to another. @example daysBetween("2026-02-27", "2026-03-01") // => 2 */
export function daysBetween(from: LocalDate | string, to: LocalDate | string): number {
  return dayNumber(to) - dayNumber(from);
}

/** Day of the week, Sunday 0 to Saturday 6. @example weekday("2026-04-20") // => 1 */
export function weekday(date: LocalDate | string): number {
  return new Date(date).getUTCDay();
}

/** Day of the year, 1 January being 1. @example dayOfYear("2026-09-03") // => 246 */
export function dayOfYear(date: LocalDate | string): number {
  return daysBetween(`${date.slice(0, 4)}-01-01`, date) + 1;
}

/** A stretch of UTC hours laid out by the farm's calendar. An hour belongs to the date its middle lies in, so half-hour zones need no special case. */
export interface Calendar {
  readonly zone: string;
  readonly first: UtcHour;
  readonly dates: readonly LocalDate[];
  /** For each hour, the index of its date in `dates`. */
  readonly day: Int32Array;
  /** For each hour, the wall clock at its middle. [h] */
  readonly clock: Float64Array;
}

/**
 * Minutes the zone is ahead of universal time for each hour from `first`, as at the hour's middle. Asked for once a day,
 * and hour by hour only on a day in which it changes.
 */
function offsets(zone: string, first: UtcHour, length: number): Float64Array {
  const middle = (i: number): Instant => (startOf((first + i) as UtcHour) + HOUR / 2) as Instant;
  const minutes = new Float64Array(length);
  let before = offset(zone, middle(0));
  for (let i = 0; i < length; i += 24) {
    const after = offset(zone, middle(i + 24));
    for (let k = i; k < Math.min(length, i + 24); k++)
      minutes[k] = before === after ? before : offset(zone, middle(k));
    before = after;
  }
  return minutes;
}

/** Lays `length` hours from `first` on the farm's calendar. */
export function calendar(zone: string, first: UtcHour, length: number): Calendar {
  const dates: LocalDate[] = [];
  const day = new Int32Array(length);
  const clock = new Float64Array(length);
  const ahead = offsets(zone, first, length);
  let last = Number.NaN;
  for (let i = 0; i < length; i++) {
    const middle = (startOf((first + i) as UtcHour) + HOUR / 2) as Instant;
    const wall = middle + ahead[i]! * MINUTE;
    const wallDay = Math.floor(wall / DAY);
    if (wallDay !== last) {
      dates.push(iso(wall).slice(0, 10) as LocalDate);
      last = wallDay;
    }
    day[i] = dates.length - 1;
    clock[i] = (wall - wallDay * DAY) / HOUR;
  }
  return { zone, first, dates, day, clock };
}
