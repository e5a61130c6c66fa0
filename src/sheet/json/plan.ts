import type { Change, LedgerEntry, Taken, TogetherPlan, TunnelPlan } from "../../decide/index.ts";
import { type Setting, settingKey } from "../../farm/index.ts";
import type { Json } from "./written.ts";

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
  without: {
    worth: change.without.worth,
    breaks: change.without.breaks,
    overrun: change.without.overrun,
    cuts: change.without.cuts.map(({ succession, outlet }) => ({ succession, outlet })),
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
    stubble: each.stubble,
  })),
  undated: entry.undated.map(({ id, safe }) => ({ succession: id, safe })),
});

export const tunnelJson = (plan: TunnelPlan): Json => ({
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
