import { describe, expect, test } from "vitest";
import type { IssuedProduct } from "../../src/folder/index.ts";
import { pickOutcomes } from "../../src/learn/index.ts";
import { at, cut, kg, pickAt, sheetOn } from "./noted.ts";

const monday = at("2026-04-20", 7);
const now = at("2026-06-01");
const friday = pickAt("2026-04-24");
const product = (
  name: string,
  expected: number,
  ordered: number,
  from: readonly string[],
): IssuedProduct => ({
  product: name,
  pick: friday,
  expected: kg(expected),
  ordered: kg(ordered),
  successions: from,
});
const sheet = sheetOn(monday, [], [product("mix", 9, 8, ["S1", "S2"]), product("arugula", 3, 2, ["S1"])]);

describe("a pick", () => {
  test("sums what all products were to be and what their beds gave, each bed once", () => {
    const notes = [
      cut(at("2026-04-23"), "S1", 6),
      cut(at("2026-04-24"), "S2", 5),
      cut(at("2026-04-24"), "S9", 7),
    ];
    expect(pickOutcomes(notes, [sheet], now)).toEqual([{ pick: friday, expected: 12, ordered: 10, cut: 11 }]);
  });

  test("is not told where a bed was not weighed, not cut, or cut too late or before the sheet", () => {
    for (const second of [
      [],
      [cut(at("2026-04-24"), "S2", null)],
      [cut(at("2026-04-26"), "S2", 5)],
      [cut(at("2026-04-19"), "S2", 5)],
    ])
      expect(pickOutcomes([cut(at("2026-04-23"), "S1", 6), ...second], [sheet], now)).toEqual([]);
  });

  test("is that of the last sheet a day or more before", () => {
    const notes = [cut(at("2026-04-24"), "S1", 6)];
    const of = (on: Parameters<typeof at>, expected: number) =>
      sheetOn(at(...on), [], [product("mix", expected, 0, ["S1"])]);
    const sheets = [of(["2026-04-13"], 4), of(["2026-04-20"], 5), of(["2026-04-24"], 6)];
    expect(pickOutcomes(notes, sheets, now).map(({ expected }) => expected)).toEqual([5]);
  });
});
