import type { Celsius, Centimetre, DegreeDays } from "../quantity/index.ts";

/** Ways of counting degree-days from a day's low and high; the double ones fall to the next day's low. */
export const COUNTINGS = [
  "simple average",
  "clamped average",
  "four cases",
  "single triangle",
  "double triangle",
  "single sine",
  "double sine",
] as const;

/**
 * What happens above the upper threshold: nothing (none), no further gain (horizontal), the gain falls as fast as it rose
 * (intermediate), or it stops (vertical).
 */
export const CUT_OFFS = ["none", "horizontal", "intermediate", "vertical"] as const;
export type CutOff = (typeof CUT_OFFS)[number];

/** A way of counting with its thresholds. [°C] */
export interface Counting {
  readonly method: (typeof COUNTINGS)[number];
  readonly base: Celsius;
  /** null: none, and then the cut-off is "none". Averages take it as the most that counts, horizontally. */
  readonly upper: Celsius | null;
  readonly cutOff: CutOff;
}

/** A requirement as it was counted, when not hour by hour from emergence with the crop's own response. */
export interface Counted extends Counting {
  readonly sum: DegreeDays;
  readonly from: "sowing" | "emergence";
  /** Leaf length it was counted to. */
  readonly to: Centimetre;
  /** Steady temperature at which it was brought to the crop's own clock; "here": to be, on the farm's own weather. */
  readonly at: Celsius | "here";
}
