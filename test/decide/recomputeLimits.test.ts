import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import type { Farm } from "../../src/farm/index.ts";
import { kilogram, metrePerSecond } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import { faultsOf } from "../check/faults.ts";
import { week } from "../week.ts";
import { A, ARUGULA, B, FROSTY, frostyFarm, LETTUCE, only, product } from "./frostyFarm.ts";
import { confirm } from "./recompute.ts";
import { clear, leaf, piece } from "./smallFarm.ts";

const { labour, limits } = frostyFarm().farm;
const plan = (farm: Partial<Farm>, days: readonly DailyRecord[] = FROSTY): Outcome => {
  const outcome = week(frostyFarm(farm, days));
  confirm(outcome);
  return outcome;
};
const worth = ({ together }: Outcome): number => together!.worth;

const SALES = [product("arugula", only("arugula")), product("lettuce", only("lettuce-mix"))];
const SPICY = { crop: "arugula", share: 0.5, swaps: [] };
const WIDE = { ...piece("wide", "row-cover-30", 16), spans: 2 };
const oneTunnel = { tunnels: [A], successions: [ARUGULA], notes: [leaf(ARUGULA, 8)] };
const HOT = clear([14, 33], [16, 35], [18, 35], [18, 36], [18, 35], [18, 35]);
const shade = {
  tunnels: [B],
  successions: [LETTUCE],
  notes: [leaf(LETTUCE, 7)],
  pieces: [piece("shade", "shade-50", 16)],
};

/** A limit, a farm on which it binds, and one on which it does not. */
const binding = (
  [
    [
      "a stall that sells two kilograms",
      { products: [product("arugula", only("arugula"), { stall: kilogram(2) }), SALES[1]!] },
      { products: SALES },
    ],
    [
      "an order too large to fill",
      {
        products: [
          product("arugula", only("arugula"), {
            orders: [{ market: "friday", weight: kilogram(60), short: 7 }],
          }),
          SALES[1]!,
        ],
      },
      { products: SALES },
    ],
    [
      "a mix without swaps",
      {
        products: [product("mix", [{ crop: "mizuna", share: 0.5, swaps: [] }, SPICY]), SALES[1]!],
      },
      {
        products: [
          product("mix", [{ crop: "mizuna", share: 0.5, swaps: ["lettuce-mix", "arugula"] }, SPICY]),
          SALES[1]!,
        ],
      },
    ],
    ["no minutes for covers", { labour: { ...labour, walk: 0 } }, {}],
    ["minutes for one tunnel at a walk", { labour: { ...labour, walk: 16 } }, {}],
    ["twenty minutes to cut at a pick", { labour: { ...labour, picking: 20 } }, {}],
    ["five kilograms to wash at a pick", { handling: { washing: kilogram(5), cooler: null } }, {}],
    ["three kilograms kept cold", { handling: { washing: null, cooler: kilogram(3) } }, {}],
    [
      "a piece too narrow for neighbours",
      { sideBySide: [["A", "B"]], pieces: [{ ...WIDE, spans: 1 }] },
      { sideBySide: [["A", "B"]], pieces: [WIDE] },
    ],
    [
      "pieces too short",
      { pieces: [piece("light", "row-cover-19", 16), piece("heavy", "row-cover-30", 14)] },
      {},
    ],
    [
      "one sheet at a time",
      { ...oneTunnel, limits: { ...limits, layers: 1 } },
      { ...oneTunnel, limits: { ...limits, layers: 2 } },
    ],
    ["one change a week", { limits: { ...limits, changesPerWeek: 1 } }, {}],
    [
      "a net that is required",
      { ...oneTunnel, successions: [{ ...ARUGULA, net: true }], pieces: [piece("net", "net", 16)] },
      { ...oneTunnel, pieces: [piece("net", "net", 16)] },
    ],
    [
      "no day below the light floor",
      { ...shade, limits: { ...limits, dimDays: 0 }, crops: dark(30) },
      { ...shade, limits: { ...limits, dimDays: 6 }, crops: dark(30) },
      HOT,
    ],
  ] satisfies readonly (readonly [string, Partial<Farm>, Partial<Farm>, (readonly DailyRecord[])?])[]
).map(([what, bound, free, days = FROSTY]) => [what, bound, free, days] as const);

