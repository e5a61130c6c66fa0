import type { Farm, Product, Settings } from "../farm/index.ts";
import { priceOf } from "./price.ts";
import type { Program, ProgramRow } from "./solver.ts";

/** One selling day of a market in one group of weathers: what the crops brought to it can be sold as. */
export interface MarketDay {
  readonly market: string;
  readonly crops: readonly string[];
  /** What is already cut for it, by crop. [kg] */
  readonly cold: ReadonlyMap<string, number>;
  /** Share of the weathers. [0–1] */
  readonly share: number;
}

/** Rows that hold a market day's crops to what is brought and already cut: a column that brings a kilogram has −1 in its crop's row. */
export type Brought = ReadonlyMap<string, ProgramRow>;

const UNLIMITED = Number.POSITIVE_INFINITY;

/** Price of a product per kilogram: every pound counts alike where a farm has none. */
export const productPrice = (farm: Farm, { price }: Product, settings: Settings): number =>
  farm.currency === null ? 1 : (price ?? settings.price);

const sharesOf = ({ parts }: Product): Product["parts"] => parts.filter(({ share }) => share > 0);

/** What an order lacks costs beside its price, per kilogram. */
export const shortCost = (
  farm: Farm,
  product: Product,
  { short }: Product["orders"][number],
  settings: Settings,
): number =>
  (farm.currency === null ? null : short) ?? settings.orderShort * productPrice(farm, product, settings);

/** The orders for a product at a market, of all who ordered: weight and what each kilogram that lacks costs. */
export const ordersAt = (
  farm: Farm,
  product: Product,
  market: string,
  settings: Settings,
): readonly { readonly weight: number; readonly cost: number }[] =>
  product.orders
    .filter((order) => order.market === market)
    .map((order) => ({ weight: order.weight, cost: shortCost(farm, product, order, settings) }));

/** What orders cost at a market on a day on which nothing at all is brought: the same whatever is planned. */
export const allShort = (farm: Farm, market: string, settings: Settings): number =>
  farm.products.reduce(
    (sum, product) =>
      sum +
      ordersAt(farm, product, market, settings).reduce((total, { weight, cost }) => total + weight * cost, 0),
    0,
  );

/**
 * Adds a market day to a program: orders are filled, the stall sells at the full price what it can and the rest cheaper, a mix
 * takes what its scarcest part allows, what is left of a mix's crop sells alone for less, and a crop that no product holds sells
 * at its price. What orders lack is counted from `allShort` on.
 */
export function addMarketDay(
  program: Program,
  farm: Farm,
  { market, crops: ahead, cold, share: weight }: MarketDay,
  settings: Settings,
): Brought {
  const crops = [...new Set([...ahead, ...cold.keys()])];
  const brought = new Map(
    crops.map((crop) => [crop, program.addRow(Number.NEGATIVE_INFINITY, cold.get(crop) ?? 0)]),
  );
  for (const product of farm.products) {
    const parts = sharesOf(product);
    const choices = parts.map(({ crop, swaps }) => [crop, ...swaps].filter((each) => brought.has(each)));
    if (parts.length === 0 || choices.some((each) => each.length === 0)) continue;
    const price = productPrice(farm, product, settings);
    const total = parts.reduce((sum, { share }) => sum + share, 0);
    const simple = choices.every((each) => each.length === 1);
    // A part with swaps has a row of its own: what its crops give together is its share of the product.
    const rows = parts.map((_, p) => (simple ? brought.get(choices[p]![0]!)! : program.addRow(0, 0)));
    const shares = parts.map(({ share }) => share / total);
    const sell = (worth: number, upTo: number): void => {
      const amounts = new Map<ProgramRow, number>();
      rows.forEach((row, p) => {
        amounts.set(row, (amounts.get(row) ?? 0) + (simple ? shares[p]! : -shares[p]!));
      });
      program.addColumn(weight * worth, upTo, [...amounts.keys()], [...amounts.values()]);
    };
    if (!simple)
      choices.forEach((each, p) => {
        for (const crop of each) program.addColumn(0, UNLIMITED, [rows[p]!, brought.get(crop)!], [1, 1]);
      });
    for (const order of ordersAt(farm, product, market, settings)) sell(price + order.cost, order.weight);
    sell(price, product.stall ?? UNLIMITED);
    if (product.stall !== null) sell(price * settings.stallBeyond, UNLIMITED);
  }
  for (const crop of crops) {
    const inMix = farm.products.some(({ parts }) =>
      parts.some((part) => part.crop === crop || part.swaps.includes(crop)),
    );
    // Without prices every pound counts alike.
    const loose = inMix && farm.currency !== null ? settings.looseShare : 1;
    const alone = priceOf(farm, crop, settings) * loose;
    program.addColumn(weight * alone, UNLIMITED, [brought.get(crop)!], [1]);
  }
  return brought;
}
