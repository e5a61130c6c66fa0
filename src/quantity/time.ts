import type { Quantity } from "./brand.ts";

/** An instant: milliseconds since 1970-01-01T00:00Z. [ms] */
export type Instant = Quantity<"ms">;

/** A whole hour of universal time: hours since 1970-01-01T00Z, naming the hour that begins there. [h] */
export type UtcHour = Quantity<"UTC h">;

/** A calendar date of the farm, written 2026-04-20. */
export type LocalDate = string & { readonly localDate: unique symbol };

export const HOUR = 3_600_000;

/** @example instant(0) // => 0 */
export const instant = (value: number): Instant => value as Instant;

/** @example utcHour(3) // => 3 */
export const utcHour = (value: number): UtcHour => value as UtcHour;

/** The hour an instant lies in. @example hourOf(instant(5_400_000)) // => 1 */
export const hourOf = (at: Instant): UtcHour => Math.floor(at / HOUR) as UtcHour;

/** The instant an hour begins. @example startOf(utcHour(1)) // => 3600000 */
export const startOf = (hour: UtcHour): Instant => (hour * HOUR) as Instant;
