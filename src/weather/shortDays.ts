import { addDays, dayOfYear, type LocalDate } from "../quantity/index.ts";
import { dayLength } from "./sun.ts";

/** First and last date, both within. */
export interface DateRange {
  readonly from: LocalDate;
  readonly to: LocalDate;
}

/**
 * Day length under which growers say that greens hardly grow. [h]
 * It is told and never used: light and warmth decide about growth.
 *
 * @source commonPractice, after Coleman, read second hand on growers' pages
 */
const SHORT = 10;

/**
 * The whole stretch of days under ten hours, sunrise to sunset, that touches the dates given; null when none does. Of two
 * stretches the earlier.
 */
export function shortDays(latitude: number, from: LocalDate, until: LocalDate): DateRange | null {
  const short = (date: LocalDate): boolean => dayLength(latitude, dayOfYear(date)) < SHORT;
  let first = from;
  while (first <= until && !short(first)) first = addDays(first, 1);
  if (first > until) return null;
  let last = first;
  while (short(addDays(first, -1))) first = addDays(first, -1);
  while (short(addDays(last, 1))) last = addDays(last, 1);
  return { from: first, to: last };
}
