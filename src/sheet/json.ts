import type {
  AtPick,
  Basis,
  Change,
  Fate,
  LedgerEntry,
  MadeFrom,
  Outcome,
  Pick,
  ProductAtPick,
  Promised,
  SinceIssued,
  SuccessionOutlook,
  TogetherPlan,
  TunnelPlan,
  Walk,
} from "../decide/index.ts";
import {
  type Counted,
  type Cover,
  type Crop,
  CURVES,
  type Farm,
  type Piece,
  type Setting,
  settingKey,
} from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, localMinute } from "../quantity/index.ts";
import type { Warning } from "../watch/index.ts";
import type { DayWeather, Doubtful, Gap } from "../weather/index.ts";
import type { Beds } from "./beds.ts";
import { learnedRows } from "./learnedRows.ts";

/** What may stand in the answer: no undefined, no number that is not one. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Version of the answer's form. Additions keep it; a changed meaning or a key taken away raises it. */
const VERSION = 1;

/** Ends of keys and what they stand for; numbers without such an end are counts, shares or odds from 0 to 1. */
const UNITS = {
  C: "°C",
  Cd: "°C·d",
  CdPerDay: "°C·d/d",
  ratePerCd: "1/(°C·d)",
  Ch: "°C·h",
  cm: "cm",
  m: "m",
  kg: "kg",
  kgPerM: "kg/m",
  mps: "m/s",
  mol: "mol/m²",
  min: "min",
  h: "h",
  d: "d",
  MJPerM2PerCd: "MJ/m² per °C·d",
} as const;

export const time = (farm: Farm, at: Instant): Json => ({
  instant: new Date(at).toISOString(),
  clock: localMinute(farm.place.zone, at),
});

const timeOrNull = (farm: Farm, at: Instant | null): Json => (at === null ? null : time(farm, at));

const rangeCm = ({ low, middle, high }: AtPick["planned"]): Json => ({
  lowCm: low,
  middleCm: middle,
  highCm: high,
});

const settingJson = (setting: Setting): Json => ({
  key: settingKey(setting),
  layers: setting.map(({ cover, state }) => ({ cover, state })),
});

const walkJson = (farm: Farm, walk: Walk): Json => ({
  walk: walk.index,
  at: time(farm, walk.at),
  date: walk.date,
  part: walk.part,
  windMps: walk.wind,
  tooWindy: walk.tooWindy,
  frozen: walk.frozen,
});

const pickJson = (farm: Farm, pick: Pick): Json => ({
  market: pick.market.id,
  marketDate: pick.marketDate,
  at: time(farm, pick.at),
  date: pick.date,
  planned: pick.planned,
});

function fateJson(farm: Farm, fate: Fate): Json {
  switch (fate.kind) {
    case "none":
      return { kind: "none" };
    case "pick":
      return { kind: "pick", as: fate.as, pick: pickJson(farm, fate.pick) };
    case "hold":
      return {
        kind: "hold",
        as: fate.as,
        cut: time(farm, fate.cut),
        daysD: fate.days,
        pick: pickJson(farm, fate.pick),
      };
  }
}

const pieceJson = (piece: Piece): Json => ({
  piece: piece.id,
  cover: piece.cover,
  lengthM: piece.length,
  count: piece.count,
  liesOn: piece.liesOn,
});

const changeJson = (change: Change): Json => ({
  walk: change.walk.index,
  from: settingKey(change.from),
  to: settingKey(change.to),
  pieces: change.pieces.map(({ id }) => id),
  minutesMin: change.minutes,
  eachWalkMin: change.minutesEachWalk,
  decidedBy: change.decidedBy,
  limit: change.limit,
  gain: { ...change.gain },
});

const ledgerJson = (entry: LedgerEntry): Json => ({
  walk: entry.walk,
  setting: entry.setting,
  allowed: entry.allowed,
  lowestC: entry.lowest,
  highestC: entry.highest,
  successions: entry.successions.map((each) => ({
    succession: each.id,
    thermalTimeCd: each.thermalTime,
    paceCd: each.pace,
    lightMol: each.light,
    heatCh: each.heat,
    damage: each.damage,
    safe: each.safe,
    stubble: each.stubble,
  })),
});

