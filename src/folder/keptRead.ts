import type { Farm, Kept } from "../farm/index.ts";
import { addDays, type Instant, instantAt, type LocalDate, localDate } from "../quantity/index.ts";
import { shown } from "./faults.ts";
import type { FarmNames } from "./noteNames.ts";
import { type Misreading, misread } from "./noteRead.ts";

/** What a settled thing is read against. */
export interface KeptSetting {
  readonly farm: Farm;
  readonly names: FarmNames;
  /** Moment planned from. */
  readonly on: Instant;
  /** Days planned. [d] */
  readonly days: number;
}

export type KeptRead = readonly Kept[] | Misreading;

/** Words that say no more than that something is settled. */
export const SETTLED: RegExp = /\b(?:keep|kept|leave|left|stays?|stand|standing)\b/giu;

export const notKnown = (words: readonly string[]): Misreading =>
  misread(`Not understood: ${shown(words.join(" "))}.`, { unknown: words });

export const FIGURES: Misreading = misread("Write a point for decimals, and a blank between numbers.");

/** The end of what is planned, a date no longer in it. */
export const after = ({ farm, on, days }: KeptSetting): LocalDate =>
  addDays(localDate(farm.place.zone, on), days);

/** The walk at which the plan begins. */
export const firstWalk = ({ farm: { place, walks }, on }: KeptSetting): Instant => {
  const today = localDate(place.zone, on);
  const ahead = [0, 1]
    .flatMap((days) => [walks.morning, walks.evening].map((hour) => ({ days, hour })))
    .map(({ days, hour }) => instantAt(place.zone, addDays(today, days), hour));
  return ahead.find((at) => at >= on)!;
};

export const outside = (setting: KeptSetting): Misreading => {
  const { farm, on } = setting;
  return misread("Name a day within it, or plan more days with --days.", {
    code: "keep-outside-plan",
    expected: `a time within what is planned, ${localDate(farm.place.zone, on)} to ${addDays(after(setting), -1)}`,
  });
};
