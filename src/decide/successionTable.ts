import type { Setting } from "../farm/index.ts";
import { between } from "../growth/index.ts";
import { damageOdds } from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import { type Dry, dryOf } from "./dry.ts";
import { asStubble } from "./exposure.ts";
import { type Harvest, STEP } from "./harvest.ts";
import { hourAt } from "./horizon.ts";
import { expectedAt, weatherRatios } from "./memberCourse.ts";
import { type Outlet, outletsOf } from "./outlet.ts";
import { priceOf } from "./price.ts";
import type { Scene } from "./scene.ts";
import type { Growing, Standing } from "./standing.ts";
import { wageOf } from "./wage.ts";

/** An outlet with what the part of its interval before it adds, per setting. */
export interface OutletTable extends Outlet {
  /** Of thermal time over requirement, as far as it does not go with the weathers: standard deviation of the logarithm. [1] */
  readonly spread: number;
  /** Over that spread, before light and losses. */
  readonly harvest: Harvest;
  /** Places in the harvest between which its sale pays for cutting it: nobody cuts seedlings, not even when frost will take them. [steps] */
  readonly pays: readonly [from: number, to: number];
  /** What each group of weathers adds to the logarithm of thermal time, in steps. */
  readonly moved: readonly number[];
  readonly pace: Float64Array;
  readonly light: Float64Array;
  readonly heat: Float64Array;
  /** Logarithm of the chance to come through that part, with caution. Nothing beyond the time planned. */
  readonly safe: Float64Array;
  /** null: no row cover makes the leaves wet at the cut. */
  readonly dry: Dry | null;
}

/** What one succession gains and suffers in every interval under every setting; tables are [interval × settings + setting]. */
export interface SuccessionTable {
  readonly standing: Standing;
  readonly growing: Growing;
  /** Weight of the whole bed at the middle of the window in full light. [kg] */
  readonly mass: number;
  /** Of a kilogram at salad size, were it sold alone. */
  readonly price: number;
  /** At the first walk. */
  readonly thermalTime: number;
  readonly light: number;
  readonly thermalTimeIn: Float64Array;
  readonly pace: Float64Array;
  readonly lightIn: Float64Array;
  readonly heat: Float64Array;
  /** Logarithm of the chance to come through, with caution: of its leaves, and of its roots, cut or not. */
  readonly safe: Float64Array;
  readonly rooted: Float64Array;
  /** Chance of damage without caution. [0–1] */
  readonly damage: Float64Array;
  /** What grows again after a cut brings later; 0: nothing does. judgement */
  readonly regrown: number;
  /** Time it takes to cut it. [min] */
  readonly cutting: number;
  /** All it could be cut at, and those of them that are left open. */
  readonly offered: readonly OutletTable[];
  readonly outlets: readonly OutletTable[];
  /** The grower has settled that it is cut at one of them. */
  readonly mustCut: boolean;
}

