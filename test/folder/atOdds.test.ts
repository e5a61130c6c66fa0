import { describe, expect, test } from "vitest";
import { atOdds } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import { farmOf } from "./fixtures.ts";
import { LONG_ROW, SOWN } from "./longRow.ts";

const PRODUCTS = `products:
  - { id: a, name: Spicy mix, parts: { mustard: { share: 100 %, swaps: [arugula] } }, orders: [{ market: friday, weight: 8 lb }] }
  - { id: b, name: Spinach, parts: { spinach: 100 % }, orders: [{ market: friday, weight: 8 lb }] }
  - { id: c, name: Kale, parts: { kale: 100 % }, orders: [{ market: friday, weight: 8 lb }] }
  - { id: d, name: Chard, parts: { chard: 100 % } }
`;
const ARUGULA = `${SOWN}\nS04,arugula,T1,0,50,2026-03-20`;

const told = (more: string, successions: string): string[] =>
  atOdds(farmOf({ farm: LONG_ROW + more, successions })).map(formatProblem);

describe("at odds are", () => {
  test("an order and beds without anything that goes into it, told once", () => {
    expect(told(PRODUCTS, ARUGULA)).toEqual([
      'farm.yaml "products": expected a sowing for Spinach and Kale, which are ordered, received none. Sow it, or take the order out until it stands.',
    ]);
    expect(told(PRODUCTS, SOWN)).toEqual([]);
  });

  test("greens cut the day before and no room to keep them", () => {
    expect(told("handling: { cooler: 0 lb }\n", ARUGULA)).toEqual([
      'farm.yaml "handling.cooler": expected room in the cold for what is cut the day before Friday market, received none. Leave the cooler out where there is room for all, or cut on the day itself.',
    ]);
    expect(told("handling: { cooler: 5 lb }\n", ARUGULA)).toEqual([]);
  });
});
