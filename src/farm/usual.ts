import type { Celsius } from "../quantity/index.ts";

/** Usual low and high at a time of the year. */
export interface Usual {
  /** January 1 to December 12. */
  readonly month: number;
  /** Day of the month; left out: the values are the whole month's, as an almanac has them. */
  readonly day?: number;
  readonly low: Celsius;
  readonly high: Celsius;
}
