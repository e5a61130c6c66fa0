// Beds on simulated farms, whose coming up was seen: how far off is the date of salad size, told seven days ahead, before and after five cuts of the crop?

import { type Crop, catalogue, type Settings } from "../../src/farm/index.ts";
import { leafCurve, thermalTimeAt } from "../../src/growth/index.ts";
import {
  type BedThen,
  crpsNormal,
  cutSeen,
  type Growth,
  learnRequirement,
  sumVariance,
} from "../../src/learn/index.ts";
import { type Chance, chance, truthOf } from "./simulatedFarms.ts";

/** Means over many farms. [d] */
export interface DateScores {
  readonly error: number;
  readonly crps: number;
  /** Of the range four of five cases lie in. */
  readonly width: number;
}

export interface LeadDates {
  readonly before: DateScores;
  readonly after: DateScores;
  /** Last week's pace carried on to the catalogue's requirement: a date without a range. */
  readonly pace: DateScores;
}

const LEAD = 7;
const CUTS = 5;
/** A spring's mean growth a day, and how far a day's lies from it. [°C·d/d] judgement */
const MEAN_PACE = 10;
const PACE_SPREAD = 3;
/** Error of a week's forecast temperatures. [°C] */
const FORECAST = 2;
const MARKETS = [2, 6];
const LONG = 120;
const FOUR_IN_FIVE = 1.2816;
const NOTHING_KEPT = { farm: null, seasons: new Map() };

/** Values that keep part of themselves from day to day. */
function wandering({ normal }: Chance, days: number, spread: number, kept: number): number[] {
  const values: number[] = [];
  let at = normal() * spread;
  for (let i = 0; i < days; i++) {
    values.push(at);
    at = kept * at + Math.sqrt(1 - kept * kept) * spread * normal();
  }
  return values;
}

interface Bed {
  /** Thermal time at the end of each day, as it was and as the model has it. [°C·d] */
  readonly time: readonly number[];
  readonly told: readonly number[];
}

function bedOf(draw: Chance, requirement: number, settings: Settings): Bed {
  const paces = wandering(draw, LONG, PACE_SPREAD, settings.dayToDay).map((by) =>
    Math.max(1, MEAN_PACE + by),
  );
  let sum = 0;
  const time = paces.map((pace) => {
    sum += pace;
    return sum;
  });
  const start = settings.seenStart * requirement * draw.normal();
  const scale = Math.exp(settings.thermalError * draw.normal());
  return { time, told: time.map((own) => Math.max(1, own * scale + start)) };
}

const bedThen = (thermalTime: number): BedThen => ({ thermalTime, guess: 0, begun: "seen" });

/** The note of a cut: on the first market day on which the bed looks ready to its grower. */
function cutOf(draw: Chance, crop: Crop, truth: number, settings: Settings) {
  const curve = leafCurve(crop, crop.requirement, settings);
  const { time, told } = bedOf(draw, crop.requirement, settings);
  const needed = thermalTimeAt(curve, crop.smallest) * Math.exp(truth + settings.eyeError * draw.normal());
  const sown = Math.floor(draw.uniform() * 7);
  const day = time.findIndex((own, i) => own >= needed && MARKETS.includes((sown + i) % 7));
  return cutSeen(bedThen(told[day]!), crop, curve, settings);
}

/** One date told: how far off, its score, and how wide its range. */
function told(mean: number, spread: number, outcome: number): DateScores {
  return {
    error: Math.abs(mean - outcome),
    crps: spread === 0 ? Math.abs(mean - outcome) : crpsNormal(mean, spread, outcome),
    width: 2 * FOUR_IN_FIVE * spread,
  };
}

/**
 * @param off - By how many of its spreads the farm's requirement lies off the catalogue's; null: drawn from what is believed
 * of farms.
 */
export function leadDates(
  crop: Crop,
  off: number | null,
  farms: number,
  seed: number,
  settings: Settings,
): LeadDates {
  const draw = chance(seed);
  const spread = crop.requirementSpread;
  const scores = { before: [] as DateScores[], after: [] as DateScores[], pace: [] as DateScores[] };
  for (let i = 0; i < farms; i++) {
    const truth = truthOf(draw, spread, CUTS + 1, settings, off === null ? undefined : off * spread);
    const growths = truth.growths.map(({ growth, truth: own }, k): Growth => {
      const seen = k < CUTS ? [cutOf(draw, crop, own, settings)] : [];
      return { ...growth, seen };
    });
    const estimates = [growths.slice(CUTS), growths].map(
      (known) => learnRequirement(spread, known, NOTHING_KEPT, settings).growths.at(-1)!,
    );
    const { requirement } = crop;
    const bed = bedOf(draw, requirement, settings);
    const needed = requirement * Math.exp(truth.growths[CUTS]!.truth);
    const ready = bed.time.findIndex((own) => own >= needed);
    const now = ready - LEAD;
    const errors = wandering(draw, LONG, FORECAST, settings.dayToDay);
    const done = bed.told[now]!;
    const daily = (day: number): number => bed.time[day]! - bed.time[day - 1]!;
    const dateOf = (wanted: number, pace: (day: number) => number): number => {
      let [sum, day] = [done, now];
      while (sum < wanted && day < now + 40) {
        day++;
        const grown = Math.max(0.5, pace(day));
        if (sum + grown >= wanted) return day - 1 + (wanted - sum) / grown;
        sum += grown;
      }
      return day;
    };
    const begun = bed.time[ready - 1]!;
    const outcome = ready - 1 + (needed - begun) / (bed.time[ready]! - begun);
    const foretold = (day: number): number =>
      day <= ready + 7 ? daily(day) + errors[day - now]! : MEAN_PACE;
    for (const [k, { shift, spread: left }] of estimates.entries()) {
      const wanted = requirement * Math.exp(shift);
      const weather = sumVariance(FORECAST, settings.dayToDay, LEAD);
      const model = (settings.seenStart * requirement) ** 2 + (settings.thermalError * done) ** 2;
      const days = Math.sqrt((left * wanted) ** 2 + weather + model) / MEAN_PACE;
      scores[k === 0 ? "before" : "after"].push(told(dateOf(wanted, foretold), days, outcome));
    }
    const week = (bed.told[now]! - bed.told[Math.max(0, now - 7)]!) / Math.min(7, Math.max(1, now));
    scores.pace.push(
      told(
        dateOf(requirement, () => week),
        0,
        outcome,
      ),
    );
  }
  const mean = (all: readonly DateScores[]): DateScores => {
    const of = (key: keyof DateScores): number => all.reduce((sum, each) => sum + each[key], 0) / all.length;
    return { error: of("error"), crps: of("crps"), width: of("width") };
  };
  return { before: mean(scores.before), after: mean(scores.after), pace: mean(scores.pace) };
}

/** Crops of a small, a middling and a wide spread. */
export const LEAD_CROPS: readonly Crop[] = ["lettuce-mix", "arugula", "mustard"].map(
  (id) => catalogue().crops.get(id)!,
);

/** What five cuts change of the error, as a share of it; negative is better. */
export const changeOf = ({ before, after }: LeadDates): number => after.error / before.error - 1;

/** The same over farms slower and faster by one spread alike. */
export function changeOff(told: ReadonlyMap<number | null, LeadDates>): number {
  const of = (key: "before" | "after"): number => told.get(-1)![key].error + told.get(1)![key].error;
  return of("after") / of("before") - 1;
}
