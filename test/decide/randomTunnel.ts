import {
  type Harvest,
  harvests,
  type Lay,
  movesOf,
  NOW,
  type OutletTable,
  type Pick,
  type SuccessionTable,
  safety,
  type TunnelProblem,
} from "../../src/decide/index.ts";
import { priceOf } from "../../src/decide/price.ts";
import { type Crop, catalogue, type Farm, type Setting, type Tunnel } from "../../src/farm/index.ts";
import { leafCurve, lightOnWeight } from "../../src/growth/index.ts";
import { degreeDays, HOUR, type Instant } from "../../src/quantity/index.ts";
import type { Dice } from "./dice.ts";

/** What the tunnels of one farm have in common: the days ahead, and how they are planned. */
export interface Ahead {
  readonly farm: Farm;
  readonly crops: readonly Crop[];
  readonly first: Instant;
  readonly walks: number;
  readonly week: readonly number[];
  readonly picks: readonly Pick[];
  /** Shares of the groups of weathers. [0–1] */
  readonly weathers: readonly number[];
  /** Of each interval: what a bare crop grows in it [°C·d], how hot it gets and how dangerous it is. */
  readonly growth: readonly number[];
  readonly heat: readonly number[];
  readonly danger: readonly number[];
  readonly windy: readonly boolean[];
  readonly frozen: readonly boolean[];
  readonly frozenThrough: readonly boolean[];
  readonly snow: readonly boolean[];
  /** What lies now may harm as well. */
  readonly troubled: boolean;
  readonly changesPerWeek: number;
  readonly successions: readonly [least: number, most: number];
  /** Outlets a succession has at most. */
  readonly outlets: number;
}

const { settings } = catalogue();
const SPREADS = [0.06, 0.1, 0.16];
const known = new Map<string, Harvest>();

/** Harvests worked out once for each crop and spread. */
function harvestFor(crop: Crop, spread: number): Harvest {
  const key = `${crop.id} ${spread}`;
  const curve = leafCurve(crop, degreeDays(crop.requirement), settings);
  const harvest = known.get(key) ?? harvests(curve, crop, crop.requirement, settings)(spread);
  known.set(key, harvest);
  return harvest;
}

/** How covers act on what lies under them, each tunnel's a little otherwise: faster or slower growth, light, heat, and danger. */
function effectOf(dice: Dice, setting: Setting, part: "day" | "night", hot: boolean) {
  let [pace, light, heat, danger] = [1, 1, 1, 1];
  for (const { cover, state } of setting) {
    if (state === "nights" && part === "day") continue;
    if (cover.startsWith("shade")) {
      pace *= dice.between(0.65, 0.95);
      light *= 0.6;
      heat *= dice.between(0.2, 0.6);
    } else {
      pace *= hot ? dice.between(0.85, 1.05) : dice.between(1.05, 1.5);
      light *= dice.between(0.8, 0.9);
      heat *= dice.between(1.2, 2);
      danger *= dice.between(0.05, 0.5);
    }
  }
  return { pace, light, heat, danger };
}

