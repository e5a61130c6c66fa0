import { type Setting, settingKey } from "../farm/index.ts";
import { lightOnWeight } from "../growth/index.ts";
import { HOUR } from "../quantity/index.ts";
import { damageOdds } from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import { type Calm, calmOf } from "./calm.ts";
import { partOf } from "./horizon.ts";
import { keptLay, keptOutlets, keptSettings } from "./kept.ts";
import { fits, type Lay, laysOf } from "./lays.ts";
import { heatSlows, isDim, lacksNet, limitsBroken } from "./limits.ts";
import { type Moves, movesOf } from "./moves.ts";
import { optionsOf } from "./options.ts";
import type { LimitName } from "./outcome.ts";
import { priceOf } from "./price.ts";
import type { Scene } from "./scene.ts";
import { type Growing, isUndated, type Standing } from "./standing.ts";
import { type Extremes, leadsOf, type SuccessionTable, safety, successionTable } from "./successionTable.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import { wageOf } from "./wage.ts";

/** A bed whose last cut nobody dated: it stands, of any size, and is worth keeping. */
export interface UndatedTable {
  readonly standing: Standing;
  readonly worth: number;
  /** Logarithm of the chance to come through, with caution: [interval × settings + setting]. */
  readonly safe: Float64Array;
}

/** Everything the search for one tunnel's schedule needs, as numbers. */
export interface TunnelProblem extends Extremes {
  readonly settings: readonly Setting[];
  /** What can be laid: each setting with each choice of pieces. The first is what lies now. */
  readonly lays: readonly Lay[];
  readonly intervals: number;
  readonly parts: readonly ("day" | "night")[];
  /** Week of each interval, for the number of changes. */
  readonly week: readonly number[];
  readonly changesPerWeek: number;
  /** Left open by what the grower keeps: [interval × lays + lay]. */
  readonly possible: Uint8Array;
  /** Limits broken by having a setting in an interval: [interval × settings + setting]. */
  readonly broken: readonly (readonly LimitName[])[];
  /** Shade under the light floor, counted once a day, on its day interval. */
  readonly dim: Uint8Array;
  readonly dimDays: number;
  /** What changing lays takes, by the part of the day that begins. */
  readonly moves: { readonly day: Moves; readonly night: Moves };
  readonly windy: readonly boolean[];
  readonly frozen: readonly boolean[];
  readonly frozenThrough: readonly boolean[];
  readonly snow: readonly boolean[];
  /** What a sheet given out asks of it; null: there is none. */
  readonly calm: Calm | null;
  /** Worth of a minute. */
  readonly minute: number;
  /** Shares of the groups of weathers. [0–1] */
  readonly weathers: readonly number[];
  readonly successions: readonly SuccessionTable[];
  readonly undated: readonly UndatedTable[];
  readonly heatStress: number;
  readonly stressMost: number;
  readonly neverLost: number;
  /** Light of a day to the share of full weight it allows, per succession's crop. */
  readonly lightShare: (succession: SuccessionTable, light: number, days: number) => number;
}

/** Index of what lies now, among the lays. */
export const NOW = 0;

