import type { Answer } from "./answer.ts";
import type { Bed } from "./bed.ts";
import { most } from "./simplex.ts";

const productPrice = ({ farm, settings }: Answer, { pricePerKg }: Answer): number =>
  farm.currency === null ? 1 : (pricePerKg ?? settings.price);

/** What a kilogram brings alone: the best price of a product that holds the crop. */
export function priceAlone({ farm, settings }: Answer, crop: string): number {
  if (farm.currency === null) return 1;
  const prices = farm.products
    .filter(
      ({ pricePerKg, parts }: Answer) =>
        pricePerKg !== null && parts.some((part: Answer) => part.crop === crop),
    )
    .map(({ pricePerKg }: Answer) => pricePerKg);
  return prices.length > 0 ? Math.max(...prices) : settings.price;
}

/** Orders of a product at a market: weight, and what each kilogram that lacks costs beside its price. */
const ordersOf = (answer: Answer, product: Answer, market: string): readonly Answer[] =>
  product.orders
    .filter((order: Answer) => order.market === market)
    .map(({ weightKg, shortPerKg }: Answer) => ({
      weight: weightKg,
      cost:
        (answer.farm.currency === null ? null : shortPerKg) ??
        answer.settings.orderShort * productPrice(answer, product),
    }));

/** The most that crops can bring at a market, what orders lack counted from nothing at all on. */
function revenue(answer: Answer, market: string, brought: ReadonlyMap<string, number>): number {
  const { farm, settings } = answer;
  const crops = [...brought.keys()];
  const columns: number[] = [];
  const rows: { readonly amounts: Map<number, number>; readonly atMost: number }[] = [];
  const column = (worth: number): number => columns.push(worth) - 1;
  const row = (amounts: readonly (readonly [number, number])[], atMost: number): void => {
    rows.push({ amounts: new Map(amounts), atMost });
  };
  const uses = new Map(crops.map((crop) => [crop, [] as (readonly [number, number])[]]));
  for (const product of farm.products) {
    const parts = product.parts.filter(({ share }: Answer) => share > 0);
    if (parts.length === 0) continue;
    const price = productPrice(answer, product);
    const whole = parts.reduce((sum: number, { share }: Answer) => sum + share, 0);
    const sold: number[] = [];
    const sell = (worth: number, upTo: number | null): void => {
      const each = column(worth);
      sold.push(each);
      if (upTo !== null) row([[each, 1]], upTo);
    };
    for (const { weight, cost } of ordersOf(answer, product, market)) sell(price + cost, weight);
    sell(price, product.stallKg);
    if (product.stallKg !== null) sell(price * settings.stallBeyond, null);
    for (const { crop, share, swaps } of parts) {
      const given = [crop, ...swaps]
        .filter((each) => uses.has(each))
        .map((each): readonly [number, number] => {
          const flow = column(0);
          uses.get(each)!.push([flow, 1]);
          return [flow, -1];
        });
      row([...sold.map((each): readonly [number, number] => [each, share / whole]), ...given], 0);
    }
  }
  for (const [crop, use] of uses) {
    const held = farm.products.some(({ parts }: Answer) =>
      parts.some((part: Answer) => part.crop === crop || part.swaps.includes(crop)),
    );
    const alone = priceAlone(answer, crop) * (held && farm.currency !== null ? settings.looseShare : 1);
    row([...use, [column(alone), 1]], brought.get(crop)!);
  }
  return most(
    columns,
    rows.map(({ amounts, atMost }) => ({ amounts: columns.map((_, c) => amounts.get(c) ?? 0), atMost })),
  );
}

/** What orders, stalls and mixes make of a plan beside what each kilogram is worth alone. */
export function ordersPart(answer: Answer, beds: readonly Bed[]): number {
  const dayOf = ({ market, marketDate }: Answer): string => `${market} ${marketDate}`;
  const days = new Map<string, string>(
    answer.successions
      .flatMap(({ basis }: Answer) => basis?.outlets ?? [])
      .map((outlet: Answer) => [dayOf(outlet), outlet.market]),
  );
  let sum = 0;
  for (const [day, market] of days) {
    const here = beds.filter(({ outlet }) => outlet !== null && dayOf(outlet) === day);
    answer.weathers.forEach((share: number, k: number) => {
      const brought = new Map<string, number>();
      for (const cold of answer.keptCold)
        if (dayOf(cold) === day) brought.set(cold.crop, (brought.get(cold.crop) ?? 0) + cold.weightKg);
      for (const { succession, salad } of here) {
        brought.set(succession.crop, (brought.get(succession.crop) ?? 0) + salad[k]!);
        sum -= share * succession.basis.price * salad[k]!;
      }
      sum += share * revenue(answer, market, brought);
    });
    for (const product of answer.farm.products)
      for (const { weight, cost } of ordersOf(answer, product, market)) sum -= weight * cost;
  }
  return sum;
}
