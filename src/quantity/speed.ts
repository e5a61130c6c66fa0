import type { Quantity } from "./brand.ts";

/** Wind. [m/s] */
export type MetrePerSecond = Quantity<"m/s">;

/** One international mile an hour. [m/s] */
const MILE_PER_HOUR = 0.44704;

/** @example metrePerSecond(2) // => 2 */
export const metrePerSecond = (value: number): MetrePerSecond => value as MetrePerSecond;

/** @example milesPerHour(15) // => 6.7056 */
export const milesPerHour = (value: number): MetrePerSecond => (value * MILE_PER_HOUR) as MetrePerSecond;

/** @example toMilesPerHour(metrePerSecond(6.7056)) // => 15 */
export const toMilesPerHour = (value: MetrePerSecond): number => value / MILE_PER_HOUR;
