import type { Market, Product } from "../farm/index.ts";

/** What is ordered of a product at a market. [kg] */
export const orderedAt = ({ orders }: Product, { id }: Market): number =>
  orders.filter(({ market }) => market === id).reduce((sum, { weight }) => sum + weight, 0);

/** What some cut crops make of every product. */
export interface Allocation {
  /** By product, in the order the farm lists them. [kg] */
  readonly made: readonly number[];
  /** By crop, what no product takes. [kg] */
  readonly left: ReadonlyMap<string, number>;
}

/**
 * Gives what is cut to products: first to orders, then to all, in the order the farm lists its products. A mix takes what its
 * scarcest part allows.
 *
 * @param ordered - By product. [kg]
 * @param cut - By crop. [kg]
 */
export function allocate(
  products: readonly Product[],
  ordered: readonly number[],
  cut: ReadonlyMap<string, number>,
): Allocation {
  const left = new Map(cut);
  /** Takes up to a weight of a product from what is left; its scarcest part decides. */
  const take = ({ parts }: Product, upTo: number): number => {
    const wanted = parts.filter(({ share }) => share > 0);
    const shares = wanted.reduce((sum, { share }) => sum + share, 0);
    if (shares === 0) return 0;
    const most = Math.min(upTo, ...wanted.map(({ crop, share }) => (left.get(crop) ?? 0) / (share / shares)));
    for (const { crop, share } of wanted) left.set(crop, (left.get(crop) ?? 0) - (most * share) / shares);
    return most;
  };
  const toOrders = products.map((product, i) => take(product, ordered[i]!));
  const made = products.map((product, i) => toOrders[i]! + take(product, Number.POSITIVE_INFINITY));
  return { made, left };
}
