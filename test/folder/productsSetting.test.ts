import { describe, expect, test } from "vitest";
import type { Product } from "../../src/farm/index.ts";
import { pounds } from "../../src/quantity/index.ts";
import { farmOf, MINIMAL, problemsOf } from "./fixtures.ts";

const farm = (product: string): string => `${MINIMAL}products:\n  - { id: mix, ${product} }\n`;
const productOf = (product: string): Product => farmOf({ farm: farm(product) }).products[0]!;
const told = (product: string): string[] => problemsOf({ farm: farm(product) });

describe("a product", () => {
  test("may say what a stall sells, and what may stand in for a crop", () => {
    expect(
      productOf(
        "parts: { lettuce-mix: 75 %, arugula: { share: 25 %, swaps: [mustard, mizuna] } }, stall: 40 lb",
      ),
    ).toEqual({
      id: "mix",
      name: "mix",
      parts: [
        { crop: "lettuce-mix", share: 0.75, swaps: [] },
        { crop: "arugula", share: 0.25, swaps: ["mustard", "mizuna"] },
      ],
      price: null,
      stall: pounds(40),
      orders: [],
    });
  });

  test("may say what it costs when an order is not filled", () => {
    const { orders } = productOf(
      "parts: { spinach: 100 % }, orders: [{ market: friday, weight: 6 kg, short: 4 per kg }, { market: friday, weight: 1 kg }]",
    );
    expect(orders).toEqual([
      { market: "friday", weight: 6, short: 4 },
      { market: "friday", weight: 1, short: null },
    ]);
  });

  test("has swaps that are known crops, each once and none its own", () => {
    expect(told("parts: { arugula: { share: 100 %, swaps: [mizuna, musterd, arugula, mizuna] } }")).toEqual([
      'farm.yaml:9 "products[1].parts.arugula.swaps[2]": expected a crop, received "musterd". Did you mean "mustard"?',
      'farm.yaml:9 "products[1].parts.arugula.swaps[3]": expected another crop than arugula, mizuna, received "arugula". Take it out.',
      'farm.yaml:9 "products[1].parts.arugula.swaps[4]": expected another crop than arugula, mizuna, received "mizuna". Take it out.',
    ]);
    expect(told("parts: { arugula: { swaps: [mizuna] } }")).toEqual([
      'farm.yaml:9 "products[1].parts.arugula.share": expected its share in the mix, like 25 %, received nothing. Add a line "share: ...".',
    ]);
    expect(told("parts: { arugula: { share: 100 %, swap: [mizuna] } }")).toEqual([
      'farm.yaml:9 "products[1].parts.arugula.swap": expected a known setting, received "swap". Did you mean "swaps"?',
    ]);
  });

  test("has no weight and no price below zero, and costs and weights in their own units", () => {
    expect(
      told(
        "parts: { spinach: 100 % }, price: -12 per lb, stall: -4 lb, orders: [{ market: friday, weight: 6 kg, short: 4 lb }]",
      ),
    ).toEqual([
      'farm.yaml:9 "products[1].price": expected a price like 12 per lb or 26 per kg, not below zero, received "-12 per lb". Take the minus sign out.',
      'farm.yaml:9 "products[1].stall": expected a weight like 30 lb or 14 kg, not below zero, received "-4 lb". Take the minus sign out.',
      'farm.yaml:9 "products[1].orders[1].short": expected a price like 12 per lb or 26 per kg, received "4 lb". This unit measures something else; the field holds a price.',
    ]);
  });
});
