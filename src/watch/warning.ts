import type { Celsius, Centimetre, LocalDate, MetrePerSecond, Mol } from "../quantity/index.ts";

/**
 * Why nothing lies there that would help: no such cloth is owned, none is as long as the tunnel, the grower keeps it as it is,
 * all that is lies elsewhere, no walk has the minutes to put it on, or wind keeps it from going on; in heat, why what warms lies there
 * still: the grower keeps it on, or no walk has the minutes to take it off.
 */
export type NoCloth = "none" | "tooShort" | "kept" | "inUse" | "minutes" | "wind" | "keptOn" | "minutesOff";

/** A bed in a frost. */
export interface FrostedBed {
  readonly succession: string;
  /** After a cut the stubble stands that grows again. */
  readonly of: "leaves" | "stubble";
  /** It dies below this after the week it has had. [°C] */
  readonly kill: Celsius;
  /** Its own chance of damage under the plan. [0–1] */
  readonly risk: number;
}

/** Something that may hurt a crop. Plain data; worded in sheet/. Severity: "danger" is probable loss, "care" needs an eye. */
export type Warning = { readonly severity: "danger" | "care"; readonly date: LocalDate } & (
  | {
      readonly kind: "frost";
      readonly tunnel: string;
      readonly beds: readonly FrostedBed[];
      /** Crop height: bare, and under what the plan has on that night. [°C] */
      readonly bare: Celsius;
      readonly expected: Celsius;
      readonly promised: Celsius;
      /** Leaves are unfit below this (most tender succession). [°C] */
      readonly unfit: Celsius;
      /** Plants die below this after the week they have had (most tender succession). [°C] */
      readonly kill: Celsius;
      /** Chance of damage under the plan (the bed most at risk). [0–1] */
      readonly risk: number;
      /** Wind forbids putting cloth on at the walk before the night. */
      readonly windy: boolean;
      /** Its coldest hour lies behind: nothing can be planned any more. Left out: ahead. */
      readonly past?: true;
      /** Left out: something lies there, or cloth at hand is not wanted. */
      readonly noClothLeft?: NoCloth;
    }
  | {
      readonly kind: "heat";
      readonly tunnel: string;
      readonly successions: readonly string[];
      /** Highest at the crop in calm air: under what lies there now if it were left, and under the plan. [°C] */
      readonly ifLeft: Celsius;
      readonly planned: Celsius;
      readonly limit: Celsius;
      /** Its hottest hour lies behind: nothing can be planned any more. Left out: ahead. */
      readonly past?: true;
      /** Left out: something lies there, or cloth at hand is not wanted. */
      readonly noClothLeft?: NoCloth;
    }
  | { readonly kind: "wind"; readonly wind: MetrePerSecond; readonly limit: MetrePerSecond }
  | {
      readonly kind: "snow";
      /** Snow still to fall that day, as water. [mm] */
      readonly water: number;
      /** Its usual depth, rough. [cm] */
      readonly depth: Centimetre;
      /** Where cloth or net lies on hoops that day. */
      readonly tunnels: readonly string[];
    }
  | { readonly kind: "light"; readonly light: Mol; readonly dayLength: number }
  | { readonly kind: "bolting"; readonly succession: string; readonly dayLength: number }
  | {
      readonly kind: "seedbed";
      readonly succession: string;
      readonly seedbed: Celsius;
      readonly limit: Celsius;
    }
);
