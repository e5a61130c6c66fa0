import { addDays, daysBetween, type LocalDate } from "../quantity/index.ts";
import { MONTHS, nameAt, shortened } from "./calendarNames.ts";
import { parseDate } from "./moment.ts";

const NAME = String.raw`(${shortened(MONTHS)})\.?`;
const NUMBER = String.raw`(\d{1,2})(?:st|nd|rd|th)?`;
const YEAR = String.raw`(?:,?\s+(\d{4}))?`;

/** Patterns of a month and a day with the year, if it is said; lower case. Groups: name, number, year. */
export const MONTH_FIRST: string = String.raw`${NAME}\s+${NUMBER}${YEAR}`;

/** Groups: number, name, year. */
export const DAY_FIRST: string = String.raw`${NUMBER}\.?\s+(?:of\s+)?${NAME}${YEAR}`;

/** A number on both sides of a month: either could be the day. */
export const EITHER_WAY: string = String.raw`\d{1,2}\.?\s+${NAME}\s+\d{1,2}`;

/** A day of no certain year. */
export interface DayOfYear {
  readonly month: number;
  readonly day: number;
}

/** @example dayNamed("apr", "22") // => { month: 4, day: 22 } */
export const dayNamed = (month: string, day: string): DayOfYear => ({
  month: nameAt(month, MONTHS) + 1,
  day: Number(day),
});

const two = (value: number): string => String(value).padStart(2, "0");

/** Its date in a year; null where the calendar has none. */
export const dateIn = (year: number, { month, day }: DayOfYear): LocalDate | null =>
  parseDate(`${year}-${two(month)}-${two(day)}`);

const near = (day: DayOfYear, to: LocalDate): readonly LocalDate[] =>
  [1, 0, -1].map((years) => dateIn(Number(to.slice(0, 4)) + years, day)).filter((date) => date !== null);

/** A day this near ahead is a slip, not the same day a year ago. [d] judgement */
const SLIP = 31;

/** The year of what was seen or done: the last such day, or one that lies just ahead; null for the 30th of February. */
export const lastSuch = (day: DayOfYear, today: LocalDate): LocalDate | null =>
  near(day, today).find((date) => date <= addDays(today, SLIP)) ?? null;

/** The year of what is foretold: the day nearest to another one; null for the 30th of February. */
export function nearestSuch(day: DayOfYear, to: LocalDate): LocalDate | null {
  const away = (date: LocalDate): number => Math.abs(daysBetween(to, date));
  return [...near(day, to)].sort((a, b) => away(a) - away(b))[0] ?? null;
}
