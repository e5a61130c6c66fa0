import type { Metre } from "../quantity/index.ts";

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
}
