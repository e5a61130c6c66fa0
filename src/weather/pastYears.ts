import {
  addDays,
  type Celsius,
  calendar,
  daysBetween,
  type LocalDate,
  type UtcHour,
} from "../quantity/index.ts";
import type { DailyRecord, HourlyRecord } from "./record.ts";

/** Readings of at least this many hours make a day's low and high its own. [h] */
export const WHOLE_DAY = 20;

/** The farm's own days of one earlier year at the dates asked about, oldest first; those not recorded are left out. */
export interface PastYear {
  /** How many years before. */
  readonly before: number;
  readonly days: readonly DailyRecord[];
}

/**
 * Every whole day the farm has recorded, oldest first.
 *
 * @param hours - Of the sensor outside, in order of time.
 * @param days - Of a record that is daily by nature; where there are hours of the day, these count.
 */
export function ownDays(
  zone: string,
  hours: readonly HourlyRecord[],
  days: readonly DailyRecord[],
): readonly DailyRecord[] {
  const found = new Map<LocalDate, DailyRecord>(days.map((day) => [day.date, day]));
  const first = hours[0]?.hour;
  if (first !== undefined) {
    const length = hours[hours.length - 1]!.hour - first + 1;
    const { dates, day } = calendar(zone, first as UtcHour, length);
    const count = new Int32Array(dates.length);
    const lowest = new Float64Array(dates.length).fill(Number.POSITIVE_INFINITY);
    const highest = new Float64Array(dates.length).fill(Number.NEGATIVE_INFINITY);
    for (const record of hours) {
      const at = day[record.hour - first]!;
      count[at]!++;
      lowest[at] = Math.min(lowest[at]!, record.lowest);
      highest[at] = Math.max(highest[at]!, record.highest);
    }
    dates.forEach((date, at) => {
      if (count[at]! < WHOLE_DAY) return;
      const range = { low: lowest[at]! as Celsius, high: highest[at]! as Celsius };
      found.set(date, { date, ...range, wind: null, sky: null });
    });
  }
  return [...found.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** The date so many years before; the 29th of February becomes the 28th where there is none. */
function yearsBefore(date: LocalDate, years: number): LocalDate {
  const year = String(Number(date.slice(0, 4)) - years);
  const leap = new Date(Date.UTC(Number(year), 1, 29)).getUTCMonth() === 1;
  return `${year}${date.endsWith("-02-29") && !leap ? "-02-28" : date.slice(4)}` as LocalDate;
}

/**
 * What the farm recorded in earlier years at the dates from one to another: the nearest year first, years without any day
 * left out.
 *
 * @param own - As {@link ownDays} gives them.
 */
export function pastYears(
  own: readonly DailyRecord[],
  from: LocalDate,
  until: LocalDate,
): readonly PastYear[] {
  const byDate = new Map(own.map((day) => [day.date, day]));
  const oldest = own[0]?.date;
  if (oldest === undefined) return [];
  const dates = Array.from({ length: daysBetween(from, until) + 1 }, (_, index) => addDays(from, index));
  const most = Number(until.slice(0, 4)) - Number(oldest.slice(0, 4));
  return Array.from({ length: Math.max(0, most) }, (_, index) => index + 1).flatMap((before) => {
    const days = dates.flatMap((date) => byDate.get(yearsBefore(date, before)) ?? []);
    return days.length === 0 ? [] : [{ before, days }];
  });
}