const tunnelJson = (plan: TunnelPlan): Json => ({
  tunnel: plan.tunnel.id,
  name: plan.tunnel.name,
  lengthM: plan.tunnel.length,
  hoops: plan.tunnel.hoops,
  beds: plan.tunnel.beds,
  now: settingKey(plan.now),
  settings: plan.settings.map(settingJson),
  choice: plan.choice,
  changes: plan.changes.map(changeJson),
  worth: plan.worth,
  worthUnchanged: plan.worthUnchanged,
  parts: { ...plan.parts },
  partsUnchanged: { ...plan.partsUnchanged },
  gaveWay: plan.gaveWay,
  unchangedBreaks: plan.unchangedBreaks,
  nights: plan.nights.map((night) => ({
    evening: night.date,
    stationC: night.station,
    bareC: night.bare,
    expectedC: night.expected,
    promisedC: night.promised,
    gainC: night.gain,
  })),
  ledger: plan.ledger.map(ledgerJson),
});

const togetherJson = (plan: TogetherPlan): Json => ({
  worth: plan.worth,
  worthUnchanged: plan.worthUnchanged,
  parts: { ...plan.parts },
  partsUnchanged: { ...plan.partsUnchanged },
  bound: plan.bound,
  gap: plan.bound - plan.worth,
  proved: plan.proved,
  weighed: plan.weighed,
  overrun: plan.overrun,
  overrunUnchanged: plan.overrunUnchanged,
  decidedBy: { ...plan.decidedBy },
});

const atPickJson = (farm: Farm, at: AtPick): Json => ({
  pick: pickJson(farm, at.pick),
  unchanged: rangeCm(at.unchanged),
  planned: rangeCm(at.planned),
  medianUnchangedCm: at.medianUnchanged,
  medianCm: at.median,
  oddsUnchanged: at.oddsUnchanged,
  odds: at.odds,
  weightKg: at.weight,
});

const basisJson = (farm: Farm, basis: Basis): Json => ({
  shift: basis.shift,
  thermalTimeCd: basis.thermalTime,
  lightMol: basis.light,
  massKg: basis.mass,
  price: basis.price,
  cuttingMin: basis.cutting,
  regrown: basis.regrown,
  curve: {
    startCm: basis.curve.start,
    endCm: basis.curve.end,
    ratePerCd: basis.curve.rate,
    middleCd: basis.curve.middle,
  },
  outlets: basis.outlets.map((outlet) => ({
    kind: outlet.kind,
    at: time(farm, outlet.at),
    market: outlet.pick.market.id,
    marketDate: outlet.pick.marketDate,
    walk: outlet.interval,
    kept: outlet.kept,
    share: outlet.share,
    daysD: outlet.days,
    spread: outlet.spread,
    moved: outlet.moved,
    added: outlet.added.map(({ setting, pace, light, heat, safe, stubble }) => ({
      setting,
      paceCd: pace,
      lightMol: light,
      heatCh: heat,
      safe,
      stubble,
    })),
  })),
});

