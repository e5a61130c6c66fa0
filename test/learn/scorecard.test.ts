import { describe, expect, test } from "vitest";
import {
  brier,
  byLead,
  cards,
  daysOffOf,
  type Outcomes,
  reliabilityOf,
  type SizeOutcome,
  verdictOf,
} from "../../src/learn/index.ts";
import { at, cm, date, kg, pickAt } from "./noted.ts";

const said = (succession: string, crop = "arugula") => ({
  succession,
  crop,
  cropName: crop,
  stand: `${succession} `,
  sheet: at("2026-04-20"),
});

const dateOf = (succession: string, inside: boolean, daysOff: number, crop?: string) => ({
  ...said(succession, crop),
  projected: date("2026-04-22"),
  early: date("2026-04-21"),
  late: date("2026-04-24"),
  actual: date("2026-04-22"),
  daysOff,
  inside,
  score: 3,
});

const sizeOf = (succession: string, odds: number, came: boolean, inside = true, lead = 4): SizeOutcome => ({
  ...said(succession),
  pick: pickAt("2026-04-24"),
  size: { low: cm(7), middle: cm(9), high: cm(10) },
  actual: cm(9),
  inside,
  odds,
  came,
  lead,
});

const all = (part: Partial<Outcomes>): Outcomes => ({
  dates: [],
  sizes: [],
  weights: [],
  emergences: [],
  cuts: [],
  everySize: [],
  ...part,
});

/** The first `inside` of `count` beds inside their range. */
const beds = (inside: number, count: number) =>
  Array.from({ length: count }, (_, i) => dateOf(`S${i}`, i < inside, 0));

describe("Brier's score (Brier 1950, the form that counts one of two outcomes)", () => {
  test("of 0.9 come, 0.6 not come and 0.2 not come is (0.01 + 0.36 + 0.04) / 3, by hand", () => {
    expect(
      brier([
        { odds: 0.9, came: true },
        { odds: 0.6, came: false },
        { odds: 0.2, came: false },
      ]),
    ).toBeCloseTo(0.41 / 3, 12);
  });
});

describe("odds beside how often it came", () => {
  const sizes = [
    ...[0.75, 0.85, 0.8, 0.78].map((odds, i) => sizeOf(`A${i}`, odds, i < 3)),
    sizeOf("B", 0.1, false),
    sizeOf("C", 1, true),
  ];
  const told = reliabilityOf(sizes);

  test("go to the nearest fifth: 0.75, 0.78, 0.8 and 0.85 to 4 in 5, 0.1 to 1 in 5, 1 to all", () => {
    expect(
      told.bins.map(({ fifth, said: mean, came }) => [fifth, mean.toFixed(4), came.hits, came.count]),
    ).toEqual([
      [1, "0.1000", 0, 1],
      [4, "0.7950", 3, 4],
      [5, "1.0000", 1, 1],
    ]);
  });

  test("score against saying 4 in 6 each time: 2/3 × 1/3", () => {
    expect(told.brierOfMean).toBeCloseTo(2 / 9, 12);
    expect(told.brier).toBeCloseTo((0.0625 + 0.0225 + 0.04 + 0.6084 + 0.01 + 0) / 6, 12);
    expect(reliabilityOf([])).toEqual({ bins: [], count: 0, brier: null, brierOfMean: null });
  });
});

describe("the conclusion", () => {
  const kind = (inside: number, count: number) => verdictOf(all({ dates: beds(inside, count) })).kind;

  test("is not drawn from fewer than eight beds, however they did", () => {
    expect([kind(0, 0), kind(0, 7), kind(7, 7)]).toEqual(["tooEarly", "tooEarly", "tooEarly"]);
  });

  // Exact limits by hand: of 3 in 8 the upper is 0.755, of 4 in 8 0.843; of n in n the lower is 0.025^(1/n), 0.794 at 16, 0.805 at 17.
  test("is less below what 4 of 5 could make, more above it, else as said", () => {
    expect([kind(3, 8), kind(4, 8), kind(8, 8), kind(16, 16), kind(17, 17)]).toEqual([
      "less",
      "asSaid",
      "asSaid",
      "asSaid",
      "more",
    ]);
  });

  test("counts a bed once, by its date, else by its size at the last pick", () => {
    const sizes = [
      sizeOf("S0", 0.5, true, false),
      sizeOf("P", 0.5, true, false),
      sizeOf("P", 0.5, true, true),
    ];
    const { inside } = verdictOf(all({ dates: [dateOf("S0", true, 0)], sizes }));
    expect([inside.hits, inside.count]).toEqual([2, 2]);
  });
});

describe("a crop's card", () => {
  const weight = (succession: string, crop: string, expected: number, cut: number) => ({
    ...said(succession, crop),
    date: date("2026-04-24"),
    expected: kg(expected),
    cut: kg(cut),
  });
  const told = cards(
    all({
      dates: [dateOf("S1", true, -1), dateOf("S2", false, 4), dateOf("S3", true, 0, "kale")],
      weights: [weight("S1", "arugula", 6, 5), weight("S3", "kale", 4, 4.5)],
    }),
  );

  test("holds mean and usual days off, shares and sums; the last card is all crops", () => {
    expect(told.map(({ crop, days, weights }) => [crop, days, weights])).toEqual([
      ["arugula", { count: 2, mean: 1.5, usual: 2.5 }, { count: 1, expected: 6, cut: 5 }],
      ["kale", { count: 1, mean: 0, usual: 0 }, { count: 1, expected: 4, cut: 4.5 }],
      [null, { count: 3, mean: 1, usual: 5 / 3 }, { count: 2, expected: 10, cut: 9.5 }],
    ]);
    expect(told.map(({ dates }) => [dates.hits, dates.count])).toEqual([
      [1, 2],
      [1, 1],
      [2, 3],
    ]);
  });

  test("says nothing where nothing is known", () => {
    expect(daysOffOf([{ daysOff: null }])).toEqual({ count: 0, mean: null, usual: null });
  });
});

test("sizes are told apart by weeks ahead", () => {
  const sizes = [1, 6.9, 7, 13, 14, 20].map((lead, i) => sizeOf(`S${i}`, 0.5, true, i % 2 === 0, lead));
  expect(byLead(sizes).map(({ from, to, inside }) => [from, to, inside.hits, inside.count])).toEqual([
    [1, 7, 1, 2],
    [7, 14, 1, 2],
    [14, null, 1, 2],
  ]);
});
