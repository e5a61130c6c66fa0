import { type Setting, settingKey } from "../farm/index.ts";
import { lightOnWeight } from "../growth/index.ts";
import { HOUR } from "../quantity/index.ts";
import { extremeBetween } from "./ahead.ts";
import { alwaysEndangered, NEVER } from "./exposure.ts";
import { partOf } from "./horizon.ts";
import { heatSlows, isDim, lacksNet, limitsBroken } from "./limits.ts";
import { type Moves, movesOf } from "./moves.ts";
import type { LimitName } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { Growing, Standing } from "./standing.ts";
import { type Extremes, leadsOf, type SuccessionTable, successionTable } from "./successionTable.ts";
import type { TunnelNow } from "./tunnelNow.ts";

/** Everything the search for one tunnel's schedule needs, as numbers. */
export interface TunnelProblem extends Extremes {
  readonly settings: readonly Setting[];
  /** Index of what lies now. */
  readonly now: number;
  readonly intervals: number;
  readonly parts: readonly ("day" | "night")[];
  /** Week of each interval, for the number of changes. */
  readonly week: readonly number[];
  readonly changesPerWeek: number;
  /** A piece is there: [interval × settings + setting]. */
  readonly possible: Uint8Array;
  /** Limits broken by having a setting in an interval, whatever stands there. */
  readonly broken: readonly (readonly LimitName[])[];
  /** A setting is colder in a night, or hotter on a day, than the best at hand: a limit is broken when something stands there that it endangers. */
  readonly poor: Uint8Array;
  /** Intervals in which something is endangered whatever is cut. */
  readonly endangered: Uint8Array;
  /** Shade under the light floor, counted once a day, on its day interval. */
  readonly dim: Uint8Array;
  readonly dimDays: number;
  /** What changing settings takes, by the part of the day that begins. */
  readonly moves: { readonly day: Moves; readonly night: Moves };
  readonly windy: readonly boolean[];
  readonly frozen: readonly boolean[];
  /** Worth of a minute. */
  readonly minute: number;
  readonly successions: readonly SuccessionTable[];
  readonly heatStress: number;
  readonly stressMost: number;
  /** Light of a day to the share of full weight it allows, per succession's crop. */
  readonly lightShare: (succession: SuccessionTable, light: number, days: number) => number;
}

/**
 * The problem of one tunnel as tables.
 *
 * @param options - Settings considered, what lies now among them.
 * @param available - A piece is free for a setting in an interval.
 */
export function tunnelProblem(
  scene: Scene,
  { tunnel, now }: TunnelNow,
  options: readonly Setting[],
  available: (setting: Setting, interval: number) => boolean,
  standings: readonly Standing[],
): TunnelProblem {
  const { farm, horizon, settings } = scene;
  const { walks, starts } = horizon;
  const S = options.length;
  const nowIndex = options.findIndex((setting) => settingKey(setting) === settingKey(now));
  const extremes = extremesOf(scene, options);
  const successions = standings
    .filter((standing): standing is Standing & { growing: Growing } => standing.growing !== null)
    .map((standing) => successionTable(scene, standing, standing.growing, options, nowIndex, extremes));
  const possible = Uint8Array.from({ length: walks.length * S }, (_, k) =>
    k % S === nowIndex || available(options[k % S]!, Math.floor(k / S)) ? 1 : 0,
  );
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
  const parts = walks.map(partOf);
  const poor = Uint8Array.from({ length: walks.length * S }, (_, k) => {
    const i = Math.floor(k / S);
    const behind = (s: number): number =>
      parts[i] === "night" ? -extremes.lowest[i * S + s]! : extremes.highest[i * S + s]!;
    const best = Math.min(...options.map((_, s) => (possible[i * S + s] ? behind(s) : NEVER)));
    return behind(k % S) - best > settings.asWarm ? 1 : 0;
  });
  const dim = Uint8Array.from({ length: walks.length * S }, (_, k) => {
    const i = Math.floor(k / S);
    if (partOf(walks[i]!) === "night") return 0;
    return isDim(scene, options[k % S]!, successions, starts[i]!, starts[i + 2] ?? starts[i + 1]!) ? 1 : 0;
  });

  const wage = farm.currency === null ? settings.wage / settings.price : farm.labour.wage;
  return {
    ...extremes,
    settings: options,
    now: nowIndex,
    intervals: walks.length,
    parts,
    week: walks.map(({ at }) => Math.floor((at - horizon.on) / (7 * 24 * HOUR))),
    changesPerWeek: farm.limits.changesPerWeek,
    possible,
    broken,
    poor,
    endangered: alwaysEndangered(scene, standings, parts, leads),
    dim,
    dimDays: farm.limits.dimDays,
    moves: { day: movesOf(farm, tunnel, options, "day"), night: movesOf(farm, tunnel, options, "night") },
    windy: walks.map(({ tooWindy }) => tooWindy),
    frozen: walks.map(({ frozen }) => frozen),
    minute: wage / 60,
    successions,
    heatStress: settings.heatStress,
    stressMost: settings.stressMost,
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