/** Lowest and highest at the crop in calm air of every interval under every setting: [interval × settings + setting]. [°C] */
export interface Extremes {
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** Days ahead of each walk. [d] */
export const leadsOf = ({ horizon, weather }: Scene): readonly number[] =>
  horizon.walks.map(({ date }) => weather.days[weather.calendar.dates.indexOf(date)]!.lead);

/** What is uncertain of thermal time over requirement at an hour: with the weathers, and beside them. */
function uncertain(
  { weathers }: Scene,
  growing: Growing,
  hour: number,
): Pick<OutletTable, "spread" | "moved"> {
  const { belief, thermalTime, requirement, ahead } = growing;
  const expected = thermalTime + expectedAt(ahead, hour);
  const { means, within } = weatherRatios(ahead, hour, expected, requirement, weathers);
  return {
    spread: STEP * Math.max(1, Math.round(Math.hypot(belief.spread, within) / STEP)),
    moved: means.map((mean) => Math.round(mean / STEP)),
  };
}

/** Logarithm of the chance to come through odds of damage that count `caution` times. */
export const safety = (odds: number, caution: number): number => -Math.log1p(caution * odds);

/** First and last place at which a harvest is more than some share of a whole bed at the middle of its window; none: an empty stretch. */
function payingPlaces(
  { salad, other }: Harvest,
  moved: readonly number[],
  shares: readonly number[],
  least: number,
): readonly [number, number] {
  const last = salad.length - 1;
  const brings = (i: number): number =>
    moved.reduce((sum, by, k) => {
      const at = Math.min(last, Math.max(0, i + by));
      return sum + shares[k]! * (salad[at]! + other[at]!);
    }, 0);
  let from = 0;
  while (from <= last && brings(from) <= least) from += 1;
  let to = last;
  while (to >= from && brings(to) <= least) to -= 1;
  return [from, to];
}

/** Nothing is harmed by heat. */
const NO_HEAT = Number.NEGATIVE_INFINITY;

/** The tables of one succession under a tunnel's settings. @param now - Index of what lies now. */
export function successionTable(
  scene: Scene,
  standing: Standing,
  growing: Growing,
  options: readonly Setting[],
  now: number,
  { lowest, highest }: Extremes,
): SuccessionTable {
  const { farm, horizon, weather, store, settings } = scene;
  const { crop, succession, regrows } = standing;
  const { starts, walks } = horizon;
  const n = walks.length;
  const S = options.length;
  const leads = leadsOf(scene);
  const sums = options.map((setting) => store.sums(crop, setting));
  /** Growth begins at the origin, so hours before it add nothing. */
  const grown = (sum: Float64Array, from: number, a: number, b: number): number =>
    between(sum, from, Math.max(a, growing.origin), Math.max(b, growing.origin));
  const safetyOf = (odds: number): number => safety(odds, farm.limits.caution);
  const shorn = asStubble(crop);

  const table = (): Float64Array => new Float64Array(n * S);
  const [thermalTimeIn, pace, lightIn] = [table(), table(), table()];
  const [heat, safe, rooted, damage] = [table(), table(), table(), table()];
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
      safe[k] = safetyOf(odds);
      damage[k] = odds / (1 + odds);
      if (regrows) rooted[k] = safetyOf(damageOdds(shorn, lowest[k]!, NO_HEAT, leads[i]!, settings));
    }
  }

  const held = sums[now]!;
  const price = priceOf(farm, crop.id, settings);
  const cutting = farm.labour.cutting * Math.abs(succession.to - succession.from) * growing.share;
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
      if (outlet.interval >= n) return;
      const { frost, heat: hot, from: start } = store.climate(setting);
      const lead = leads[outlet.interval]!;
      if (to === from || to <= growing.origin) return;
      added.heat[s] = grown(under.heat, under.from, from, to);
      const low = extremeBetween(frost, start, from, to, Math.min);
      const high = extremeBetween(hot, start, from, to, Math.max);
      added.safe[s] = safetyOf(damageOdds(crop, low, high, lead, settings));
    });
    const { spread, moved } = uncertain(scene, growing, to);
    const harvest = growing.harvestOver(spread);
    const full = price * growing.mass * outlet.kept * outlet.share;
    const pays = payingPlaces(harvest, moved, scene.weathers.shares, (cutting * wageOf(scene)) / 60 / full);
    const dry = dryOf(farm, horizon, options, { ...outlet, hour: cut }, settings);
    return { ...outlet, ...added, dry, spread, moved, harvest, pays };
  });

  return {
    standing,
    growing,
    mass: growing.mass,
    price,
    thermalTime: growing.thermalTime + grown(held.pace, held.from, horizon.now, starts[0]!),
    light: growing.light + grown(held.light, held.from, horizon.now, starts[0]!),
    thermalTimeIn,
    pace,
    lightIn,
    heat,
    safe,
    rooted,
    damage,
    regrown: regrows ? settings.regrowthWorth * growing.mass * price : 0,
    cutting,
    offered: outlets,
    outlets,
    mustCut: false,
  };
}
