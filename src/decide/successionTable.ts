import type { Setting } from "../farm/index.ts";
import { between } from "../growth/index.ts";
import { damageOdds } from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import { isEndangered, NEVER } from "./exposure.ts";
import { hourAt, partOf } from "./horizon.ts";
import { expectedAt, weatherSpread } from "./memberCourse.ts";
import { type Outlet, outletsOf } from "./outlet.ts";
import type { Scene } from "./scene.ts";
import type { Growing, Standing } from "./standing.ts";
import type { Value } from "./value.ts";

/** An outlet with what the part of its interval before it adds, per setting. */
export interface OutletTable extends Outlet {
  /** Of thermal time over requirement: standard deviation of the logarithm, in steps so that outlets share what is worked out. [1] */
  readonly spread: number;
  /** Before light and losses, over that spread. */
  readonly value: Value;
  readonly pace: Float64Array;
  readonly light: Float64Array;
  readonly heat: Float64Array;
  /** Logarithm of the chance to come through that part, with caution. Nothing beyond the time planned. */
  readonly safe: Float64Array;
  /** Intervals in which something of the bed would be harmed on bare ground when it is cut here: leaves before, stubble after. */
  readonly endangered: Uint8Array;
}

/** What one succession gains and suffers in every interval under every setting; tables are [interval × settings + setting]. */
export interface SuccessionTable {
  readonly standing: Standing;
  readonly growing: Growing;
  /** Worth of the whole bed at the middle of the window, at full price and in full light. */
  readonly whole: number;
  /** At the first walk. */
  readonly thermalTime: number;
  readonly light: number;
  readonly thermalTimeIn: Float64Array;
  readonly pace: Float64Array;
  readonly lightIn: Float64Array;
  readonly heat: Float64Array;
  readonly safe: Float64Array;
  /** Chance of damage without caution. [0–1] */
  readonly damage: Float64Array;
  /** The same when it is not cut: never less than with any cut. */
  readonly endangered: Uint8Array;
  /** Time it takes to cut it. [min] */
  readonly cutting: number;
  readonly outlets: readonly OutletTable[];
}

/** Lowest and highest at the crop in calm air of every interval under every setting: [interval × settings + setting]. [°C] */
export interface Extremes {
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** Days ahead of each walk. [d] */
export const leadsOf = ({ horizon, weather }: Scene): readonly number[] =>
  horizon.walks.map(({ date }) => weather.days[weather.calendar.dates.indexOf(date)]!.lead);

/** Steps in which spreads are taken. [1] */
const STEP = 0.005;

/** What is uncertain of thermal time over requirement at an hour: the requirement, and weather and covers if nothing is changed. [1] */
function spreadAt({ belief, thermalTime, requirement, ahead }: Growing, hour: number): number {
  const weather = weatherSpread(ahead, hour, thermalTime + expectedAt(ahead, hour), requirement);
  return STEP * Math.max(1, Math.round(Math.hypot(belief.spread, weather) / STEP));
}

/** The tables of one succession under a tunnel's options. @param now - Index of what lies now. */
export function successionTable(
  scene: Scene,
  standing: Standing,
  growing: Growing,
  options: readonly Setting[],
  now: number,
  { lowest, highest }: Extremes,
): SuccessionTable {
  const { farm, horizon, weather, store, settings } = scene;
  const { crop, succession } = standing;
  const { starts, walks } = horizon;
  const n = walks.length;
  const S = options.length;
  const leads = leadsOf(scene);
  const sums = options.map((setting) => store.sums(crop, setting));
  /** Growth begins at the origin, so hours before it add nothing. */
  const grown = (sum: Float64Array, from: number, a: number, b: number): number =>
    between(sum, from, Math.max(a, growing.origin), Math.max(b, growing.origin));
  const safety = (odds: number): number => -Math.log1p(farm.limits.caution * odds);

  const table = (): Float64Array => new Float64Array(n * S);
  const [thermalTimeIn, pace, lightIn] = [table(), table(), table()];
  const [heat, safe, damage] = [table(), table(), table()];
  for (let i = 0; i < n; i++) {
    const [a, b] = [starts[i]!, starts[i + 1]!];
    for (let s = 0; s < S; s++) {
      const under = sums[s]!;
      const k = i * S + s;
      thermalTimeIn[k] = grown(under.thermalTime, under.from, a, b);
      pace[k] = grown(under.pace, under.from, a, b);
      lightIn[k] = grown(under.light, under.from, a, b);
      heat[k] = grown(under.heat, under.from, a, b);
      if (b <= growing.origin) continue;
      const odds = damageOdds(crop, lowest[k]!, highest[k]!, leads[i]!, settings);
      safe[k] = safety(odds);
      damage[k] = odds / (1 + odds);
    }
  }

  const held = sums[now]!;
  const thermalTime = growing.thermalTime + grown(held.pace, held.from, horizon.now, starts[0]!);
  const light = growing.light + grown(held.light, held.from, horizon.now, starts[0]!);
  const endangeredUntil = (cut: number): Uint8Array =>
    Uint8Array.from(walks, (walk, i) => {
      const span = { from: starts[i]!, to: starts[i + 1]! };
      return isEndangered(scene, standing, growing.origin, cut, partOf(walk), span, leads[i]!) ? 1 : 0;
    });
  const outlets = outletsOf(scene, standing, growing).map((outlet): OutletTable => {
    const row = (): Float64Array => new Float64Array(S);
    const added = { pace: row(), light: row(), heat: row(), safe: row() };
    const from = starts[outlet.interval]!;
    const cut = hourAt(weather, outlet.at);
    const to = Math.max(from, cut);
    options.forEach((setting, s) => {
      const under = sums[s]!;
      added.pace[s] = grown(under.pace, under.from, from, to);
      added.light[s] = grown(under.light, under.from, from, to);
      // Beyond the time planned neither damage nor stress is counted: the next plan will look after it.
      if (outlet.interval >= n || to === from || to <= growing.origin) return;
      added.heat[s] = grown(under.heat, under.from, from, to);
      const { frost, heat: hot, from: start } = store.climate(setting);
      const low = extremeBetween(frost, start, from, to, Math.min);
      const high = extremeBetween(hot, start, from, to, Math.max);
      added.safe[s] = safety(damageOdds(crop, low, high, leads[outlet.interval]!, settings));
    });
    const spread = spreadAt(growing, to);
    const value = growing.worthOver(spread);
    return { ...outlet, ...added, spread, value, endangered: endangeredUntil(cut) };
  });

  return {
    standing,
    growing,
    whole: growing.whole,
    thermalTime,
    light,
    thermalTimeIn,
    pace,
    lightIn,
    heat,
    safe,
    damage,
    endangered: endangeredUntil(NEVER),
    cutting: settings.cutting * Math.abs(succession.to - succession.from) * growing.share,
    outlets,
  };
}
