import type { Farm } from "../farm/index.ts";
import { kilogram } from "../quantity/index.ts";
import { allocate, orderedAt } from "./allocate.ts";
import type { SuccessionResult } from "./evaluate.ts";
import { coldFor, type KeptCold } from "./keptCold.ts";
import type { Filled, Pick } from "./outcome.ts";

/** Orders filled from what some successions bring, product by product: the mean over the groups of weathers. [kg] */
function filledAt(
  { products }: Farm,
  pick: Pick,
  cold: ReadonlyMap<string, number>,
  weathers: readonly number[],
  brought: readonly SuccessionResult[],
): readonly number[] {
  const ordered = products.map((product) => orderedAt(product, pick.market));
  return weathers
    .map((share, k) => {
      const cut = new Map(cold);
      for (const { table, outlet, salad } of brought)
        if (outlet?.fate.pick === pick)
          cut.set(table.standing.crop.id, (cut.get(table.standing.crop.id) ?? 0) + salad[k]!);
      const { made } = allocate(products, ordered, cut);
      return made.map((weight, i) => share * Math.min(weight, ordered[i]!));
    })
    .reduce((sum, each) => sum.map((weight, i) => weight + each[i]!));
}

/** Orders the plan fills better than another plan, those with the largest difference first. */
export function filledBetter(
  farm: Farm,
  picks: readonly Pick[],
  keptCold: readonly KeptCold[],
  weathers: readonly number[],
  plan: readonly SuccessionResult[],
  other: readonly SuccessionResult[],
): readonly Filled[] {
  return picks
    .flatMap((pick): readonly Filled[] => {
      const [here, there] = [plan, other].map((brought) =>
        filledAt(farm, pick, coldFor(keptCold, pick), weathers, brought),
      );
      return farm.products.map(({ id }, i) => ({
        product: id,
        pick,
        plan: kilogram(here![i]!),
        other: kilogram(there![i]!),
      }));
    })
    .filter(({ plan: more, other: less }) => more - less > 1e-6)
    .sort((a, b) => b.plan - b.other - (a.plan - a.other));
}
