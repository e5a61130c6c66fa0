import type { Centimetre, Instant, Kilogram, LocalDate, Metre, MetrePerSecond } from "../quantity/index.ts";
import type { Cover } from "./cover.ts";
import type { Crop } from "./crop.ts";
import type { KeptLearned } from "./keptLearned.ts";
import type { Place } from "./place.ts";
import type { Settings } from "./settings.ts";
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
  /** The long tunnel it is a part of, which is covered in parts; left out: it is whole. */
  readonly section?: Section;
}

/** Where a part of a long tunnel lies in it. */
export interface Section {
  /** Id and name of the whole. */
  readonly of: string;
  readonly name: string;
  /** Where it begins along the whole. [m] */
  readonly from: Metre;
}

/** A count of equal lengths of one cover. */
export interface Piece {
  readonly id: string;
  readonly cover: string;
  readonly length: Metre;
  readonly count: number;
  /** Tunnels side by side one of them is wide enough to lie over. */
  readonly spans: number;
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
  readonly parts: readonly Part[];
  /** Per kg; null: every pound counts alike. */
  readonly price: number | null;
  /** What a market's stall sells of it at the full price, orders apart; null: as much as is brought. */
  readonly stall: Kilogram | null;
  readonly orders: readonly Order[];
}

/** A crop in a product. */
export interface Part {
  readonly crop: string;
  /** [0–1] */
  readonly share: number;
  /** Crops that may stand in for it. */
  readonly swaps: readonly string[];
}

/** What a restaurant or a subscription takes at every day of a market. */
export interface Order {
  readonly market: string;
  readonly weight: Kilogram;
  /** What each kg that lacks costs beside its price; null: `orderShort` of the price. */
  readonly short: number | null;
}

export interface Labour {
  /** Per hour, in the farm's currency. */
  readonly wage: number;
  /** Overrides the covers' minutes: a factor on all of them. [1] */
  readonly pace: number;
  /** Cutting by hand. [min/m of bed] */
  readonly cutting: number;
  /** Minutes there are for covers at a walk, and for cutting at a pick; null: as many as it takes. [min] */
  readonly walk: number | null;
  readonly picking: number | null;
  /** Worth of one changed instruction on a sheet given out; left out: by its minutes. */
  readonly changedInstruction?: number;
}

/** What can be washed of what one pick brings, and kept cold in one night; null: as much as there is. */
export interface Handling {
  readonly washing: Kilogram | null;
  readonly cooler: Kilogram | null;
}

/** Settings that weigh or bound the plan. Defaults stand in data/settings.json with their standing. */
export interface Limits {
  readonly changesPerWeek: number;
  /** Sheets of row cover or film that may lie over each other. */
  readonly layers: number;
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
  /** Rows of tunnels that stand so close side by side that one wide piece may lie over neighbours. */
  readonly sideBySide: readonly (readonly string[])[];
  readonly pieces: readonly Piece[];
  readonly successions: readonly Succession[];
  readonly notes: readonly Note[];
  readonly labour: Labour;
  readonly handling: Handling;
  readonly limits: Limits;
  /** What the farm says of its own in the place of the starting values; left out: nothing. */
  readonly settings?: Partial<Settings>;
  /** Where each sensor stands: "outside" or a tunnel's id, that of a long one for all its sections. */
  readonly sensors: ReadonlyMap<string, string>;
  /** Sensors whose doubtful hours count all the same. */
  readonly keepFlagged: ReadonlySet<string>;
  readonly crops: ReadonlyMap<string, Crop>;
  readonly covers: ReadonlyMap<string, Cover>;
  /** What the grower froze or set of what was learned; left out: nothing. */
  readonly kept?: readonly KeptLearned[];
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
