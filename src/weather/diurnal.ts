import type { Place } from "../farm/index.ts";

/** One day's turning points as the curves need them. Times in hours on one common axis. */
export interface Turning {
  /** Sunrise. [h] */
  readonly rise: number;
  /** Sunrise to sunset. [h] */
  readonly length: number;
  /** [°C] */
  readonly low: number;
  /** [°C] */
  readonly high: number;
}

/**
 * Temperature between one sunrise and the next.
 *
 * @param today - The day whose sunrise is the last one before `time`.
 * @param next - The day after.
 * @param time - Between the two sunrises. [h]
 * @returns [°C]
 */
export type Diurnal = (today: Turning, next: Turning, time: number) => number;

/** A sine from a low to the high and on towards the low again. */
const sine = ({ low, high }: Turning, sinceLow: number, width: number): number =>
  low + (high - low) * Math.sin((Math.PI * sinceLow) / width);

/** Hours by which the day's highest temperature follows solar noon, and the time constant of the night. [h] */
const LAG = 1.5;
const NIGHT_CONSTANT = 4;

/**
 * A sine by day, and by night a decay that meets the next low exactly.
 *
 * @source goudriaanVanLaar1994, night form as published second hand; lag 1.5 h, time constant 4 h
 * @example goudriaanVanLaar({ rise: 6, length: 12, low: 10, high: 30 }, { rise: 30, length: 12, low: 10, high: 30 }, 21).toFixed(6) // => "15.228007"
 */
export const goudriaanVanLaar: Diurnal = (today, next, time) => {
  const set = today.rise + today.length;
  const width = today.length + 2 * LAG;
  if (time <= set) return sine(today, time - today.rise, width);
  const sunset = sine(today, today.length, width);
  const gone = Math.expm1((set - time) / NIGHT_CONSTANT) / Math.expm1((set - next.rise) / NIGHT_CONSTANT);
  return sunset + (next.low - sunset) * gone;
};

/** Lag of the high, decay of the night and lag of the low, for air at 1.5 m. [h], [1], [h] */
const PARTON_LOGAN = { high: 1.86, night: 2.2, low: -0.17 } as const;

/**
 * A sine by day and a decay by night that does not quite reach the next low and steps down to it.
 *
 * @source partonLogan1981, equations from memory, constants second hand
 * @example partonLogan({ rise: 6, length: 12, low: 10, high: 30 }, { rise: 30, length: 12, low: 10, high: 30 }, 21).toFixed(6) // => "17.516749"
 */
export const partonLogan: Diurnal = (today, next, time) => {
  const { high, night, low } = PARTON_LOGAN;
  const set = today.rise + today.length;
  const width = today.length + 2 * high;
  // Its day begins at the low, a little before sunrise.
  if (time >= next.rise + low) return sine(next, time - next.rise - low, next.length + 2 * high);
  if (time <= set) return sine(today, time - today.rise - low, width);
  const sunset = sine(today, today.length - low, width);
  return next.low + (sunset - next.low) * Math.exp((night * (set - time)) / (next.rise - set));
};

/**
 * A sine by day and a logarithm by night that meets the next low exactly; it begins an hour after sunset.
 *
 * @source linvill1990, equations from memory
 * @example linvill({ rise: 6, length: 12, low: 10, high: 30 }, { rise: 30, length: 12, low: 10, high: 30 }, 21).toFixed(6) // => "17.889698"
 */
export const linvill: Diurnal = (today, next, time) => {
  const set = today.rise + today.length;
  const width = today.length + 4;
  if (time <= set) return sine(today, time - today.rise, width);
  const sunset = sine(today, today.length, width);
  const [hours, night] = [time - set, next.rise - set];
  return hours <= 1 ? sunset : sunset - ((sunset - next.low) * Math.log(hours)) / Math.log(night);
};

/**
 * The curves by the name a farm's place may choose. Where it chooses none the first counts: against the hourly normals of
 * Seattle it comes nearest in thermal time, which is what dates are made of.
 */
export const DIURNALS: Readonly<Record<NonNullable<Place["curve"]>, Diurnal>> = {
  "goudriaan-van-laar": goudriaanVanLaar,
  "parton-logan": partonLogan,
  linvill,
};
