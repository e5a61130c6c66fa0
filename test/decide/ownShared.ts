import type { FarmProblem, Lay, OutletTable, Prices } from "../../src/decide/index.ts";
import { addDays, localDate } from "../../src/quantity/index.ts";
import type { Way } from "./everyWay.ts";

/** Something tunnels share. */
export interface Need {
  readonly kind: "pieces" | "side by side" | "minutes" | "picking" | "washing" | "cooler" | "sale";
  /** No more than this of all tunnels together; side by side exactly 0. A sale has no limit of its own. */
  readonly most: number;
  /** What each unit beyond it weighs, in breaches. */
  readonly weighs: number;
}

/** A market's day: its crops, and the needs that stand for them in each group of weathers. */
export interface Day {
  readonly market: string;
  readonly crops: readonly string[];
  /** [group][crop] */
  readonly needs: readonly (readonly number[])[];
}

/** What a way is worth alone, the breaches of its own, and what it takes of each need, or brings to a sale. */
export interface Use {
  readonly way: Way;
  readonly own: number;
  readonly gravity: number;
  /** Number of the need, and how much. */
  readonly amounts: ReadonlyMap<number, number>;
}

export interface Shared {
  readonly needs: readonly Need[];
  readonly days: readonly Day[];
  /** Of a breach: more than twice all beds and orders together. */
  readonly breach: number;
  use(tunnel: number, way: Way): Use;
  /** What a tunnel pays for cloth and hands and gets for its kilograms at prices of needs. */
  prices(tunnel: number, of: ArrayLike<number>): Prices;
}

const marketDay = ({ fate }: OutletTable): string => `${fate.pick.market.id} ${fate.pick.marketDate}`;

export function sharedOf({ farm, settings, tunnels }: FarmProblem): Shared {
  const needs: Need[] = [];
  const numbers = new Map<string, number>();
  const need = (key: string, kind: Need["kind"], most: number | null, weighs: number): number => {
    if (most === null) return -1;
    if (!numbers.has(key)) numbers.set(key, needs.push({ kind, most, weighs }) - 1);
    return numbers.get(key)!;
  };
  const days: Day[] = [];
  const dayOf = new Map<string, Day>();
  const outlets = tunnels.flatMap(({ problem }) =>
    problem.successions.flatMap((table) =>
      table.outlets.map((outlet) => ({ outlet, crop: table.standing.crop.id })),
    ),
  );
  const weathers = tunnels[0]!.problem.weathers;
  for (const key of new Set(outlets.map(({ outlet }) => marketDay(outlet)))) {
    const there = outlets.filter(({ outlet }) => marketDay(outlet) === key);
    const crops = [...new Set(there.map(({ crop }) => crop))];
    const day: Day = {
      market: there[0]!.outlet.fate.pick.market.id,
      crops,
      needs: weathers.map((_, k) => crops.map((crop) => need(`sale ${key} ${k} ${crop}`, "sale", 0, 0))),
    };
    days.push(day);
    dayOf.set(key, day);
  }
  let whole = 0;
  for (const { problem } of tunnels) {
    for (const { mass, price } of problem.successions) whole += mass * price;
    for (const { worth } of problem.undated) whole += worth;
  }
  for (const { market } of days)
    for (const product of farm.products)
      for (const order of product.orders) {
        if (order.market !== market) continue;
        const price = farm.currency === null ? 1 : (product.price ?? settings.price);
        whole +=
          order.weight *
          (farm.currency === null ? settings.orderShort : (order.short ?? settings.orderShort * price));
      }

  /** A piece over neighbours is one piece, where the first of them lies under it; all must lie under it together. */
  const cloth = (
    id: string,
    { taken }: Lay,
    i: number,
  ): readonly (readonly [need: number, amount: number])[] =>
    taken.flatMap(({ piece, over }): readonly (readonly [number, number])[] => {
      if (piece === null) return [];
      const pairs = over.slice(1).flatMap((other): readonly (readonly [number, number])[] => {
        const pair = need(`under ${piece.id} ${over.join()} ${other} ${i}`, "side by side", 0, 10_000);
        return over[0] === id ? [[pair, 1]] : other === id ? [[pair, -1]] : [];
      });
      return over[0] === id
        ? [[need(`piece ${piece.id} ${i}`, "pieces", piece.count, 10_000), 1], ...pairs]
        : pairs;
    });
  const walk = (i: number): number => need(`walk ${i}`, "minutes", farm.labour.walk, 100);
  const cutting = ({ at }: OutletTable): number => need(`picking ${at}`, "picking", farm.labour.picking, 100);
  /** Washed at once, and cold through each night before the market. */
  const kept = ({ at, fate }: OutletTable): readonly number[] => {
    const list = [need(`washing ${at}`, "washing", farm.handling.washing, 100)];
    for (let date = localDate(farm.place.zone, at); date < fate.pick.marketDate; date = addDays(date, 1))
      list.push(need(`night ${date}`, "cooler", farm.handling.cooler, 100));
    return list;
  };
  const sales = (outlet: OutletTable, crop: string): readonly number[] => {
    const { crops, needs: each } = dayOf.get(marketDay(outlet))!;
    return each.map((of) => of[crops.indexOf(crop)]!);
  };

  return {
    needs,
    days,
    breach: 1 + 2 * whole,
    use(tunnel, way) {
      const { id, problem } = tunnels[tunnel]!;
      const { course, endings } = way;
      const amounts = new Map<number, number>();
      const take = (number: number, amount: number): void => {
        if (number >= 0 && amount !== 0) amounts.set(number, (amounts.get(number) ?? 0) + amount);
      };
      course.schedule.forEach((lay, i) => {
        take(walk(i), course.minutes[i]!);
        for (const [number, amount] of cloth(id, problem.lays[lay]!, i)) take(number, amount);
      });
      for (const { outlet, crop, salad, weight, minutes } of endings) {
        if (outlet === null) continue;
        take(cutting(outlet), minutes);
        for (const number of kept(outlet)) take(number, weight);
        const to = sales(outlet, crop);
        salad.forEach((kilograms, k) => {
          take(to[k]!, kilograms);
        });
      }
      return {
        way,
        own: course.own + endings.reduce((sum, ending) => sum + ending.own, 0),
        gravity: course.gravity,
        amounts,
      };
    },
    prices(tunnel, of) {
      const { id, problem } = tunnels[tunnel]!;
      const L = problem.lays.length;
      const at = (number: number): number => of[number] ?? 0;
      return {
        salad: ({ standing }, outlet) => sales(outlet, standing.crop.id).map((number) => -at(number)),
        handling: (outlet) => kept(outlet).reduce((sum, number) => sum + at(number), 0),
        cutting: (outlet) => at(cutting(outlet)),
        cloth: Float64Array.from({ length: problem.intervals * L }, (_, k) =>
          cloth(id, problem.lays[k % L]!, Math.floor(k / L)).reduce(
            (sum, [number, amount]) => sum + amount * at(number),
            0,
          ),
        ),
        minute: Float64Array.from({ length: problem.intervals }, (_, i) => at(walk(i))),
        tooLong: () => 0,
        tooMuch: null,
        breach: 1 + 2 * whole,
      };
    },
  };
}

/** What needs weigh in breaches when so much of each is taken. */
export const beyond = (needs: readonly Need[], taken: ArrayLike<number>): number =>
  needs.reduce((sum, { kind, most, weighs }, r) => {
    if (kind === "sale") return sum;
    const over = kind === "side by side" ? Math.abs(taken[r]!) : Math.max(0, taken[r]! - most);
    return sum + weighs * over;
  }, 0);
