import { isValid, parseISO } from "date-fns";
import { type Instant, instantAt, type LocalDate } from "../quantity/index.ts";

/** A calendar date written 2026-03-01, or null when it is not one. @example parseDate("2026-02-30") // => null */
export function parseDate(text: string): LocalDate | null {
  const written = text.trim();
  if (!/^\d{4}-\d{2}-\d{2}$/u.test(written)) return null;
  return isValid(parseISO(written)) ? (written as LocalDate) : null;
}

/** A time of the clock in hours since midnight, or null. @example parseClock("6:30 pm") // => 18.5 */
export function parseClock(text: string): number | null {
  const match = /^(\d{1,2})(?::(\d{2}))?\s*(?:([ap])\.?m\.?)?$/iu.exec(text.trim());
  if (match === null) return null;
  const [, hours, minutes = "0", half] = match;
  const hour = Number(hours);
  if (Number(minutes) > 59) return null;
  if (half === undefined) return hour <= 23 ? hour + Number(minutes) / 60 : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === "p" ? 12 : 0) + Number(minutes) / 60;
}

/** The farm's clock, as far as reading a moment needs it. */
export interface FarmClock {
  readonly zone: string;
  readonly walks: { readonly morning: number; readonly evening: number };
}

/**
 * A moment on the farm's clock: 2026-04-18 07:10, 2026-04-18T07:10, or a date with the walk's name; null when it is none.
 *
 * @param bare - Hour that a date alone stands for; null: a date alone is not enough.
 */
export function parseMoment(text: string, { zone, walks }: FarmClock, bare: number | null): Instant | null {
  const [day, rest = ""] = text.trim().split(/[T\s]+(.*)/su);
  const date = parseDate(day!);
  if (date === null) return null;
  const word = rest.trim().toLowerCase();
  const hour = word === "" ? bare : word === "morning" || word === "evening" ? walks[word] : parseClock(rest);
  return hour === null ? null : instantAt(zone, date, hour);
}
