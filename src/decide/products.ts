import type { Farm } from "../farm/index.ts";
import { kilogram } from "../quantity/index.ts";
import type { Pick, ProductAtPick, SuccessionOutlook } from "./outcome.ts";

/**
 * Pounds of every product at every pick: the expected salad-size weight of the successions cut for it, given to products
 * in the order the farm lists them. A mix takes what its scarcest part allows.
 */
export function productsAt(
  farm: Farm,
  picks: readonly Pick[],
  outlooks: readonly SuccessionOutlook[],
): readonly ProductAtPick[] {
  return picks.flatMap((pick) => {
    const cut = outlooks.filter(
      ({ fate }) => fate.kind !== "none" && fate.as === "salad" && fate.pick === pick,
    );
    const left = new Map<string, number>();
    for (const outlook of cut) {
      const { id } = outlook.crop;
      const { odds, weight } = outlook.atFate!;
      left.set(id, (left.get(id) ?? 0) + weight * odds);
    }
    return farm.products.map((product): ProductAtPick => {
      const shares = product.parts.reduce((sum, { share }) => sum + share, 0);
      const most = Math.min(
        ...product.parts.map(({ crop, share }) => (left.get(crop) ?? 0) / (share / shares)),
      );
      for (const { crop, share } of product.parts)
        left.set(crop, (left.get(crop) ?? 0) - (most * share) / shares);
      const ordered = product.orders
        .filter(({ market }) => market === pick.market.id)
        .reduce((sum, order) => sum + order.weight, 0);
      return {
        product: product.id,
        pick,
        expected: kilogram(most),
        ordered: kilogram(ordered),
        successions: cut
          .filter(({ crop }) => product.parts.some((part) => part.crop === crop.id))
          .map(({ succession }) => succession.id),
      };
    });
  });
}