const successionJson = (farm: Farm, outlook: SuccessionOutlook): Json => {
  const { succession, miss } = outlook;
  return {
    succession: succession.id,
    crop: succession.crop,
    tunnel: succession.tunnel,
    fromM: succession.from,
    toM: succession.to,
    sown: succession.sown,
    market: succession.market,
    cuts: succession.cuts,
    net: succession.net,
    stage: outlook.stage,
    emergence:
      outlook.emergence === null
        ? null
        : { at: time(farm, outlook.emergence.at), seen: outlook.emergence.seen },
    sizeNow: outlook.sizeNow === null ? null : rangeCm(outlook.sizeNow),
    thermalTimeCd: outlook.thermalTime,
    requirementCd: outlook.requirement,
    spread: outlook.spread,
    measured: outlook.measured,
    guessed: outlook.guessed,
    paceNowCdPerDay: outlook.paceNow,
    windowD: outlook.windowDays,
    atPicks: outlook.atPicks.map((at) => atPickJson(farm, at)),
    reach: {
      ...outlook.reach,
      spread: {
        unchanged: { ...outlook.reach.spread.unchanged },
        planned: { ...outlook.reach.spread.planned },
      },
    },
    fate: fateJson(farm, outlook.fate),
    atFate:
      outlook.atFate === null
        ? null
        : {
            size: rangeCm(outlook.atFate.size),
            odds: outlook.atFate.odds,
            weightKg: outlook.atFate.weight,
            inSizeKg: outlook.atFate.inSize,
            cuttingMin: outlook.atFate.minutes,
            frozen: outlook.atFate.frozen,
            thaw: timeOrNull(farm, outlook.atFate.thaw),
          },
    fateUnchanged: fateJson(farm, outlook.fateUnchanged),
    worth: outlook.worth,
    worthUnchanged: outlook.worthUnchanged,
    miss:
      miss === null
        ? null
        : {
            pick: pickJson(farm, miss.pick),
            why: miss.why,
            coversCanHelp: miss.coversCanHelp,
            alternatives: miss.alternatives.map(({ fate, worth }) => ({ fate: fateJson(farm, fate), worth })),
          },
    basis: outlook.basis === null ? null : basisJson(farm, outlook.basis),
  };
};

const countedJson = (counted: Counted): Json => ({
  sumCd: counted.sum,
  method: counted.method,
  baseC: counted.base,
  upperC: counted.upper,
  cutOff: counted.cutOff,
  from: counted.from,
  toCm: counted.to,
  steadyC: counted.at === "here" ? null : counted.at,
});

const cropJson = (crop: Crop): Json => ({
  crop: crop.id,
  name: crop.name,
  emergence: {
    baseC: crop.emergence.base,
    sumCd: crop.emergence.sum,
    tooWarmC: crop.emergence.tooWarm,
  },
  growth: {
    baseC: crop.growth.base,
    optimumLowC: crop.growth.optimumLow,
    optimumHighC: crop.growth.optimumHigh,
    ceilingC: crop.growth.ceiling,
    form: crop.growth.form ?? "trapezoid",
  },
  requirementCd: crop.requirement,
  counted: crop.counted === undefined ? null : countedJson(crop.counted),
  requirementSpread: crop.requirementSpread,
  requirementStanding: crop.requirementStanding,
  lightOnPaceMJPerM2PerCd: crop.lightOnPace,
  lightOnWeight: crop.lightOnWeight,
  smallestCm: crop.smallest,
  largestCm: crop.largest,
  yieldKgPerM: crop.yield,
  unfitC: crop.unfit,
  killC: crop.kill,
  killSoftC: crop.killSoft,
  qualityLimitC: crop.qualityLimit,
  lightFloorMol: crop.lightFloor,
  regrowth: crop.regrowth,
  cuts: crop.cuts,
  storageD: crop.storage,
  boltingDayH: crop.boltingDay,
});

const coverJson = (cover: Cover): Json => ({
  cover: cover.id,
  name: cover.name,
  kind: cover.kind,
  light: cover.light,
  day: { sun: cover.day.sun, still: cover.day.still, windy: cover.day.windy },
  night: { clearC: cover.night.clear, cloudyC: cover.night.cloudy },
  frostCreditC: cover.frostCredit,
  minutes: { onMin: cover.minutes.on, offMin: cover.minutes.off, ventMin: cover.minutes.vent },
});

const dayJson = (farm: Farm, day: DayWeather): Json => ({
  date: day.date,
  lowC: day.low,
  highC: day.high,
  windMps: day.wind,
  windKnown: day.windKnown,
  lightMol: day.light,
  dayLengthH: day.dayLength,
  sunrise: time(farm, day.sunrise),
  sunset: time(farm, day.sunset),
  cloud: day.cloud,
  origin: day.origin,
  leadD: day.lead,
});

