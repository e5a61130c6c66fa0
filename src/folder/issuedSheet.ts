import type { Setting } from "../farm/index.ts";
import type { Centimetre, Instant, Kilogram, LocalDate } from "../quantity/index.ts";
import { momentName, momentNamed } from "./momentName.ts";

/** A size with the range that four of five cases lie in. [cm] */
export interface IssuedSize {
  readonly low: Centimetre;
  readonly middle: Centimetre;
  readonly high: Centimetre;
}

export interface IssuedPick {
  readonly market: string;
  readonly marketDate: LocalDate;
  readonly at: Instant;
  /** Within the days planned. */
  readonly planned: boolean;
}

/** What was to become of a succession. */
export interface IssuedFate {
  readonly as: "salad" | "braising" | "small";
  /** When it was to be cut. */
  readonly cut: Instant;
  readonly pick: IssuedPick;
  readonly weight: Kilogram;
}

/** What a sheet said of one succession, the plan followed. */
export interface IssuedOutlook {
  readonly succession: string;
  readonly crop: string;
  readonly cropName: string;
  readonly sown: LocalDate;
  /** Salad size as the farm had it then. [cm] */
  readonly smallest: Centimetre;
  readonly largest: Centimetre;
  /** When it was to come up; null: not within the time looked at. `seen`: it was up already, and noted. */
  readonly emergence: { readonly at: Instant; readonly seen: boolean } | null;
  /** Day of the smallest salad size, and those that four of five cases lie between; null: not within the time looked at. */
  readonly reach: LocalDate | null;
  readonly early: LocalDate | null;
  readonly late: LocalDate | null;
  readonly atPicks: readonly {
    readonly pick: IssuedPick;
    readonly size: IssuedSize;
    /** Chance to be salad size. [0–1] */
    readonly odds: number;
    readonly weight: Kilogram;
  }[];
  /** null: no market takes it. */
  readonly fate: IssuedFate | null;
}

/** A round along the beds that was planned for. */
export interface IssuedWalk {
  readonly at: Instant;
  readonly date: LocalDate;
  readonly part: "morning" | "evening";
}

/** A cover changed by the plan. */
export interface IssuedChange {
  readonly tunnel: string;
  /** The walk it was for. */
  readonly walk: IssuedWalk;
  readonly from: Setting;
  readonly to: Setting;
}

/** What was safe to offer of a product on one selling day. */
export interface IssuedPromise {
  readonly product: string;
  readonly market: string;
  readonly marketDate: LocalDate;
  readonly safe: Kilogram;
}

export interface IssuedProduct {
  readonly product: string;
  readonly pick: IssuedPick;
  readonly expected: Kilogram;
  readonly ordered: Kilogram;
  /** Those it was to be cut from. */
  readonly successions: readonly string[];
}

/** A week's sheet as it was given out. */
export interface IssuedSheet {
  readonly version: number;
  /** Moment planned from. */
  readonly on: Instant;
  readonly days: number;
  readonly walks: readonly IssuedWalk[];
  /** Those planned for. */
  readonly tunnels: readonly string[];
  readonly changes: readonly IssuedChange[];
  readonly successions: readonly IssuedOutlook[];
  readonly products: readonly IssuedProduct[];
  readonly promises: readonly IssuedPromise[];
}

/** Name of an issued sheet; the second of the same moment has -2 behind it. */
export const sheetName = (on: Instant, copy: number): string =>
  `${momentName(on)}${copy === 1 ? "" : `-${copy}`}.json`;

/** Moment and number an issued sheet is named after; null for any other file. */
export function sheetNamed(name: string): { readonly on: Instant; readonly copy: number } | null {
  const match = /^(.+Z)(?:-([2-9]|[1-9]\d+))?\.json$/u.exec(name);
  const on = match === null ? null : momentNamed(match[1]!);
  return on === null ? null : { on, copy: Number(match![2] ?? 1) };
}