describe("a farm on which one limit binds is worth less than one without it, and all of it is recomputed", () => {
  it.each<readonly [what: string, bound: Partial<Farm>, free: Partial<Farm>, days: readonly DailyRecord[]]>(
    binding,
  )("%s", (_, bound, free, days) => {
    expect(worth(plan(bound, days))).toBeLessThan(worth(plan(free, days)) - 0.01);
  });

  it.each(binding.filter(([what]) => /minutes|to wash|kept cold/u.test(what)))(
    "%s: the limit is kept",
    (_, bound) => {
      expect(plan(bound).together).toMatchObject({ overrun: [], proved: true });
    },
  );

  it("wind above the limit at every walk: nothing is put on", () => {
    const outcome = plan(
      {},
      FROSTY.map((day) => ({ ...day, wind: metrePerSecond(12) })),
    );
    expect(outcome.tunnels.map(({ changes }) => changes)).toEqual([[], []]);
  });

  it("frozen cloth is not taken off before it has thawed", () => {
    const days = clear([-3, 24], [-3, 26], [-3, 26], [-3, 26]);
    const walks = { morning: 5, evening: 18 };
    const input = frostyFarm(
      { ...oneTunnel, walks, pieces: [piece("heavy", "row-cover-30", 16, ["A"])] },
      days,
    );
    const outcome = week(input);
    confirm(outcome);
    const off = outcome.tunnels[0]!.changes.filter(({ from, to }) => to.length < from.length);
    expect(outcome.walks.some(({ frozen }) => frozen)).toBe(true);
    expect(off.map(({ walk }) => walk.frozen)).toEqual([false]);
    const answer = JSON.parse(weekJson(outcome));
    for (const walk of answer.walks) walk.frozen = true;
    expect(faultsOf(answer)).toContain("planned A limits:  told, frozen recomputed");
  });

  it("neighbours under one wide piece have it alike at every walk", () => {
    const outcome = plan({ sideBySide: [["A", "B"]], pieces: [{ ...WIDE, liesOn: ["A", "B"] }] });
    const [one, other] = outcome.tunnels.map(({ takenIn }) => takenIn);
    expect(one!.flat().some(({ over }) => over.length === 2)).toBe(true);
    expect(one).toEqual(other);
  });

  it("cloth that lies on more tunnels than it is owned for lies on the others as nobody's", () => {
    const outcome = plan({ pieces: [{ ...WIDE, liesOn: ["A", "B"] }] });
    expect(outcome.tunnels.map(({ taken }) => taken.map((lain) => lain.piece?.id ?? null))).toEqual([
      ["wide"],
      [null],
    ]);
  });

  it("a farm without prices, counted in kilograms", () => {
    expect(worth(plan({ currency: null }))).toBeGreaterThan(0);
  });

  it("a bed that grows again, and one whose last cut nobody dated", () => {
    const outcome = plan({ successions: [ARUGULA, { ...LETTUCE, cuts: 1 }] });
    expect(outcome.tunnels[1]!.undated.map(({ id }) => id)).toEqual([LETTUCE.id]);
    expect(outcome.successions[0]!.basis!.regrown).toBeGreaterThan(0);
  });
});

/** Crops whose light may not fall below a floor. [mol/m²] */
function dark(floor: number): Farm["crops"] {
  return new Map(
    [...frostyFarm().farm.crops].map(([id, crop]) => [
      id,
      { ...crop, lightFloor: floor as typeof crop.lightFloor },
    ]),
  );
}
