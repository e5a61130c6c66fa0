import type { Centimetre, Instant, Kilogram, LocalDate, Metre, MetrePerSecond } from "../quantity/index.ts";
import type { Cover } from "./cover.ts";
import type { Crop } from "./crop.ts";
import type { Kept } from "./kept.ts";
import type { Place } from "./place.ts";
import type { Usual } from "./usual.ts";

/** The set of hoops whose beds share one cover; decisions are made for it. */
export interface Tunnel {
  readonly id: string;
  readonly name: string;
  /** [m] */
  readonly length: Metre;
  /** null: no hoops stand, so no cover can be put on. */
  readonly hoops: "wire" | "conduit" | "pvc" | null;
  /** Beds side by side under the hoops. */
  readonly beds: number;
}

/** A count of equal lengths of one cover. */
export interface Piece {
  readonly id: string;
  readonly cover: string;
  readonly length: Metre;
  readonly count: number;
  /** Tunnels on which one of them lies now, as pieces.csv says; notes may say otherwise. */
  readonly liesOn: readonly string[];
}

/** One sowing of one crop in one place, from sowing to last cut. */
export interface Succession {
  readonly id: string;
  readonly crop: string;
  readonly tunnel: string;
  /** Place along the bed. [m] */
  readonly from: Metre;
  readonly to: Metre;
  readonly sown: LocalDate;
  /** Market it is meant for, or null. */
  readonly market: string | null;
  /** Cuts already taken. */
  readonly cuts: number;
  /** Must stay under net from sowing to last cut. */
  readonly net: boolean;
}

export interface Market {
  readonly id: string;
  readonly name: string;
  /** Sunday 0 to Saturday 6. */
  readonly weekday: number;
  /** Moments greens for it are cut: days before the market and hour on the farm's clock. */
  readonly picks: readonly { readonly daysBefore: number; readonly hour: number }[];
}

/** What is sold. */
export interface Product {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly { readonly crop: string; readonly share: number }[];
  /** Per kg; null: every pound counts alike. */
  readonly price: number | null;
  readonly orders: readonly { readonly market: string; readonly weight: Kilogram }[];
}

export interface Labour {
  /** Per hour, in the farm's currency. */
  readonly wage: number;
  /** Overrides the covers' minutes: a factor on all of them. [1] */
  readonly pace: number;
}

/** Settings that weigh or bound the plan. Defaults stand in data/settings.json with their standing. */
export interface Limits {
  readonly changesPerWeek: number;
  /** Wind above which no cloth is put on. [m/s] */
  readonly wind: MetrePerSecond;
  /** Days under the light floor allowed to shade cloth in the plan. */
  readonly dimDays: number;
  /** How many times a probable damage counts. [1] */
  readonly caution: number;
}

export interface Farm {
  readonly name: string;
  readonly units: "US" | "metric";
  /** e.g. "$"; null: worth is counted in weight. */
  readonly currency: string | null;
  readonly place: Place;
  /** Usual weather of the months the grower gave; none: nothing is known of it. */
  readonly usual: readonly Usual[];
  /** A table of normals the grower supplies; left out: there is none. */
  readonly normals?: readonly Usual[];
  /** Hours on the farm's clock. */
  readonly walks: { readonly morning: number; readonly evening: number };
  readonly markets: readonly Market[];
  readonly products: readonly Product[];
  readonly tunnels: readonly Tunnel[];
  readonly pieces: readonly Piece[];
  readonly successions: readonly Succession[];
  readonly notes: readonly Note[];
  readonly labour: Labour;
  readonly limits: Limits;
  /** Where each sensor stands: "outside" or a tunnel's id. */
  readonly sensors: ReadonlyMap<string, string>;
  /** Sensors whose doubtful hours count all the same. */
  readonly keepFlagged: ReadonlySet<string>;
  readonly crops: ReadonlyMap<string, Crop>;
  readonly covers: ReadonlyMap<string, Cover>;
  /** What the grower froze or set of what was learned; left out: nothing. */
  readonly kept?: readonly Kept[];
}

/** How a cover lies. */
export type CoverState = "on" | "vented" | "nights" | "off";

/** Something seen or done. `remark`: what the grower wrote beside it, "" for nothing. */
export type Note = { readonly at: Instant; readonly line: number; readonly remark: string } & (
  | { readonly kind: "leaf"; readonly succession: string; readonly lengths: readonly Centimetre[] }
  /** The stretch of the bed left bare beside its cover, measured as a leaf is. */
  | { readonly kind: "strip"; readonly succession: string; readonly lengths: readonly Centimetre[] }
  | { readonly kind: "emerged"; readonly succession: string }
  /** Seen below salad size. */
  | { readonly kind: "not ready"; readonly succession: string }
  | { readonly kind: "resown"; readonly succession: string }
  | { readonly kind: "cover"; readonly tunnel: string; readonly cover: string; readonly state: CoverState }
  | {
      readonly kind: "cut";
      readonly succession: string;
      readonly weight: Kilogram | null;
      readonly last: boolean;
    }
  | { readonly kind: "loss"; readonly succession: string; readonly share: number }
);
