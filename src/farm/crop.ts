import type { Celsius, Centimetre, DegreeDays, Mol } from "../quantity/index.ts";
import type { Counted } from "./counted.ts";

/** Form of the response to temperature between its cardinal temperatures. */
export const RESPONSES = ["trapezoid", "yin", "wang-engel"] as const;

/** How a value is known. */
export type HowKnown = "published" | "derived" | "memory" | "judgement";

/** What a crop needs and bears. Values of the catalogue stand in data/crops.json with unit, source and standing. */
export interface Crop {
  readonly id: string;
  readonly name: string;
  readonly emergence: {
    /** [°C] seedbed */
    readonly base: Celsius;
    /** [°C·d] above `base` from sowing to half emerged */
    readonly sum: DegreeDays;
    /** Seedbed above which part of the stand is lost. [°C] */
    readonly tooWarm: Celsius;
  };
  /** Response of leaf growth to temperature: nothing below base, rising to optimumLow, flat to optimumHigh, falling to nothing at ceiling; the smooth forms have one optimum, midway from optimumLow to optimumHigh. [°C] */
  readonly growth: {
    readonly base: Celsius;
    readonly optimumLow: Celsius;
    readonly optimumHigh: Celsius;
    readonly ceiling: Celsius;
    /** A requirement belongs to the form it was found with. Left out: trapezoid. */
    readonly form?: (typeof RESPONSES)[number];
  };
  /** Thermal time from emergence to the smallest salad size, by hourly integration of `growth`. [°C·d] */
  readonly requirement: DegreeDays;
  /** How the requirement was counted before it was brought to that clock; left out: it never was another. */
  readonly counted?: Counted;
  /** Spread of the requirement: standard deviation of its logarithm. [1] */
  readonly requirementSpread: number;
  readonly requirementStanding: HowKnown;
  /** f in 1/E = 1/D + f/R. [MJ/m² per °C·d] */
  readonly lightOnPace: number;
  /** Exponent of the daily light integral in weight. [1] */
  readonly lightOnWeight: number;
  readonly smallest: Centimetre;
  readonly largest: Centimetre;
  /** Fresh weight per metre of bed at the middle of the window in full light. [kg/m] */
  readonly yield: number;
  /** Crop-height temperature at which leaves are no longer fit to sell. [°C] */
  readonly unfit: Celsius;
  /** Crop-height temperature at which hardened plants die. [°C] */
  readonly kill: Celsius;
  /** Crop-height temperature at which plants die that have not hardened. [°C] */
  readonly killSoft: Celsius;
  /** Temperature above which taste and texture suffer. [°C] */
  readonly qualityLimit: Celsius;
  /** Daily light integral below which shade cloth may not hold it. [mol/m²] */
  readonly lightFloor: Mol;
  /** Share of `requirement` a second cut needs. [1] */
  readonly regrowth: number;
  /** Cuts usually taken. */
  readonly cuts: number;
  /** Days it keeps at 0 to 2 °C. [d] */
  readonly storage: number;
  /** Day length from which it tends to bolt. [h] null: not known. */
  readonly boltingDay: number | null;
}
