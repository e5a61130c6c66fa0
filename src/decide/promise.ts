import type { Market, Product, Settings } from "../farm/index.ts";
import { normalQuantile, quantile } from "../learn/index.ts";
import { groupBy, kilogram, type LocalDate } from "../quantity/index.ts";
import { draws } from "../weather/index.ts";
import { allocate, orderedAt } from "./allocate.ts";
import { hourAt } from "./horizon.ts";
import { coldFor } from "./keptCold.ts";
import { comesThrough } from "./losses.ts";
import { REQUIREMENTS } from "./memberCourse.ts";
import type { Fate, Promised, SuccessionOutlook } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";

/** Pounds of a product on one selling day in every case drawn. */
export interface ProductCases {
  readonly product: Product;
  readonly market: Market;
  readonly marketDate: LocalDate;
  /** [kg] */
  readonly ordered: number;
  /** Member by member, with each the requirements drawn with it. [kg] */
  readonly cases: Float64Array;
}

/** Share of the cases that lie below what is safe, and below what may come. */
const [SAFE, MAY_COME] = [0.2, 0.8];

/** Factors on what a bed yields in every case: its crop's on this farm, and its own. Their mean is 1. */
function yieldFactor(settings: Settings, crop: string, succession: string): (index: number) => number {
  const { seed, yieldSpread, bedSpread } = settings;
  const [common, own] = [draws(seed, `yield ${crop}`), draws(seed, `yield of bed ${succession}`)];
  const mean = (yieldSpread ** 2 + bedSpread ** 2) / 2;
  return (index) =>
    Math.exp(yieldSpread * normalQuantile(common(index)) + bedSpread * normalQuantile(own(index)) - mean);
}

/** Salad-size pounds of one bed in every case under the plan: size, yield, and whether frost or heat takes it. [kg] */
function bedCases(
  scene: Scene,
  plans: readonly Planned[],
  { succession, crop, fate, atFate }: SuccessionOutlook,
): Float64Array {
  const { settings, weather } = scene;
  const planned = plans.find(({ at }) => at.tunnel.id === succession.tunnel)!;
  const table = planned.problem.successions.find(({ standing }) => standing.succession === succession)!;
  const through = comesThrough(scene, planned, table, hourAt(weather, cutAt(fate)!));
  const factor = yieldFactor(settings, crop.id, succession.id);
  const loss = draws(settings.seed, `loss ${succession.id}`);
  return atFate!
    .cases()
    .map((weight, i) => (loss(i) < through[Math.floor(i / REQUIREMENTS)]! ? weight * factor(i) : 0));
}

const cutAt = (fate: Fate) => (fate.kind === "none" ? null : fate.kind === "pick" ? fate.pick.at : fate.cut);

/**
 * Pounds of every product on every selling day that is picked for in the days planned, case by case. Weather is the same for
 * all beds of a case, and so is what covers do for the beds of one tunnel and what a crop yields; requirements, beds and losses
 * are their own. What is cut, and what lies in the cold already, is given to products in each case as it would be then.
 */
export function productCases(
  scene: Scene,
  plans: readonly Planned[],
  outlooks: readonly SuccessionOutlook[],
): readonly ProductCases[] {
  const { farm, members, picks } = scene;
  const count = members.departures.length * REQUIREMENTS;
  const days = groupBy(
    picks.filter(({ planned }) => planned),
    ({ market, marketDate }) => `${market.id} ${marketDate}`,
  );
  return [...days.values()].flatMap(([pick]) => {
    const { market, marketDate } = pick!;
    const cut = outlooks
      .filter(
        ({ fate }) =>
          fate.kind !== "none" && fate.pick.market.id === market.id && fate.pick.marketDate === marketDate,
      )
      .map((outlook) => ({ crop: outlook.crop.id, cases: bedCases(scene, plans, outlook) }));
    const cold = coldFor(scene.keptCold, pick!);
    const ordered = farm.products.map((product) => orderedAt(product, market));
    const made = farm.products.map(() => new Float64Array(count));
    for (let i = 0; i < count; i++) {
      const weights = new Map(cold);
      for (const { crop, cases } of cut) weights.set(crop, (weights.get(crop) ?? 0) + cases[i]!);
      allocate(farm.products, ordered, weights).made.forEach((weight, k) => {
        made[k]![i] = weight;
      });
    }
    return farm.products.map((product, k) => ({
      product,
      market,
      marketDate,
      ordered: ordered[k]!,
      cases: made[k]!,
    }));
  });
}

/** What may be offered of a product: there in four cases of five, and in one of five. */
export function promisedOf({ product, market, marketDate, ordered, cases }: ProductCases): Promised {
  const sorted = cases.slice().sort();
  const safe = quantile(sorted, SAFE);
  return {
    product: product.id,
    market: market.id,
    marketDate,
    safe: kilogram(safe),
    mayCome: kilogram(quantile(sorted, MAY_COME)),
    ordered: kilogram(ordered),
    short: kilogram(Math.max(0, ordered - safe)),
    over: kilogram(Math.max(0, safe - ordered)),
  };
}