function successionTable(
  dice: Dice,
  tunnel: Tunnel,
  options: readonly Setting[],
  ahead: Ahead,
): SuccessionTable {
  const { farm, crops, walks: n, picks, first } = ahead;
  const S = options.length;
  const crop = dice.one(crops);
  const shift = dice.between(-0.08, 0.08);
  const table = (): Float64Array => new Float64Array(n * S);
  const [pace, lightIn, heat, safe, rooted] = [table(), table(), table(), table(), table()];
  const regrows = dice.happens(0.4);
  for (let i = 0; i < n; i++) {
    const part = i % 2 === 0 ? "day" : "night";
    const hot = ahead.heat[i]! > 0;
    const lit = part === "day" ? dice.between(10, 30) : 0;
    for (let s = 0; s < S; s++) {
      const k = i * S + s;
      const effect = effectOf(dice, options[s]!, part, hot);
      pace[k] = ahead.growth[i]! * effect.pace;
      lightIn[k] = lit * effect.light;
      heat[k] = ahead.heat[i]! * effect.heat;
      safe[k] = safety(ahead.danger[i]! * effect.danger, farm.limits.caution);
      if (regrows) rooted[k] = safety(ahead.danger[i]! * effect.danger * 0.2, farm.limits.caution);
    }
  }
  // About one of the picks the bed comes to its size on bare ground, or has outgrown it, or not quite.
  const grows = ahead.growth.reduce((sum, each) => sum + each, 0);
  const until = Math.min(1, (dice.one(picks).at - first) / (n * 12 * HOUR));
  const thermalTime = crop.requirement * Math.exp(shift) * dice.between(0.88, 1.3) - grows * until;
  const before = dice.between(20, 32);
  const spread = dice.one(SPREADS);
  const home = dice.happens(0.3) ? dice.one(picks).market.id : null;
  const holding = (pick: Pick): OutletTable["fate"] & { readonly kind: "hold" } => {
    const days = dice.whole(1, 2);
    return { kind: "hold", cut: (pick.at - days * 24 * HOUR) as Instant, days, pick, as: "salad" };
  };
  const fates = dice
    .shuffled(
      picks.flatMap((pick): readonly OutletTable["fate"][] =>
        dice.happens(0.4)
          ? [{ kind: "pick", pick, as: "salad" }, holding(pick)]
          : [{ kind: "pick", pick, as: "salad" }],
      ),
    )
    .slice(0, dice.whole(1, ahead.outlets));
  const outlets = fates.map((fate): OutletTable => {
    const at = Math.max(first + HOUR, fate.kind === "hold" ? fate.cut : fate.pick.at) as Instant;
    const hours = (at - first) / HOUR;
    const interval = Math.min(n, Math.floor(hours / 12));
    const inside = interval === n ? 0 : (hours - interval * 12) / 12;
    const part = (of: Float64Array): Float64Array =>
      Float64Array.from({ length: S }, (_, s) => inside * (of[interval * S + s] ?? 0));
    const beyond = (hours - n * 12) / 24;
    return {
      fate,
      at,
      interval,
      kept: fate.kind === "hold" ? (1 - settings.holdLoss) ** fate.days : 1,
      share:
        (home === null || home === fate.pick.market.id ? 1 : settings.otherMarketShare) *
        (1 - settings.bedDay) ** (hours / 24),
      days: before + hours / 24,
      frozen: false,
      thaw: null,
      spread,
      harvest: harvestFor(crop, spread),
      pays: dice.happens(0.3) ? [dice.whole(250, 330), 600] : [0, 1_000],
      moved: ahead.weathers.map(() => dice.whole(-14, 14)),
      pace: interval < n ? part(pace) : Float64Array.from({ length: S }, () => beyond * dice.between(8, 14)),
      light:
        interval < n ? part(lightIn) : Float64Array.from({ length: S }, () => beyond * dice.between(8, 24)),
      heat: part(heat),
      safe: part(safe),
      rain: 0,
      dry:
        interval < n && dice.happens(0.3)
          ? {
              night: interval % 2 === 0 ? "before" : "own",
              keeps: Float64Array.from(options, (setting) =>
                setting.some(({ cover }) => !cover.startsWith("shade")) ? dice.between(0.6, 0.98) : 1,
              ),
            }
          : null,
    };
  });
  const share = dice.between(0.4, 1);
  const mass = crop.yield * tunnel.length * share;
  const price = priceOf(farm, crop.id, settings);
  return {
    standing: { crop, regrows } as SuccessionTable["standing"],
    growing: { belief: { shift } } as SuccessionTable["growing"],
    mass,
    price,
    thermalTime,
    light: before * dice.between(12, 28),
    thermalTimeIn: pace,
    pace,
    lightIn,
    heat,
    safe,
    rooted,
    damage: table(),
    regrown: regrows ? settings.regrowthWorth * mass * price : 0,
    cutting: farm.labour.cutting * tunnel.length * share,
    offered: [],
    outlets: [...outlets].sort((a, b) => a.at - b.at),
    mustCut: dice.happens(0.04),
  };
}

