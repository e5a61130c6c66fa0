import type { UtcHour } from "../quantity/index.ts";

/** One hour's readings, summed up. */
export interface HourSum {
  readonly hour: UtcHour;
  /** [°C] */
  sum: number;
  count: number;
  lowest: number;
  highest: number;
  /** Its first and last reading. [ms] */
  from: number;
  to: number;
  /** The readings themselves, as times and values one after the other; null once only the sums are kept. */
  held: number[] | null;
}

export const emptyHour = (hour: UtcHour): HourSum => ({
  hour,
  sum: 0,
  count: 0,
  lowest: Number.POSITIVE_INFINITY,
  highest: Number.NEGATIVE_INFINITY,
  from: Number.POSITIVE_INFINITY,
  to: Number.NEGATIVE_INFINITY,
  held: [],
});

/**
 * Lays a reading into its hour. One with the time and the value of another is not laid ("repeated"); one with another
 * value is ("clash"). Of an hour that keeps only sums, every time between its first and last is taken for repeated.
 */
export function laid(hour: HourSum, at: number, value: number): "new" | "repeated" | "clash" {
  let fate: "new" | "clash" = "new";
  if (hour.count > 0 && at <= hour.to && at >= hour.from) {
    if (hour.held === null) return "repeated";
    for (let i = 0; i < hour.held.length; i += 2) {
      if (hour.held[i] !== at) continue;
      if (hour.held[i + 1] === value) return "repeated";
      fate = "clash";
    }
  }
  hour.sum += value;
  hour.count += 1;
  if (value < hour.lowest) hour.lowest = value;
  if (value > hour.highest) hour.highest = value;
  if (at < hour.from) hour.from = at;
  if (at > hour.to) hour.to = at;
  hour.held?.push(at, value);
  return fate;
}
