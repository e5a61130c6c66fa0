import type { Farm, Product } from "../farm/index.ts";
import { kilogram } from "../quantity/index.ts";
import type { Pick, ProductAtPick, SuccessionOutlook } from "./outcome.ts";

/**
 * Pounds of every product at every pick: the expected salad-size weight of the successions cut for it, given first to
 * orders, then to all, in the order the farm lists its products. A mix takes what its scarcest part allows.
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
      left.set(id, (left.get(id) ?? 0) + outlook.atFate!.inSize);
    }
    const orderOf = ({ orders }: Product): number =>
      orders.filter(({ market }) => market === pick.market.id).reduce((sum, order) => sum + order.weight, 0);
    /** Takes up to a weight of a product from what is left; its scarcest part decides. */
    const take = ({ parts }: Product, upTo: number): number => {
      const wanted = parts.filter(({ share }) => share > 0);
      const shares = wanted.reduce((sum, { share }) => sum + share, 0);
      if (shares === 0) return 0;
      const most = Math.min(
        upTo,
        ...wanted.map(({ crop, share }) => (left.get(crop) ?? 0) / (share / shares)),
      );
      for (const { crop, share } of wanted) left.set(crop, (left.get(crop) ?? 0) - (most * share) / shares);
      return most;
    };
    const toOrders = farm.products.map((product) => take(product, orderOf(product)));
    const all = farm.products.map((product, i) => toOrders[i]! + take(product, Number.POSITIVE_INFINITY));
    /** The part of a mix there is least of in the end. */
    const scarcestOf = ({ parts }: Product): string | null =>
      parts
        .filter(({ share }) => share > 0)
        .map(({ crop, share }) => ({ crop, reach: (left.get(crop) ?? 0) / share }))
        .reduce((a, b) => (b.reach < a.reach ? b : a)).crop;
    return farm.products.map(
      (product, i): ProductAtPick => ({
        product: product.id,
        pick,
        expected: kilogram(all[i]!),
        scarcest:
          all[i]! < orderOf(product) && product.parts.some(({ share }) => share > 0)
            ? scarcestOf(product)
            : null,
        ordered: kilogram(orderOf(product)),
        successions: cut
          .filter(({ crop }) => product.parts.some((part) => part.crop === crop.id))
          .map(({ succession }) => succession.id),
      }),
    );
  });
}