/** The problem of one tunnel as tables. */
export function tunnelProblem(scene: Scene, at: TunnelNow, standings: readonly Standing[]): TunnelProblem {
  const { farm, horizon, settings } = scene;
  const { tunnel, now } = at;
  const { walks, starts } = horizon;
  const owned = farm.pieces.filter((piece) => fits(piece, tunnel)).map(({ cover }) => cover);
  const covers = [...new Set([...now.map(({ cover }) => cover), ...owned])];
  const options = [
    ...new Map(
      [...optionsOf(farm, tunnel, now, covers), ...keptSettings(scene, at)].map((setting) => [
        settingKey(setting),
        setting,
      ]),
    ).values(),
  ];
  const S = options.length;
  const lays = laysOf(farm, at, options);
  const nowIndex = options.findIndex((setting) => settingKey(setting) === settingKey(now));
  const extremes = extremesOf(scene, options);
  const successions = standings
    .filter((standing): standing is Standing & { growing: Growing } => standing.growing !== null)
    .map((standing) => successionTable(scene, standing, standing.growing, options, nowIndex, extremes))
    .map((table) => ({ ...table, ...keptOutlets(scene, table.standing, table.outlets) }));
  const netRequired = standings.some(({ succession, finished }) => succession.net && !finished);
  const leads = leadsOf(scene);

  const broken = walks.flatMap((walk, i): readonly (readonly LimitName[])[] => {
    const [from, to] = [starts[i]!, starts[i + 1]!];
    return options.map((setting) =>
      limitsBroken({
        netMissing: netRequired && lacksNet(scene, setting),
        slowedByHeat: heatSlows(scene, setting, successions, from, to),
        liftedInWind: walk.tooWindy && setting.some(({ state }) => state === "vented"),
      }),
    );
  });
  const dim = Uint8Array.from({ length: walks.length * S }, (_, k) => {
    const i = Math.floor(k / S);
    if (partOf(walks[i]!) === "night") return 0;
    return isDim(scene, options[k % S]!, successions, starts[i]!, starts[i + 2] ?? starts[i + 1]!) ? 1 : 0;
  });
  const undated = standings.filter(isUndated).map((standing): UndatedTable => {
    const { crop, succession } = standing;
    const length = Math.abs(succession.to - succession.from);
    return {
      standing,
      worth: priceOf(farm, crop.id, settings) * crop.yield * length,
      safe: extremes.lowest.map((lowest, k) => {
        const odds = damageOdds(crop, lowest, extremes.highest[k]!, leads[Math.floor(k / S)]!, settings);
        return safety(odds, farm.limits.caution);
      }),
    };
  });

  return {
    ...extremes,
    settings: options,
    lays,
    intervals: walks.length,
    parts: walks.map(partOf),
    week: walks.map(({ at: moment }) => Math.floor((moment - horizon.on) / (7 * 24 * HOUR))),
    changesPerWeek: farm.limits.changesPerWeek,
    possible: Uint8Array.from({ length: walks.length * lays.length }, (_, k) =>
      keptLay(scene, at, options, lays, lays[k % lays.length]!, walks[Math.floor(k / lays.length)]!) ? 1 : 0,
    ),
    broken,
    dim,
    dimDays: farm.limits.dimDays,
    moves: {
      day: movesOf(farm, tunnel, options, lays, "day"),
      night: movesOf(farm, tunnel, options, lays, "night"),
    },
    windy: walks.map(({ tooWindy }) => tooWindy),
    frozen: walks.map(({ frozen }) => frozen),
    frozenThrough: walks.map(({ frozenThrough }) => frozenThrough),
    snow: walks.map(({ snow }) => snow),
    calm: calmOf(scene, tunnel, options),
    minute: wageOf(scene) / 60,
    weathers: scene.weathers.shares,
    successions,
    undated,
    heatStress: settings.heatStress,
    stressMost: settings.stressMost,
    neverLost: settings.neverLost,
    lightShare: ({ standing }, light, days) => lightOnWeight(light / days, standing.crop, settings),
  };
}

function extremesOf({ horizon, store }: Scene, options: readonly Setting[]): Extremes {
  const { starts, walks } = horizon;
  const S = options.length;
  const lowest = new Float64Array(walks.length * S);
  const highest = new Float64Array(walks.length * S);
  options.forEach((setting, s) => {
    const { frost, heat, from } = store.climate(setting);
    for (let i = 0; i < walks.length; i++) {
      lowest[i * S + s] = extremeBetween(frost, from, starts[i]!, starts[i + 1]!, Math.min);
      highest[i * S + s] = extremeBetween(heat, from, starts[i]!, starts[i + 1]!, Math.max);
    }
  });
  return { lowest, highest };
}
