import { type Card, type DateOutcome, onTheDay } from "../learn/index.ts";
import { localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import type { Score } from "./score.ts";
import {
  aboutInFive,
  difference,
  later,
  ofAll,
  onTheWhole,
  runs,
  usually,
  verdictTold,
} from "./scoreWords.ts";
import { needsYou } from "./sheet.ts";
import { day, dayOf, daySpread, moment, weight, weightTyped } from "./words.ts";

/** Rows under a head; every rendering prints them the same. */
export interface Rows {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One bed whose salad size came, with what the picture needs. */
export interface BedScored {
  readonly who: string;
  /** Day said, range, day it was, how far off, and whether inside the range. */
  readonly said: string;
  readonly range: string;
  readonly was: string;
  readonly off: string;
  readonly inside: string;
  readonly outcome: DateOutcome;
}

/** How earlier sheets did, in words. */
export interface ScoreSheet {
  readonly title: string;
  readonly made: string;
  readonly verdict: readonly string[];
  /** What to do while nothing, or little, is known. */
  readonly next: readonly string[];
  readonly crops: Rows | null;
  readonly beds: readonly BedScored[];
  readonly odds: readonly string[];
  readonly ahead: readonly string[];
  readonly picks: Rows | null;
  readonly days: readonly string[];
  readonly forecasts: Rows | null;
  readonly needsYou: readonly string[];
  readonly reading: readonly string[];
}

const NO_SHEET =
  'No sheet has been issued yet. Each Monday run "leafpace week --issue": it keeps the sheet in sheets/ as it is given out, and later this page says how it did.';
const MEASURE =
  "Measure a leaf of each bed before and after it comes to salad size, a week apart at most, and on the morning of a pick; note cuts with their weight.";

const cropRow = (
  units: Score["farm"]["units"],
  { crop, cropName, days, dates, sizes, weights }: Card,
): string[] => [
  crop === null ? "all crops" : clean(cropName ?? crop),
  usually(days),
  onTheWhole(days),
  ofAll(dates),
  ofAll(sizes),
  weights.count === 0 ? "" : `${weightTyped(units, weights.cut)} of ${weight(units, weights.expected)}`,
];

function cropsTold({ farm, cards }: Score): Rows | null {
  const known = cards.filter(({ dates, sizes, weights }) => dates.count + sizes.count + weights.count > 0);
  return known.length === 0
    ? null
    : {
        head: ["Crop", "Usually off", "On the whole", "Dates held", "Sizes held", "Cut of expected"],
        // One crop alone needs no sum.
        rows: (known.length === 2 ? known.slice(0, 1) : known).map((card) => cropRow(farm.units, card)),
      };
}

const bedTold = ({ farm }: Score, outcome: DateOutcome): BedScored => {
  const { cropName, succession, projected, early, late, actual, daysOff, inside } = outcome;
  return {
    who: `${clean(cropName)} (${clean(succession)})`,
    said: projected === null ? "later" : day(farm.units, projected),
    range: daySpread(farm.units, early, late) ?? day(farm.units, early),
    was: day(farm.units, actual),
    off: daysOff === null ? "" : later(daysOff),
    inside: inside ? "yes" : "no",
    outcome,
  };
};

function oddsTold({ reliability }: Score): readonly string[] {
  const { bins, brier, brierOfMean } = reliability;
  if (brier === null || brierOfMean === null) return [];
  const often = bins.map(({ fifth, came }) => `Said ${aboutInFive(fifth)}: was ${ofAll(came)}.`);
  return [
    ...often,
    `All odds together: ${brier.toFixed(2)} by Brier's score, where 0 is perfect; saying the same every time would have made ${brierOfMean.toFixed(2)}.`,
  ];
}

function aheadTold({ byLead, outcomes }: Score): readonly string[] {
  const scores = outcomes.dates.flatMap(({ score }) => (score === null ? [] : [score]));
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  return [
    ...byLead.map(
      ({ from, to, inside }) =>
        `Sizes said ${to === null ? `${from} days ahead or more` : `${from} to ${to} days ahead`}: ${ofAll(inside)} in their range.`,
    ),
    ...(scores.length === 0
      ? []
      : [
          `A date's range and ten times what it missed by: ${mean.toFixed(1)} days on the whole; the less the better.`,
        ]),
  ];
}

function picksTold({ farm, picks }: Score): Rows | null {
  if (picks.length === 0) return null;
  const nameOf = (id: string): string => clean(farm.markets.find((market) => market.id === id)?.name ?? id);
  return {
    head: ["Pick", "Market", "Expected", "Cut", "Ordered"],
    rows: picks.map(({ pick, expected, cut, ordered }) => [
      dayOf(farm, pick.at),
      nameOf(pick.market),
      weight(farm.units, expected),
      weightTyped(farm.units, cut),
      ordered === 0 ? "" : weightTyped(farm.units, ordered),
    ]),
  };
}

function daysTold({ emerged, cut, outcomes }: Score): readonly string[] {
  const sowings = emerged.count === 1 ? "1 sowing" : `${emerged.count} sowings`;
  return [
    ...(emerged.mean === null
      ? []
      : [
          `Came up ${later(emerged.mean)}${later(emerged.mean) === "on the day" ? "" : " than said"}, usually ${usually(emerged)} off: ${sowings}.`,
        ]),
    ...(cut.count === 0
      ? []
      : [`Cut on the very day planned: ${ofAll({ hits: onTheDay(outcomes.cuts), count: cut.count })}.`]),
  ];
}

function forecastsTold({ farm, forecasts }: Score): Rows | null {
  const { units } = farm;
  return forecasts.length === 0
    ? null
    : {
        head: ["Ahead", "Highs off", "Run", "Lows off", "Run", "Forecasts"],
        rows: forecasts.map(({ lead, usual, mean, forecasts: count }) => [
          lead === 0 ? "same day" : `day ${lead}`,
          difference(units, usual.high),
          runs(units, mean.high),
          difference(units, usual.low),
          runs(units, mean.low),
          String(count),
        ]),
      };
}

/** Only what is told is explained. */
function readingTold(score: Score, crops: Rows | null): readonly string[] {
  const { outcomes, picks, forecasts } = score;
  return [
    ...(crops === null
      ? []
      : [
          "What was said is by the last sheet issued a day or more before. Held: it came inside the range that 4 of 5 should.",
        ]),
    ...(outcomes.dates.length === 0
      ? []
      : [
          "A bed came to salad size where a straight line between two leaves, a week apart at most, reaches the smallest size.",
        ]),
    ...(outcomes.sizes.length === 0
      ? []
      : [
          "A size at a pick is known where a leaf was measured within a day of it, or before and after it within a week.",
        ]),
    ...(outcomes.weights.length === 0
      ? []
      : ["Cut and expected are of beds cut within a day of when the sheet told a weight."]),
    ...(picks.length === 0
      ? []
      : [
          "A pick is told where every bed that was to be cut for it was weighed; expected is the salad-size weight of all products.",
        ]),
    ...(forecasts.length === 0
      ? []
      : ["Forecasts run warm where they said more than your log outside measured."]),
  ];
}

/** How earlier sheets did: units chosen, numbers rounded, sentences whole. */
export function scoreTold(score: Score): ScoreSheet {
  const { farm, on, sheets, outcomes, verdict, cards } = score;
  const crops = cropsTold(score);
  const issued =
    sheets === 0 ? "no sheet issued" : sheets === 1 ? "1 sheet issued" : `${sheets} sheets issued`;
  return {
    title: `${clean(farm.name)}: how past sheets did`,
    made: `Up to ${moment(farm, on)}, ${localDate(farm.place.zone, on).slice(0, 4)}: ${issued}.`,
    verdict: sheets === 0 ? [] : verdictTold(verdict, cards.at(-1)!.days),
    next: sheets === 0 ? [NO_SHEET, MEASURE] : verdict.kind === "tooEarly" ? [MEASURE] : [],
    crops,
    beds: outcomes.dates.map((outcome) => bedTold(score, outcome)),
    odds: oddsTold(score),
    ahead: aheadTold(score),
    picks: picksTold(score),
    days: daysTold(score),
    forecasts: forecastsTold(score),
    needsYou: needsYou(score.problems),
    reading: readingTold(score, crops),
  };
}
