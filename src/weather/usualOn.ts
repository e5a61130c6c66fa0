import type { Usual } from "../farm/index.ts";
import type { Celsius, LocalDate } from "../quantity/index.ts";

/** Day of its month on which a month's values hold. */
const MIDDLE = 15;

/** Longest stretch between two given times a straight line is drawn over, and how far one of them counts beyond itself. [d] judgement */
const LINE = 93;
const ALONE = 31;

const DAY = 86_400_000;

/**
 * Usual low and high of a date: those of a month at its middle, and between two times given on the straight line from one
 * to the other, over the turn of the year as well. null where no given time is near enough to say anything.
 */
export function usualOn(
  usual: readonly Usual[],
  date: LocalDate,
): { readonly low: Celsius; readonly high: Celsius } | null {
  const today = Date.parse(date) / DAY;
  const year = Number(date.slice(0, 4));
  let before = { away: Number.NEGATIVE_INFINITY, each: null as Usual | null };
  let after = { away: Number.POSITIVE_INFINITY, each: null as Usual | null };
  for (const each of usual)
    for (const later of [-1, 0, 1]) {
      const away = Date.UTC(year + later, each.month - 1, each.day ?? MIDDLE) / DAY - today;
      if (away <= 0 && away > before.away) before = { away, each };
      if (away > 0 && away < after.away) after = { away, each };
    }
  if (before.each === null || after.each === null) return null;
  const span = after.away - before.away;
  if (span <= LINE) {
    const share = -before.away / span;
    const between = (a: Celsius, b: Celsius): Celsius => (a + (b - a) * share) as Celsius;
    return {
      low: between(before.each.low, after.each.low),
      high: between(before.each.high, after.each.high),
    };
  }
  const nearer = -before.away <= after.away ? before : after;
  return Math.abs(nearer.away) <= ALONE ? { low: nearer.each!.low, high: nearer.each!.high } : null;
}