/** A tunnel's problem with random growth, light, heat, danger and limits under the lays it has. */
export function randomTunnel(
  dice: Dice,
  tunnel: Tunnel,
  options: readonly Setting[],
  lays: readonly Lay[],
  ahead: Ahead,
): TunnelProblem {
  const { farm, walks: n } = ahead;
  const [S, L] = [options.length, lays.length];
  const now = lays[NOW]!.setting;
  // Sometimes the grower keeps one lay from a walk on; sometimes one cannot be had for a while.
  const keeps = dice.whole(0, L - 1);
  const moves = {
    day: movesOf(farm, tunnel, options, lays, "day"),
    night: movesOf(farm, tunnel, options, lays, "night"),
  };
  const from = dice.happens(Math.min(0.08, 0.5 / farm.tunnels.length)) ? dice.whole(0, n - 1) : n;
  const keepsFrom = moves[from % 2 === 0 ? "day" : "night"].minutes[NOW * L + keeps]! > 0 ? from : n;
  const closed = Uint8Array.from({ length: n * L }, () => (dice.happens(0.04) ? 1 : 0));
  const warming = (s: number): boolean => options[s]!.some(({ cover }) => !cover.startsWith("shade"));
  const harms = (s: number): boolean => ahead.troubled || s !== now;
  const table = (): Float64Array => new Float64Array(n * S);
  return {
    settings: options,
    lays,
    intervals: n,
    parts: Array.from({ length: n }, (_, i) => (i % 2 === 0 ? "day" : "night")),
    week: ahead.week,
    changesPerWeek: ahead.changesPerWeek,
    possible: Uint8Array.from({ length: n * L }, (_, k) => {
      const [i, l] = [Math.floor(k / L), k % L];
      return i >= keepsFrom ? Number(l === keeps) : Number(l === NOW || closed[k] === 0);
    }),
    broken: Array.from({ length: n * S }, (_, k) => {
      const [i, s] = [Math.floor(k / S), k % S];
      if (warming(s) && ahead.heat[i]! > 0 && harms(s) && dice.happens(0.3)) return ["rowCoverInHeat"];
      return s !== now && dice.happens(0.02) ? ["net"] : [];
    }),
    dim: Uint8Array.from({ length: n * S }, (_, k) =>
      Math.floor(k / S) % 2 === 0 &&
      options[k % S]!.some(({ cover }) => cover.startsWith("shade")) &&
      harms(k % S) &&
      dice.happens(0.4)
        ? 1
        : 0,
    ),
    dimDays: dice.whole(0, 2),
    moves,
    windy: ahead.windy,
    frozen: ahead.frozen,
    frozenThrough: ahead.frozenThrough,
    snow: ahead.snow,
    calm: null,
    minute: farm.labour.wage / 60,
    weathers: ahead.weathers,
    successions: Array.from({ length: dice.whole(...ahead.successions) }, () =>
      successionTable(dice, tunnel, options, ahead),
    ),
    undated: dice.happens(0.1)
      ? [
          {
            standing: { crop: dice.one(ahead.crops) } as SuccessionTable["standing"],
            worth: dice.between(20, 200),
            safe: Float64Array.from({ length: n * S }, (_, k) =>
              safety(ahead.danger[Math.floor(k / S)]! * (warming(k % S) ? 0.3 : 1), farm.limits.caution),
            ),
          },
        ]
      : [],
    heatStress: settings.heatStress,
    stressMost: settings.stressMost,
    neverLost: settings.neverLost,
    lightShare: ({ standing }, light, days) => lightOnWeight(light / days, standing.crop, settings),
    lowest: table(),
    highest: table(),
  };
}