function warningJson(warning: Warning): Json {
  const { kind, severity, date } = warning;
  const common = { kind, severity, date };
  switch (warning.kind) {
    case "frost":
      return {
        ...common,
        tunnel: warning.tunnel,
        successions: warning.successions,
        bareC: warning.bare,
        expectedC: warning.expected,
        promisedC: warning.promised,
        unfitC: warning.unfit,
        killC: warning.kill,
        risk: warning.risk,
        windy: warning.windy,
        past: warning.past ?? false,
        noClothLeft: warning.noClothLeft ?? null,
      };
    case "heat":
      return {
        ...common,
        tunnel: warning.tunnel,
        successions: warning.successions,
        ifLeftC: warning.ifLeft,
        plannedC: warning.planned,
        limitC: warning.limit,
        past: warning.past ?? false,
        noClothLeft: warning.noClothLeft ?? null,
      };
    case "wind":
      return { ...common, windMps: warning.wind, limitMps: warning.limit };
    case "light":
      return { ...common, lightMol: warning.light, dayLengthH: warning.dayLength };
    case "bolting":
      return { ...common, succession: warning.succession, dayLengthH: warning.dayLength };
    case "seedbed":
      return { ...common, succession: warning.succession, seedbedC: warning.seedbed, limitC: warning.limit };
  }
}

