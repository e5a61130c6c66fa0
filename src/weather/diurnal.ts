/** Hours by which the day's highest temperature follows solar noon, and the time constant of the night. [h] */
const LAG = 1.5;
const NIGHT_CONSTANT = 4;

/** One day's turning points as the curve needs them. Times in hours on one common axis. */
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

const byDay = (day: Turning, time: number): number =>
  day.low + (day.high - day.low) * Math.sin((Math.PI * (time - day.rise)) / (day.length + 2 * LAG));

/**
 * Temperature between one sunrise and the next: a sine by day, and by night a decay that meets the next minimum exactly.
 *
 * @param today - The day whose sunrise is the last one before `time`.
 * @param next - The day after.
 * @param time - Between the two sunrises. [h]
 * @returns [°C]
 * @source goudriaanVanLaar1994, night form as published second hand; lag 1.5 h, time constant 4 h
 * @example diurnal({ rise: 6, length: 12, low: 10, high: 30 }, { rise: 30, length: 12, low: 10, high: 30 }, 21).toFixed(6) // => "15.228007"
 */
export function diurnal(today: Turning, next: Turning, time: number): number {
  const set = today.rise + today.length;
  if (time <= set) return byDay(today, time);
  const night = next.rise - set;
  const sunset = byDay(today, set);
  const end = Math.exp(-night / NIGHT_CONSTANT);
  const now = Math.exp(-(time - set) / NIGHT_CONSTANT);
  return (next.low - sunset * end + (sunset - next.low) * now) / (1 - end);
}
