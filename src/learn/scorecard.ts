import { groupBy, type Kilogram, kilogram } from "../quantity/index.ts";
import { type DayOutcome, type Outcomes, SHARE, type SizeOutcome } from "./outcomes.ts";
import { brier } from "./scores.ts";
import { shareLimits } from "./shareOf.ts";

/** Beds below which no conclusion is drawn. judgement */
export const ENOUGH = 8;

/** Confidence of every range of a share. [0–1] */
const CONFIDENCE = 0.95;

/** So many of so many, with the chances that this does not rule out. */
export interface Share {
  readonly hits: number;
  readonly count: number;
  readonly low: number;
  readonly high: number;
}

/** Days off: mean with its sign (later than said above 0), and mean of its size. [d] null: none is known. */
export interface DaysOff {
  readonly count: number;
  readonly mean: number | null;
  readonly usual: number | null;
}

/** One crop, or all. */
export interface Card {
  /** null: all crops together. */
  readonly crop: string | null;
  readonly cropName: string | null;
  readonly days: DaysOff;
  readonly dates: Share;
  readonly sizes: Share;
  readonly weights: { readonly count: number; readonly expected: Kilogram; readonly cut: Kilogram };
}

/** Chances said that lie near each other, and how often it came. */
export interface Bin {
  /** The nearest fifth, 0 to 5. */
  readonly fifth: number;
  /** Mean of the chances said. */
  readonly said: number;
  readonly came: Share;
}

export interface Reliability {
  readonly bins: readonly Bin[];
  readonly count: number;
  /** Brier's score, and that of saying each time how often it came in all; null: nothing is known. */
  readonly brier: number | null;
  readonly brierOfMean: number | null;
}

/** May a date be trusted more or less than its range says? Each bed counts once. */
export interface Verdict {
  readonly kind: "tooEarly" | "less" | "asSaid" | "more";
  readonly inside: Share;
}

/** Sizes said so many days ahead. */
export interface LeadShare {
  readonly from: number;
  /** Below it; null: no end. */
  readonly to: number | null;
  readonly inside: Share;
}

const share = (all: readonly { readonly inside: boolean }[]): Share => {
  const hits = all.filter(({ inside }) => inside).length;
  return {
    hits,
    count: all.length,
    ...(all.length === 0 ? { low: 0, high: 1 } : shareLimits(hits, all.length, CONFIDENCE)),
  };
};

export function daysOffOf(all: readonly { readonly daysOff: number | null }[]): DaysOff {
  const off = all.flatMap(({ daysOff }) => (daysOff === null ? [] : [daysOff]));
  const mean = (values: readonly number[]): number | null =>
    values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
  return { count: off.length, mean: mean(off), usual: mean(off.map(Math.abs)) };
}

function cardOf(crop: string | null, cropName: string | null, { dates, sizes, weights }: Outcomes): Card {
  const own = <Each extends { readonly crop: string }>(all: readonly Each[]): readonly Each[] =>
    crop === null ? all : all.filter((each) => each.crop === crop);
  const weighed = own(weights);
  const sum = (key: "expected" | "cut"): Kilogram =>
    kilogram(weighed.reduce((all, each) => all + each[key], 0));
  return {
    crop,
    cropName,
    days: daysOffOf(own(dates)),
    dates: share(own(dates)),
    sizes: share(own(sizes)),
    weights: { count: weighed.length, expected: sum("expected"), cut: sum("cut") },
  };
}

/** Each crop that has an outcome, in the order they come, then all. */
export function cards(outcomes: Outcomes): readonly Card[] {
  const { dates, sizes, weights } = outcomes;
  const names = new Map([...dates, ...sizes, ...weights].map(({ crop, cropName }) => [crop, cropName]));
  return [...[...names].map(([crop, name]) => cardOf(crop, name, outcomes)), cardOf(null, null, outcomes)];
}

/** Chances said are taken together by the nearest fifth. */
const FIFTHS = 5;

/** Odds said beside how often it came, by the nearest fifth. */
export function reliabilityOf(sizes: readonly SizeOutcome[]): Reliability {
  const bins = [...groupBy(sizes, ({ odds }) => Math.round(odds * FIFTHS))]
    .sort(([a], [b]) => a - b)
    .map(([fifth, all]) => ({
      fifth,
      said: all.reduce((sum, { odds }) => sum + odds, 0) / all.length,
      came: share(all.map(({ came }) => ({ inside: came }))),
    }));
  const often = sizes.filter(({ came }) => came).length / sizes.length;
  const known = sizes.length > 0;
  return {
    bins,
    count: sizes.length,
    brier: known ? brier(sizes) : null,
    brierOfMean: known ? often * (1 - often) : null,
  };
}

/**
 * Each bed counts once, by its date where leaves tell it, else by its size at the last pick where one was measured.
 * What its share does not rule out decides.
 */
export function verdictOf({ dates, sizes }: Outcomes): Verdict {
  const beds = new Map([...sizes, ...dates].map(({ stand, inside }) => [stand, { inside }]));
  const inside = share([...beds.values()]);
  const kind =
    inside.count < ENOUGH
      ? "tooEarly"
      : inside.high < SHARE
        ? "less"
        : inside.low > SHARE
          ? "more"
          : "asSaid";
  return { kind, inside };
}

/** Weeks ahead that are told apart. [d] */
const LEADS = [1, 7, 14] as const;

/** How often sizes lay inside their range, by how far ahead they were said. */
export const byLead = (sizes: readonly SizeOutcome[]): readonly LeadShare[] =>
  LEADS.map((from, i) => {
    const to = LEADS[i + 1] ?? null;
    return {
      from,
      to,
      inside: share(sizes.filter(({ lead }) => lead >= from && (to === null || lead < to))),
    };
  }).filter(({ inside }) => inside.count > 0);

/** How many things fell on the very day that was said. */
export const onTheDay = (all: readonly DayOutcome[]): number =>
  all.filter(({ daysOff }) => daysOff === 0).length;
