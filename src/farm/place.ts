import type { Metre } from "../quantity/index.ts";

/** Curves through a day's low and high, by the names of those who published them. */
export const CURVES = ["goudriaan-van-laar", "parton-logan", "linvill"] as const;

/** Where the farm is. */
export interface Place {
  /** North positive. [°] */
  readonly latitude: number;
  /** East positive. [°] */
  readonly longitude: number;
  readonly elevation: Metre;
  /** Name of the time zone in the public time-zone database, e.g. "America/New_York". */
  readonly zone: string;
  /** Inland or near a large water: chooses k of FAO-56 eq. 50. */
  readonly setting: "inland" | "coast";
  /** Which curve makes hours of a day's low and high where no hours were logged; left out: the first. */
  readonly curve?: (typeof CURVES)[number];
}
