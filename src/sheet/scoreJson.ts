import type { Farm } from "../farm/index.ts";
import type {
  Card,
  DateOutcome,
  DayOutcome,
  DaysOff,
  Share,
  SizeOutcome,
  WeightOutcome,
} from "../learn/index.ts";
import { type Json, time, unitsOf, written } from "./json/written.ts";
import type { Score } from "./score.ts";

/** Version of the answer's form. Additions keep it; a changed meaning or a key taken away raises it. */
const VERSION = 1;

const shareJson = ({ hits, count, low, high }: Share): Json => ({ hits, count, low, high });

const daysJson = ({ count, mean, usual }: DaysOff): Json => ({ count, meanD: mean, usualD: usual });

const saidJson = (
  farm: Farm,
  { succession, crop, sheet }: Pick<DateOutcome, "succession" | "crop" | "sheet">,
): { readonly [key: string]: Json } => ({ succession, crop, sheet: time(farm, sheet) });

const dateJson = (farm: Farm, date: DateOutcome): Json => ({
  ...saidJson(farm, date),
  projected: date.projected,
  early: date.early,
  late: date.late,
  actual: date.actual,
  offD: date.daysOff,
  inside: date.inside,
  intervalScoreD: date.score,
});

const sizeJson = (farm: Farm, size: SizeOutcome): Json => ({
  ...saidJson(farm, size),
  market: size.pick.market,
  at: time(farm, size.pick.at),
  lowCm: size.size.low,
  middleCm: size.size.middle,
  highCm: size.size.high,
  actualCm: size.actual,
  inside: size.inside,
  odds: size.odds,
  came: size.came,
  leadD: size.lead,
});

const weightJson = (farm: Farm, weight: WeightOutcome): Json => ({
  ...saidJson(farm, weight),
  date: weight.date,
  expectedKg: weight.expected,
  cutKg: weight.cut,
});

const dayJson = (farm: Farm, day: DayOutcome): Json => ({
  ...saidJson(farm, day),
  projected: day.projected,
  actual: day.actual,
  offD: day.daysOff,
});

const cardJson = ({ crop, cropName, days, dates, sizes, weights }: Card): Json => ({
  crop,
  name: cropName,
  days: daysJson(days),
  dates: shareJson(dates),
  sizes: shareJson(sizes),
  weights: { count: weights.count, expectedKg: weights.expected, cutKg: weights.cut },
});

/**
 * How earlier sheets and forecasts did, as data. Days off are actual less said, forecast errors observed less foretold.
 *
 * @throws TypeError as `weekJson` does.
 */
export function scoreJson(score: Score): string {
  const { farm, outcomes, reliability, verdict } = score;
  return written("score", {
    leafpace: "score",
    version: VERSION,
    units: unitsOf(farm),
    on: time(farm, score.on),
    sheets: score.sheets,
    verdict: { kind: verdict.kind, inside: shareJson(verdict.inside) },
    crops: score.cards.map(cardJson),
    dates: outcomes.dates.map((each) => dateJson(farm, each)),
    sizes: outcomes.sizes.map((each) => sizeJson(farm, each)),
    weights: outcomes.weights.map((each) => weightJson(farm, each)),
    emergences: outcomes.emergences.map((each) => dayJson(farm, each)),
    cuts: outcomes.cuts.map((each) => dayJson(farm, each)),
    odds: {
      count: reliability.count,
      brier: reliability.brier,
      brierOfMean: reliability.brierOfMean,
      bins: reliability.bins.map(({ fifth, said, came }) => ({ fifth, said, came: shareJson(came) })),
    },
    byLead: score.byLead.map(({ from, to, inside }) => ({ fromD: from, toD: to, inside: shareJson(inside) })),
    picks: score.picks.map(({ pick, expected, ordered, cut }) => ({
      market: pick.market,
      marketDate: pick.marketDate,
      at: time(farm, pick.at),
      expectedKg: expected,
      orderedKg: ordered,
      cutKg: cut,
    })),
    forecastsKept: score.forecastsKept,
    forecasts: score.forecasts.map(({ lead, forecasts, mean, usual }) => ({
      leadD: lead,
      forecasts,
      lowMeanC: mean.low,
      highMeanC: mean.high,
      lowUsualC: usual.low,
      highUsualC: usual.high,
    })),
    problems: score.problems.map((problem) => ({ ...problem })),
  });
}
