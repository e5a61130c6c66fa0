import type { CelsiusDifference } from "../quantity/index.ts";

/** What a farm has learned of a cover beyond its gains, which stand in the cover itself. */
export interface LearnedOfCover {
  /** Spreads of what it warms by day and by night, and of what it takes as shade; standard deviations of logarithms. [1] */
  readonly day: number;
  readonly night: number;
  readonly shade: number;
  /** Factor on what shade takes from the growing point. [1] */
  readonly cooling: number;
}

/** What a cloth, film or net does. Parameters of the heat balance (leafpaceCoverFit); values stand in data/covers.json. */
export interface Cover {
  readonly id: string;
  readonly name: string;
  readonly kind: "shade" | "rowCover" | "film" | "net";
  /** Share of light let through. [1] */
  readonly light: number;
  /** Gain by day is sun × radiation / (still + windy × wind). [1], [W/m²/K], [W/m²/K per m/s] */
  readonly day: { readonly sun: number; readonly still: number; readonly windy: number };
  /** Gain by night in calm air. [°C] */
  readonly night: { readonly clear: CelsiusDifference; readonly cloudy: CelsiusDifference };
  /** Night gain that may be promised against frost. [°C] */
  readonly frostCredit: CelsiusDifference;
  /** Left out: nothing was learned of it. */
  readonly learned?: LearnedOfCover;
  /** Minutes for 30 m (100 ft) of tunnel, one person. [min] */
  readonly minutes: { readonly on: number; readonly off: number; readonly vent: number };
}
