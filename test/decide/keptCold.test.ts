import { describe, expect, test } from "vitest";
import { keptColdOf } from "../../src/decide/index.ts";
import type { Note } from "../../src/farm/index.ts";
import { kilogram } from "../../src/quantity/index.ts";
import { promiseText, weekText } from "../../src/sheet/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";
import { A, ARUGULA, B, LETTUCE, only, product } from "./frostyFarm.ts";
import { confirm } from "./recompute.ts";
import { at, clear, input, leaf } from "./smallFarm.ts";

const [MARKET] = exampleFarm().markets.filter(({ weekday }) => weekday === 5);
const cut = (id: string, day: number, kilograms: number | null): Note => ({
  at: at(day, 7),
  line: 3,
  remark: "",
  kind: "cut",
  succession: id,
  weight: kilograms === null ? null : kilogram(kilograms),
  last: false,
});

/** On Wednesday: arugula that was cut on Tuesday, and lettuce that is too small for Friday's order. */
const wednesday = (...notes: readonly Note[]): WeekInput =>
  input(
    {
      tunnels: [A, B],
      successions: [ARUGULA, { ...LETTUCE, market: null }],
      notes: [leaf(ARUGULA, 9), leaf(LETTUCE, 3), ...notes],
      pieces: [],
      markets: [MARKET!],
      products: [
        product("arugula", only("arugula"), {
          orders: [{ market: MARKET!.id, weight: kilogram(5), short: 8 }],
        }),
      ],
    },
    clear([4, 14], [4, 14], [4, 14], [4, 14], [4, 14]),
    at(2, 6),
  );

const told = (asked: WeekInput): string =>
  weekText(week(asked), { width: 200, unicode: false, color: false }).replace(/\s+/gu, " ");

describe("greens cut early and kept cold", () => {
  test("count for the market they wait for, in the plan, on the sheet and in what is safe", () => {
    const [none, kept] = [wednesday(cut(ARUGULA.id, 1, null)), wednesday(cut(ARUGULA.id, 1, 6))].map(
      (asked) => week(asked),
    );
    const friday = ({ products }: typeof none & object) =>
      products.find(({ pick }) => pick.marketDate === "2026-04-24")!;
    expect([friday(none!).expected, friday(kept!).expected, friday(kept!).cold]).toEqual([0, 6, 6]);
    expect(kept!.promises[0]).toMatchObject({ safe: 6, mayCome: 6, short: 0 });
    // The order is filled: 5 kg at its price and what it would cost short; the rest sells as well.
    expect(kept!.together!.parts.orders - none!.together!.parts.orders).toBeCloseTo(6 * 20 + 5 * 8, 6);
    confirm(kept!);
  });

  test("are told where they are sold, and with the promise", () => {
    const asked = wednesday(cut(ARUGULA.id, 1, 6));
    expect(told(asked)).toContain("of its greens is cut and kept cold.");
    expect(promiseText(week(asked), null, { unicode: false })).toContain(
      "With what is cut already, where its weight is noted.",
    );
  });

  test("wait as long as the crop keeps, for the market of their bed or the first", () => {
    const { farm, on } = wednesday(cut(ARUGULA.id, 1, 6), cut(LETTUCE.id, -12, 4));
    const picks = [4, 11].map((day) => ({
      market: MARKET!,
      marketDate: (day === 4 ? "2026-04-24" : "2026-05-01") as never,
      at: at(day, 6),
      date: (day === 4 ? "2026-04-24" : "2026-05-01") as never,
      planned: true,
    }));
    expect(keptColdOf(farm, null, picks, on)).toMatchObject([
      { succession: ARUGULA.id, weight: 6, marketDate: "2026-04-24" },
    ]);
    expect(keptColdOf(farm, null, [], on)).toEqual([]);
  });

  test("are sold once their market is over, and promised to no later one", () => {
    const sold = week(wednesday(cut(ARUGULA.id, -3, 6)));
    expect(sold.keptCold).toEqual([]);
    expect(sold.products.map(({ cold }) => cold)).toEqual([0]);
  });
});
