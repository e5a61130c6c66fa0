import type { Program, Solver } from "../../src/decide/index.ts";
import type { Farm, Product, Settings } from "../../src/farm/index.ts";

/** A market day as the README tells it: rows and columns of its own, in words of kilograms put into products. */
export interface OwnMarket {
  /** Row of each crop: what products take of it less what is brought is at most 0. */
  readonly rows: ReadonlyMap<string, number>;
  /** What orders cost that get nothing. */
  readonly short: number;
}

/** Price of a kilogram of a product: 1 without prices. */
const priced = (farm: Farm, { price }: Product, settings: Settings): number =>
  farm.currency === null ? 1 : (price ?? settings.price);

/** A kilogram of a crop that goes into no product. */
function loosePrice(farm: Farm, crop: string, settings: Settings): number {
  if (farm.currency === null) return 1;
  const holding = farm.products.filter(({ parts }) => parts.some((part) => part.crop === crop));
  const prices = holding.flatMap(({ price }) => price ?? []);
  const price = prices.length > 0 ? Math.max(...prices) : settings.price;
  const sold = farm.products.some(({ parts }) =>
    parts.some((part) => part.crop === crop || part.swaps.includes(crop)),
  );
  return price * (sold ? settings.looseShare : 1);
}

/** Adds a market's day to a program: first every crop's kilograms are given to parts of products, then products are sold. */
export function addOwnMarket(
  program: Program,
  farm: Farm,
  settings: Settings,
  market: string,
  crops: readonly string[],
  share: number,
): OwnMarket {
  const rows = new Map(crops.map((crop) => [crop, program.addRow(Number.NEGATIVE_INFINITY, 0)]));
  let short = 0;
  for (const product of farm.products) {
    const price = priced(farm, product, settings);
    const whole = product.parts.reduce((sum, part) => sum + part.share, 0);
    // What is made of the product less what is sold of it.
    const made = program.addRow(0, 0);
    const balances = product.parts.map((part) => {
      const balance = program.addRow(0, 0);
      for (const crop of [part.crop, ...part.swaps])
        if (rows.has(crop))
          program.addColumn(0, Number.POSITIVE_INFINITY, [rows.get(crop)!, balance], [1, 1]);
      return { balance, of: part.share / whole };
    });
    program.addColumn(
      0,
      Number.POSITIVE_INFINITY,
      [made, ...balances.map(({ balance }) => balance)],
      [1, ...balances.map(({ of }) => -of)],
    );
    const sell = (worth: number, most: number): void => {
      program.addColumn(share * worth, most, [made], [-1]);
    };
    for (const order of product.orders) {
      if (order.market !== market) continue;
      const lacking =
        farm.currency === null || order.short === null ? settings.orderShort * price : order.short;
      sell(price + lacking, order.weight);
      short += lacking * order.weight;
    }
    if (product.stall === null) sell(price, Number.POSITIVE_INFINITY);
    else {
      sell(price, product.stall);
      sell(price * settings.stallBeyond, Number.POSITIVE_INFINITY);
    }
  }
  for (const [crop, row] of rows)
    program.addColumn(share * loosePrice(farm, crop, settings), Number.POSITIVE_INFINITY, [row], [1]);
  return { rows, short };
}

/** What a market's day makes of what is brought to it, and the prices that say no day can make more of anything. */
export function ownDay(
  solver: Solver,
  farm: Farm,
  settings: Settings,
  market: string,
  crops: readonly string[],
): {
  readonly short: number;
  /** Revenue less what lacking orders cost. */
  revenue(brought: readonly number[]): number;
  /**
   * No less than the revenue. Prices that solve the day's dual stay feasible whatever is brought, since that stands only in
   * the dual's objective: so each pair of a constant and prices found before bounds the revenue of every other load.
   */
  most(brought: readonly number[]): number;
} {
  const program = solver.open();
  const { rows, short } = addOwnMarket(program, farm, settings, market, crops, 1);
  const loads = crops.map((crop) => program.addColumn(0, 0, [rows.get(crop)!], [-1]));
  const bounds: { readonly constant: number; readonly prices: readonly number[] }[] = [];
  const known = new Map<string, number>();
  const at = ({ constant, prices }: (typeof bounds)[number], brought: readonly number[]): number => {
    let sum = constant;
    for (let c = 0; c < prices.length; c++) sum += prices[c]! * brought[c]!;
    return sum;
  };
  return {
    short,
    most: (brought) => {
      let least = Number.POSITIVE_INFINITY;
      for (const bound of bounds) least = Math.min(least, at(bound, brought));
      return least - short;
    },
    revenue(brought) {
      const key = brought.join();
      const before = known.get(key);
      if (before !== undefined) return before;
      for (const [c, load] of loads.entries()) program.limit(load, brought[c]!);
      const { objective, prices: all } = program.relaxed();
      const prices = crops.map((crop) => all[rows.get(crop)!]!);
      const constant = objective - prices.reduce((sum, price, c) => sum + price * brought[c]!, 0);
      if (!bounds.some((bound) => Math.abs(at(bound, brought) - objective) < 1e-9))
        bounds.push({ constant, prices });
      known.set(key, objective - short);
      return objective - short;
    },
  };
}
