import type { Farm } from "../farm/index.ts";
import { WEEKDAYS } from "../folder/index.ts";
import { daysBetween, type Instant, localDate, weekday } from "../quantity/index.ts";
import { day } from "./words.ts";

/** Within a week the name of the day says which sheet is meant. */
export function sheetCalled({ units, place }: Farm, issued: Instant, now: Instant): string {
  const date = localDate(place.zone, issued);
  return daysBetween(date, localDate(place.zone, now)) < 7
    ? `${WEEKDAYS[weekday(date)]!}'s sheet`
    : `the sheet of ${day(units, date)}`;
}
