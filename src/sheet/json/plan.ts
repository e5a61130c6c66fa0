import {
  type BedBeside,
  type Change,
  type LedgerEntry,
  type StripChance,
  stripTeaches,
  type Taken,
  type TogetherPlan,
  type TunnelPlan,
} from "../../decide/index.ts";
import { type Farm, type Setting, settingKey } from "../../farm/index.ts";
import { fateJson, pickJson, rangeCm } from "./succession.ts";
import { type Json, time } from "./written.ts";

const settingJson = (setting: Setting): Json => ({
  key: settingKey(setting),
  layers: setting.map(({ cover, state }) => ({ cover, state })),
});

const takenJson = ({ cover, state, piece, over }: Taken): Json => ({
  cover,
  state,
  piece: piece === null ? null : piece.id,
  over,
});

const bedBesideJson = (farm: Farm, { succession, fate, gain, cut }: BedBeside): Json => ({
  succession,
  fate: fateJson(farm, fate),
  gain: { ...gain },
  cut:
    cut === null
      ? null
      : {
          at: time(farm, cut.at),
          pick: pickJson(farm, cut.pick),
          size: { plan: rangeCm(cut.size.plan), other: rangeCm(cut.size.other) },
          odds: { ...cut.odds },
          weightKg: { ...cut.weight },
          wet: cut.wet === null ? null : { rainMm: cut.wet.rain, plan: cut.wet.plan, other: cut.wet.other },
        },
});

const changeJson = (farm: Farm, change: Change): Json => ({
  walk: change.walk.index,
  from: settingKey(change.from),
  to: settingKey(change.to),
  pieces: change.pieces.map(({ id }) => id),
  minutesMin: change.minutes,
  eachWalkMin: change.minutesEachWalk,
  decidedBy: change.decidedBy,
  limit: change.limit,
  gain: { ...change.gain },
  without: {
    worth: change.without.worth,
    breaks: change.without.breaks,
    overrun: change.without.overrun,
    cuts: change.without.cuts.map(({ succession, outlet }) => ({ succession, outlet })),
    beds: change.without.beds.map((bed) => bedBesideJson(farm, bed)),
    worst:
      change.without.worst === null
        ? null
        : {
            succession: change.without.worst.succession,
            of: change.without.worst.of,
            walk: change.without.worst.walk.index,
            odds: { ...change.without.worst.odds },
          },
    filled: change.without.filled.map(({ product, pick, plan, other }) => ({
      product,
      pick: pickJson(farm, pick),
      kg: { plan, other },
    })),
  },
  rather:
    change.rather === null
      ? null
      : {
          setting: settingKey(change.rather.setting),
          gain: { ...change.rather.gain },
          beds: change.rather.beds.map((bed) => bedBesideJson(farm, bed)),
        },
});

const ledgerJson = (entry: LedgerEntry): Json => ({
  walk: entry.walk,
  setting: entry.setting,
  breaks: entry.breaks,
  allowed: entry.allowed,
  dim: entry.dim,
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
    rooted: each.rooted,
  })),
  undated: entry.undated.map(({ id, safe }) => ({ succession: id, safe })),
});

export const tunnelJson = (farm: Farm, plan: TunnelPlan): Json => ({
  tunnel: plan.tunnel.id,
  name: plan.tunnel.name,
  lengthM: plan.tunnel.length,
  hoops: plan.tunnel.hoops,
  beds: plan.tunnel.beds,
  now: settingKey(plan.now),
  settings: plan.settings.map(settingJson),
  choice: plan.choice,
  taken: plan.taken.map(takenJson),
  takenIn: plan.takenIn.map((taken) => taken.map(takenJson)),
  undated: plan.undated.map(({ id, worth, unfit }) => ({ succession: id, worth, unfitC: unfit })),
  changes: plan.changes.map((change) => changeJson(farm, change)),
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

export const stripJson = (farm: Farm, strip: StripChance): Json => ({
  succession: strip.succession,
  tunnel: strip.tunnel,
  cover: strip.cover,
  at: time(farm, strip.at),
  expectedCd: strip.expected,
  errorCd: strip.error,
  spread: strip.spread,
  worth: strip.worth,
  teaches: stripTeaches(strip),
});

export const togetherJson = (plan: TogetherPlan): Json => ({
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
