import type { CelsiusDifference } from "../quantity/index.ts";

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
  /** Minutes for 30 m (100 ft) of tunnel, one person. [min] */
  readonly minutes: { readonly on: number; readonly off: number; readonly vent: number };
}
