import type { Counting, CutOff } from "../farm/index.ts";
import { type DegreeDays, degreeDays } from "../quantity/index.ts";
import type { LowHigh } from "../weather/index.ts";

/** How temperature is taken to run between the day's low and high. */
export type DayShape = "sine" | "triangle";

/** Between which temperatures degree-days are counted. [°C] */
export interface Thresholds {
  readonly lower: number;
  readonly upper: number;
}

/** Degree-days above one temperature [°C·d], and the share of the day above it [1]. */
interface Above {
  readonly sum: number;
  readonly share: number;
}

/**
 * D(c) and F(c): all of the day above `threshold`, without an upper limit. The shapes run the same up and down, so that a
 * fall to a next low above the high counts as the rise it is.
 */
function above(threshold: number, day: LowHigh, shape: DayShape): Above {
  const low = Math.min(day.low, day.high);
  const high = Math.max(day.low, day.high);
  if (high <= threshold) return { sum: 0, share: 0 };
  const mean = (low + high) / 2;
  if (low >= threshold) return { sum: mean - threshold, share: 1 };
  if (shape === "triangle") {
    const share = (high - threshold) / (high - low);
    return { sum: (share * (high - threshold)) / 2, share };
  }
  const half = (high - low) / 2;
  const crossing = Math.asin(Math.min(1, Math.max(-1, (threshold - mean) / half)));
  const sum = ((mean - threshold) * (Math.PI / 2 - crossing) + half * Math.cos(crossing)) / Math.PI;
  return { sum, share: 0.5 - crossing / Math.PI };
}

/**
 * Degree-days of one day from its low and high, by a single sine or triangle.
 *
 * With D(c) the degree-days above c and F(c) the share of the day above c: none D(lower); horizontal D(lower) − D(upper);
 * intermediate D(lower) − 2·D(upper); vertical D(lower) − D(upper) − (upper − lower)·F(upper).
 *
 * @param day - Low and high. [°C]
 * @returns Never negative, save for the intermediate cut-off, which as published is not floored: hot days count back. [°C·d]
 * @source baskervilleEmin1969 (sine), zalom1983 (triangle, cut-offs), contents from memory; this one form of them: leafpaceDerivation
 * @example singleDegreeDays({ low: 10, high: 30 }, { lower: 4, upper: 24 }, "triangle", "horizontal") // => 15.1
 */
export function singleDegreeDays(
  day: LowHigh,
  { lower, upper }: Thresholds,
  shape: DayShape,
  cutOff: CutOff,
): DegreeDays {
  const counted = above(lower, day, shape).sum;
  const over = above(upper, day, shape);
  const lost = {
    none: 0,
    horizontal: over.sum,
    intermediate: 2 * over.sum,
    vertical: over.share === 0 ? 0 : over.sum + (upper - lower) * over.share,
  };
  return degreeDays(counted - lost[cutOff]);
}

/**
 * Degree-days of one day that rises from its own low and falls to the next day's: the mean of two single days.
 *
 * @param next - Low of the day after. [°C]
 * @returns As `singleDegreeDays`. [°C·d]
 * @source allen1976, content from memory
 * @example doubleDegreeDays({ low: 8, high: 22 }, 12, { lower: 4, upper: 24 }, "sine", "none") // => 12
 */
export function doubleDegreeDays(
  day: LowHigh,
  next: number,
  thresholds: Thresholds,
  shape: DayShape,
  cutOff: CutOff,
): DegreeDays {
  const rising = singleDegreeDays(day, thresholds, shape, cutOff);
  const falling = singleDegreeDays({ low: next, high: day.high }, thresholds, shape, cutOff);
  return degreeDays((rising + falling) / 2);
}

/**
 * Simple average: the day's mean above the lower threshold, the mean capped at the upper one (`Infinity` for none).
 *
 * @returns Never negative. [°C·d]
 * @source mcMasterWilhelm1997, method 1; capping the mean: memory
 * @example simpleAverage({ low: 2, high: 18 }, { lower: 4, upper: Number.POSITIVE_INFINITY }) // => 6
 */
export function simpleAverage({ low, high }: LowHigh, { lower, upper }: Thresholds): DegreeDays {
  return degreeDays(Math.max(0, Math.min(upper, (low + high) / 2) - lower));
}

/**
 * Clamped or modified average: low and high are brought between the thresholds first, then averaged. In any scale of temperature;
 * with 50 and 86 °F it is the growing degree-day of American extension.
 *
 * @returns Never negative. [°C·d]
 * @source mcMasterWilhelm1997, method 2
 * @example clampedAverage({ low: 65, high: 90 }, { lower: 50, upper: 86 }) // => 25.5
 */
export function clampedAverage({ low, high }: LowHigh, { lower, upper }: Thresholds): DegreeDays {
  const clamp = (value: number): number => Math.min(upper, Math.max(lower, value));
  return degreeDays((clamp(low) + clamp(high)) / 2 - lower);
}

/**
 * The four-case formula of a meteorological office: the mean for days wholly above the base, and straight lines for days across it.
 *
 * @returns Never negative. [°C·d]
 * @source metIeData03
 * @example fourCaseDegreeDays({ low: -2, high: 14 }, 4) // => 3.5
 */
export function fourCaseDegreeDays({ low, high }: LowHigh, base: number): DegreeDays {
  if (high <= base) return degreeDays(0);
  const mean = (low + high) / 2;
  if (low >= base) return degreeDays(mean - base);
  if (mean > base) return degreeDays((high - base) / 2 - (base - low) / 4);
  return degreeDays((high - base) / 4);
}

/**
 * Degree-days of one day by a way of counting, all of them behind one door.
 *
 * @param next - Low of the day after; only the double methods ask for it. [°C]
 * @returns As the method it is counted by. [°C·d]
 * @example countedDay({ method: "simple average", base: celsius(4), upper: null, cutOff: "none" }, { low: 2, high: 18 }, 1) // => 6
 */
export function countedDay(
  { method, base, upper, cutOff }: Counting,
  day: LowHigh,
  next: number,
): DegreeDays {
  const thresholds = { lower: base, upper: upper ?? Number.POSITIVE_INFINITY };
  switch (method) {
    case "simple average":
      return simpleAverage(day, thresholds);
    case "clamped average":
      return clampedAverage(day, thresholds);
    case "four cases":
      return fourCaseDegreeDays(day, base);
    case "single triangle":
      return singleDegreeDays(day, thresholds, "triangle", cutOff);
    case "single sine":
      return singleDegreeDays(day, thresholds, "sine", cutOff);
    case "double triangle":
      return doubleDegreeDays(day, next, thresholds, "triangle", cutOff);
    case "double sine":
      return doubleDegreeDays(day, next, thresholds, "sine", cutOff);
  }
}
