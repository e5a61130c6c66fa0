import type { Celsius } from "../quantity/index.ts";

/** Usual low and high of a month's days, as an almanac has them. */
export interface UsualMonth {
  /** January 1 to December 12. */
  readonly month: number;
  readonly low: Celsius;
  readonly high: Celsius;
}
