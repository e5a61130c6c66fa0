import type { Celsius, LocalDate } from "../quantity/index.ts";
import type { Usual } from "./usual.ts";

/** Low and high of one date. */
export interface DatedRange {
  readonly date: LocalDate;
  readonly low: Celsius;
  readonly high: Celsius;
}

/** Usual low and high of a date, and how many years they are the mean of. */
export interface Smoothed extends Usual {
  readonly day: number;
  readonly years: number;
}

/** Days before and after a date that count with it, and how many of these fifteen make a year count. [d] judgement */
const WINDOW = 7;
const ENOUGH = 8;

/** Dates of a leap year, so that the 29th of February has its place. */
const DATES: readonly { readonly month: number; readonly day: number }[] = Array.from(
  { length: 366 },
  (_, index) => {
    const date = new Date(Date.UTC(2024, 0, 1 + index));
    return { month: date.getUTCMonth() + 1, day: date.getUTCDate() };
  },
);
const INDEX: ReadonlyMap<string, number> = new Map(
  DATES.map(({ month, day }, index) => [
    `${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`,
    index,
  ]),
);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Usual low and high of every date that enough years tell of: the mean of the years' means over the week before and after it.
 *
 * @param least - Years needed.
 */
export function smoothedYears(days: readonly DatedRange[], least: number): readonly Smoothed[] {
  const onDate: (readonly { readonly year: string; readonly low: number; readonly high: number }[])[] = [];
  for (const { date, low, high } of days) {
    const index = INDEX.get(date.slice(5))!;
    onDate[index] = [...(onDate[index] ?? []), { year: date.slice(0, 4), low, high }];
  }
  return DATES.flatMap((date, index): readonly Smoothed[] => {
    const byYear = new Map<string, { readonly low: number[]; readonly high: number[] }>();
    for (let away = -WINDOW; away <= WINDOW; away++)
      for (const { year, low, high } of onDate[(index + away + DATES.length) % DATES.length] ?? []) {
        const own = byYear.get(year) ?? { low: [], high: [] };
        own.low.push(low);
        own.high.push(high);
        byYear.set(year, own);
      }
    const years = [...byYear.values()].filter(({ low }) => low.length >= ENOUGH);
    if (years.length < least) return [];
    return [
      {
        ...date,
        low: mean(years.map(({ low }) => mean(low))) as Celsius,
        high: mean(years.map(({ high }) => mean(high))) as Celsius,
        years: years.length,
      },
    ];
  });
}