const productJson = (farm: Farm, at: ProductAtPick): Json => ({
  product: at.product,
  pick: pickJson(farm, at.pick),
  expectedKg: at.expected,
  orderedKg: at.ordered,
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

const gapJson = (farm: Farm, { from, to, origin }: Gap): Json => ({
  from: time(farm, from),
  to: time(farm, to),
  origin,
});

const doubtfulJson = (farm: Farm, { sensor, flag, from, to, hours, low, high, used }: Doubtful): Json => ({
  sensor,
  flag,
  from: time(farm, from),
  to: time(farm, to),
  hours,
  lowC: low,
  highC: high,
  used,
});

const madeFromJson = (farm: Farm, from: MadeFrom): Json => ({
  sensors: from.sensors,
  latest: timeOrNull(farm, from.latest),
  tunnels: from.tunnels.map(({ tunnel, latest }) => ({ tunnel: tunnel.id, latest: time(farm, latest) })),
  gaps: from.gaps.map((gap) => gapJson(farm, gap)),
  doubtful: from.doubtful.map((hours) => doubtfulJson(farm, hours)),
  forecastIssued: timeOrNull(farm, from.forecastIssued),
  forecastSource: from.forecastSource ?? null,
  forecastEnds: from.forecastEnds,
  unforeseenFrom: from.unforeseenFrom,
  carriedFrom: from.carriedFrom,
  usualFrom: from.usualFrom,
  usualBy: from.usualBy === undefined ? null : { ...from.usualBy },
  usualBehind: from.usualBehind,
  learnedFrom: from.learnedFrom,
  learnedCovers: (from.learned?.covers ?? []).flatMap(({ cover, factors }) =>
    factors.map(({ what, factor, spread }) => ({ cover, what, ofCatalogue: factor, spread })),
  ),
  members: from.members,
  broughtOver: from.broughtOver.map(({ crop, counted, requirement, sowings }) => ({
    crop,
    counted: countedJson(counted),
    requirementCd: requirement,
    sowings: sowings === null ? null : { count: sowings.count, leastCd: sowings.least, mostCd: sowings.most },
  })),
  shortDays: from.shortDays === null ? null : { from: from.shortDays.from, to: from.shortDays.to },
});

const problemJson = (problem: Problem): Json => ({
  code: problem.code,
  weight: problem.weight,
  file: problem.file,
  line: problem.line,
  column: problem.column,
  expected: problem.expected,
  received: problem.received,
  hint: problem.hint,
});

const farmJson = (farm: Farm): Json => ({
  name: farm.name,
  unitsShown: farm.units,
  place: {
    latitude: farm.place.latitude,
    longitude: farm.place.longitude,
    elevationM: farm.place.elevation,
    zone: farm.place.zone,
    setting: farm.place.setting,
    curve: farm.place.curve ?? CURVES[0],
  },
  walks: { morningH: farm.walks.morning, eveningH: farm.walks.evening },
  markets: farm.markets.map(({ id, name, weekday, picks }) => ({
    market: id,
    name,
    weekday,
    picks: picks.map(({ daysBefore, hour }) => ({ daysBefore, hourH: hour })),
  })),
  products: farm.products.map(({ id, name, parts, price, orders }) => ({
    product: id,
    name,
    parts: parts.map(({ crop, share }) => ({ crop, share })),
    pricePerKg: price,
    orders: orders.map(({ market, weight }) => ({ market, weightKg: weight })),
  })),
  pieces: farm.pieces.map(pieceJson),
  labour: { wagePerHour: farm.labour.wage, pace: farm.labour.pace },
  limits: {
    changesPerWeek: farm.limits.changesPerWeek,
    windMps: farm.limits.wind,
    dimD: farm.limits.dimDays,
    caution: farm.limits.caution,
  },
});

const cropsOf = (outlooks: readonly SuccessionOutlook[]): Json =>
  [...new Map(outlooks.map(({ crop }) => [crop.id, crop])).values()].map(cropJson);

export const unitsOf = (farm: Farm): Json => ({
  keysEndWith: UNITS,
  worth: farm.currency ?? "kg",
  clock: farm.place.zone,
});

/** Throws on anything JSON would turn into null or leave out, naming where it stands. */
function checked(value: Json | undefined, path: string): void {
  if (value === undefined) throw new TypeError(`${path} is missing`);
  if (typeof value === "number" && !Number.isFinite(value)) throw new TypeError(`${path} is ${value}`);
  if (typeof value !== "object" || value === null) return;
  if (Array.isArray(value)) for (const [i, each] of value.entries()) checked(each, `${path}[${i}]`);
  else for (const [key, each] of Object.entries(value)) checked(each, `${path}.${key}`);
}

/** Characters a terminal obeys and JSON leaves as they are: written as escapes, so that printing the answer is safe. */
const OBEYED = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu;

/** A value as the text of an answer. @throws TypeError if a number is not finite or a value is missing. */
export function written(name: string, value: Json): string {
  checked(value, name);
  return `${JSON.stringify(value, null, 1).replace(
    OBEYED,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  )}\n`;
}

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
    crops: cropsOf(outcome.successions),
    covers: [...farm.covers.values()].map(coverJson),
    walks: outcome.walks.map((walk) => walkJson(farm, walk)),
    weather: outcome.weather.map((day) => dayJson(farm, day)),
    warnings: outcome.warnings.map(warningJson),
    together: outcome.together === null ? null : togetherJson(outcome.together),
    tunnels: outcome.tunnels.map(tunnelJson),
    successions: outcome.successions.map((outlook) => successionJson(farm, outlook)),
    picks: outcome.picks.map((pick) => pickJson(farm, pick)),
    products: outcome.products.map((at) => productJson(farm, at)),
    promises: outcome.promises.map(promiseJson),
    changedSince: outcome.since === null ? null : sinceJson(farm, outcome.since),
    madeFrom: madeFromJson(farm, outcome.madeFrom),
    problems: outcome.problems.map(problemJson),
  });
}

const sinceJson = (farm: Farm, since: SinceIssued): Json => ({
  issued: time(farm, since.on),
  priceOfChange: since.price,
  changed: since.changed.map(({ walk, tunnel, was, is, decidedBy }) => ({
    walk: walk.index,
    tunnel: tunnel.id,
    was: { from: settingKey(was.from), to: settingKey(was.to) },
    is: { from: settingKey(is.from), to: settingKey(is.to) },
    decidedBy,
  })),
  notNoted: since.unnoted.map(({ walk, tunnel, cover, state }) => ({
    at: time(farm, walk.at),
    tunnel: tunnel.id,
    cover,
    state,
  })),
});

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
    crops: cropsOf(beds.successions),
    successions: beds.successions.map((outlook) => successionJson(farm, outlook)),
    learned: learnedJson(beds),
    madeFrom: madeFromJson(farm, beds.madeFrom),
    problems: beds.problems.map(problemJson),
  });
}
