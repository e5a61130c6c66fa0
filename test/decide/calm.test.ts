import { describe, expect, test } from "vitest";
import { calmCost, calmPrice, differs, FREE, STAYS } from "../../src/decide/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

const [BARE, COVER, OTHER_PIECE] = [0, 1, 2];
const UNKNOWN = 2;
/** What the sheet has entered at each walk: bare ground, a cover, nothing new, nothing it plans for, a setting that cannot be had. */
const problem = {
  lays: [
    { setting: 0, taken: [] },
    { setting: 1, taken: [] },
    { setting: 1, taken: [] },
  ],
  calm: { price: 3, entered: Int32Array.of(0, 1, STAYS, FREE, UNKNOWN) },
};
const cost = (walk: number, from: number, to: number): number => calmCost(problem, walk, from, to);

describe("what a move costs against the sheet given out", () => {
  test("is nothing where it is the sheet's, whatever lay there and with whichever piece", () => {
    expect(cost(1, BARE, COVER)).toBe(0);
    expect(cost(1, COVER, COVER)).toBe(0);
    expect(cost(1, COVER, OTHER_PIECE)).toBe(0);
    expect(cost(0, BARE, BARE)).toBe(0);
  });

  test("is the price where another setting is entered, or the sheet's is left out", () => {
    expect(cost(0, COVER, COVER)).toBe(3);
    expect(cost(1, BARE, BARE)).toBe(3);
    expect(cost(4, BARE, COVER)).toBe(3);
  });

  test("is the price of any move where the sheet has none", () => {
    expect(cost(2, BARE, BARE)).toBe(0);
    expect(cost(2, COVER, COVER)).toBe(0);
    expect(cost(2, BARE, COVER)).toBe(3);
    expect(cost(2, COVER, OTHER_PIECE)).toBe(3);
  });

  test("is nothing at walks the sheet says nothing of, and without a sheet", () => {
    expect(cost(3, BARE, COVER)).toBe(0);
    expect(differs({ ...problem, calm: null }, 0, BARE, COVER)).toBe(false);
  });
});

test("a changed instruction costs five minutes of work, or what the farm says", () => {
  const { settings } = catalogue();
  const farm = exampleFarm();
  const paid = { ...farm, currency: "$", labour: { ...farm.labour, wage: 24 } };
  expect(calmPrice({ farm: paid, settings })).toBeCloseTo(2, 12);
  expect(calmPrice({ farm: { ...paid, labour: { ...paid.labour, changedInstruction: 7 } }, settings })).toBe(
    7,
  );
  // Judgement: without prices, in kilograms.
  expect(calmPrice({ farm: { ...paid, currency: null }, settings })).toBeCloseTo(
    (5 / 60) * (settings.wage / settings.price),
    12,
  );
});
