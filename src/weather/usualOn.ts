import type { UsualMonth } from "../farm/index.ts";
import { type Celsius, daysBetween, type LocalDate } from "../quantity/index.ts";

/** Day of its month on which a month's values hold. */
const MIDDLE = 15;

/** Longest stretch between two given months a straight line is drawn over, and how far one of them counts beyond its middle. [d] judgement */
const LINE = 93;
const ALONE = 31;

const two = (value: number): string => String(value).padStart(2, "0");
const year = (date: LocalDate, later: number): string => String(Number(date.slice(0, 4)) + later);

/**
 * Usual low and high of a date: those of a month at its middle, and between two middles on the straight line from one to
 * the other, over the turn of the year as well. null where no given month is near enough to say anything.
 */
export function usualOn(
  months: readonly UsualMonth[],
  date: LocalDate,
): { readonly low: Celsius; readonly high: Celsius } | null {
  const near = [-1, 0, 1]
    .flatMap((later) => months.map((each) => ({ each, year: year(date, later) })))
    .map(({ each: { month, low, high }, year }) => ({
      low,
      high,
      away: daysBetween(date, `${year}-${two(month)}-${two(MIDDLE)}`),
    }))
    .sort((a, b) => a.away - b.away);
  const before = near.findLast(({ away }) => away <= 0);
  const after = near.find(({ away }) => away > 0);
  if (before === undefined || after === undefined) return null;
  const span = after.away - before.away;
  if (span <= LINE) {
    const share = -before.away / span;
    const between = (a: Celsius, b: Celsius): Celsius => (a + (b - a) * share) as Celsius;
    return { low: between(before.low, after.low), high: between(before.high, after.high) };
  }
  const { away, low, high } = -before.away <= after.away ? before : after;
  return Math.abs(away) <= ALONE ? { low, high } : null;
}
