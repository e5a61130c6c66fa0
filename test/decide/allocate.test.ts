import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allocate, orderedAt } from "../../src/decide/index.ts";
import type { Market, Product } from "../../src/farm/index.ts";
import { kilogram } from "../../src/quantity/index.ts";

const product = (id: string, parts: Readonly<Record<string, number>>): Product => ({
  id,
  name: id,
  parts: Object.entries(parts).map(([crop, share]) => ({ crop, share })),
  price: null,
  orders: [],
});

const mix = product("mix", { lettuce: 0.5, arugula: 0.25, mizuna: 0.25 });
const arugula = product("arugula", { arugula: 1 });

describe("what is cut is given out", () => {
  test("as a mix takes what its scarcest part allows, and the rest stays", () => {
    const { made, left } = allocate(
      [mix],
      [0],
      new Map([
        ["lettuce", 10],
        ["arugula", 2],
        ["mizuna", 4],
      ]),
    );
    expect(made).toEqual([8]);
    expect([...left]).toEqual([
      ["lettuce", 6],
      ["arugula", 0],
      ["mizuna", 2],
    ]);
  });

  test("to orders first, in the order the farm lists its products, then to all", () => {
    const cut = new Map([
      ["lettuce", 10],
      ["arugula", 3],
      ["mizuna", 10],
    ]);
    expect(allocate([mix, arugula], [0, 2], cut).made).toEqual([4, 2]);
    expect(allocate([mix, arugula], [8, 2], cut).made).toEqual([8, 1]);
    expect(allocate([arugula, mix], [2, 8], cut).made).toEqual([2, 4]);
  });

  test("and nothing where a part is not cut at all", () => {
    expect(allocate([mix, arugula], [5, 0], new Map([["arugula", 3]])).made).toEqual([0, 3]);
  });

  test("to the last leaf and no further", () => {
    const weight = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(weight, weight, weight), fc.tuple(weight, weight), (cut, ordered) => {
        const crops = ["lettuce", "arugula", "mizuna"];
        const before = new Map(crops.map((crop, i) => [crop, cut[i]!]));
        const { made, left } = allocate([mix, arugula], ordered, before);
        for (const weight of [...made, ...left.values()]) expect(weight).toBeGreaterThan(-1e-9);
        const total = cut[0] + cut[1] + cut[2];
        expect(made[0]! + made[1]! + [...left.values()].reduce((a, b) => a + b)).toBeCloseTo(total, 9);
      }),
    );
  });

  test("beside all orders of one market together", () => {
    const friday = { id: "friday", name: "Friday", weekday: 5, picks: [] } satisfies Market;
    const orders = [
      { market: "friday", weight: kilogram(2) },
      { market: "tuesday", weight: kilogram(5) },
      { market: "friday", weight: kilogram(1.5) },
    ];
    expect(orderedAt({ ...arugula, orders }, friday)).toBe(3.5);
  });
});
