import {
  type KeptCold,
  LEAST,
  MOST,
  NODES,
  type Outcome,
  type ProductAtPick,
  type Promised,
  STEP,
  type WhatIf,
} from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import type { Beds } from "./beds.ts";
import { dayJson, walkJson, warningJson } from "./json/ahead.ts";
import { coverJson, farmJson } from "./json/farm.ts";
import { madeFromJson, problemJson } from "./json/madeFrom.ts";
import { stripJson, togetherJson, tunnelJson } from "./json/plan.ts";
import { sinceJson } from "./json/since.ts";
import { cropsOf, pickJson, successionJson } from "./json/succession.ts";
import { type Json, time, unitsOf, VERSION, written } from "./json/written.ts";
import { learnedRows } from "./learnedRows.ts";

const keptColdJson = (farm: Farm, cold: KeptCold): Json => ({
  succession: cold.succession,
  crop: cold.crop,
  cut: time(farm, cold.at),
  weightKg: cold.weight,
  market: cold.market,
  marketDate: cold.marketDate,
});

const productJson = (farm: Farm, at: ProductAtPick): Json => ({
  product: at.product,
  pick: pickJson(farm, at.pick),
  expectedKg: at.expected,
  orderedKg: at.ordered,
  coldKg: at.cold,
  scarcest: at.scarcest,
  successions: at.successions,
});

const promiseJson = (promised: Promised): Json => ({
  product: promised.product,
  market: promised.market,
  marketDate: promised.marketDate,
  safeKg: promised.safe,
  mayComeKg: promised.mayCome,
  orderedKg: promised.ordered,
  shortKg: promised.short,
  overKg: promised.over,
});

const whatIfJson = (what: WhatIf): Json => ({
  kind: what.kind,
  piece: what.kind === "piece" ? what.piece.id : null,
  market: what.kind === "pick" ? what.market.id : null,
  daysD: what.kind === "pick" ? what.days : null,
  worth: what.worth,
  off: what.off,
});

/**
 * The week's answer as data, with everything needed to recompute sizes, worth and the choice. Null stands for absence only.
 *
 * @throws TypeError if a number is not finite or a value is missing: a programmer's mistake; the message names where.
 */
export function weekJson(outcome: Outcome): string {
  const { farm } = outcome;
  return written("week", {
    leafpace: "week",
    version: VERSION,
    units: unitsOf(farm),
    on: time(farm, outcome.on),
    daysD: outcome.days,
    farm: farmJson(farm),
    settings: { ...outcome.settings },
    harvest: { step: STEP, least: LEAST, most: MOST, nodes: NODES },
    weathers: outcome.weathers,
    crops: cropsOf(farm, outcome.successions),
    covers: [...farm.covers.values()].map(coverJson),
    walks: outcome.walks.map((walk) => walkJson(farm, walk)),
    weather: outcome.weather.map((day) => dayJson(farm, day)),
    warnings: outcome.warnings.map(warningJson),
    together: outcome.together === null ? null : togetherJson(outcome.together),
    tunnels: outcome.tunnels.map((plan) => tunnelJson(farm, plan)),
    strip: outcome.strip === null ? null : stripJson(farm, outcome.strip),
    successions: outcome.successions.map((outlook) => successionJson(farm, outlook)),
    picks: outcome.picks.map((pick) => pickJson(farm, pick)),
    products: outcome.products.map((at) => productJson(farm, at)),
    keptCold: outcome.keptCold.map((each) => keptColdJson(farm, each)),
    promises: outcome.promises.map(promiseJson),
    changedSince: outcome.since === null ? null : sinceJson(farm, outcome.since),
    whatIf: outcome.whatIf === null ? null : outcome.whatIf.map(whatIfJson),
    madeFrom: madeFromJson(farm, outcome.madeFrom),
    problems: outcome.problems.map(problemJson),
  });
}

const learnedJson = ({ farm, madeFrom: { learned } }: Beds): Json =>
  learned === undefined
    ? []
    : learnedRows(farm, learned, []).map(({ what, name, season, value, spread, own, from }) => ({
        what,
        name,
        season,
        ofCatalogue: value,
        spread,
        own,
        from,
      }));

/**
 * Where each succession stands as data.
 *
 * @throws TypeError as `weekJson` does.
 */
export function bedsJson(beds: Beds): string {
  const { farm } = beds;
  return written("beds", {
    leafpace: "beds",
    version: VERSION,
    units: unitsOf(farm),
    on: time(farm, beds.on),
    crops: cropsOf(farm, beds.successions),
    successions: beds.successions.map((outlook) => successionJson(farm, outlook)),
    learned: learnedJson(beds),
    madeFrom: madeFromJson(farm, beds.madeFrom),
    problems: beds.problems.map(problemJson),
  });
}
