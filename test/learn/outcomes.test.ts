import { describe, expect, test } from "vitest";
import { outcomesOf } from "../../src/learn/index.ts";
import { at, cm, cut, date, farmOf, kg, leaf, note, outlook, pickAt, sheetOn, sown } from "./noted.ts";

const now = at("2026-06-01");
const monday = at("2026-04-20", 7);
const before = at("2026-04-13", 7);
const spread = { early: date("2026-04-21"), late: date("2026-04-25") };
/** 6 cm on Monday, 10 on Friday: 8 on Wednesday, 22 April. */
const grown = [leaf(at("2026-04-20"), "S1", 6), leaf(at("2026-04-24"), "S1", 10)];

describe("the date of salad size", () => {
  const dates = (said: Parameters<typeof outlook>[1], notes = grown) =>
    outcomesOf(farmOf([sown("S1")], notes), [sheetOn(monday, [outlook("S1", said)])], now).dates;

  test("is actual less said: said Tuesday, was Wednesday, 1 day later and inside; score 4 days of width", () => {
    expect(dates({ reach: date("2026-04-21"), ...spread })).toEqual([
      {
        succession: "S1",
        crop: "arugula",
        cropName: "arugula",
        stand: "S1 ",
        sheet: monday,
        projected: "2026-04-21",
        early: "2026-04-21",
        late: "2026-04-25",
        actual: "2026-04-22",
        daysOff: 1,
        inside: true,
        score: 4,
      },
    ]);
  });

  test("missed by 2 days costs ten times that beside the width: 3 + 20", () => {
    const late = { early: date("2026-04-24"), late: date("2026-04-27") };
    expect(dates({ reach: date("2026-04-25"), ...late })).toMatchObject([
      { daysOff: -3, inside: false, score: expect.closeTo(23, 9) },
    ]);
  });

  test("said to lie beyond the days looked at counts by its early end alone", () => {
    expect(dates({ reach: null, early: date("2026-04-21"), late: null })).toMatchObject([
      { daysOff: null, inside: true, score: null },
    ]);
    expect(dates({})).toEqual([]);
  });

  test("is that of the last sheet a day or more before the leaf that showed it", () => {
    const sheets = [
      sheetOn(before, [outlook("S1", { reach: date("2026-04-18"), ...spread })]),
      sheetOn(monday, [outlook("S1", { reach: date("2026-04-23"), ...spread })]),
      sheetOn(at("2026-04-23", 7), [outlook("S1", { reach: date("2026-04-22"), ...spread })]),
    ];
    const { dates: found } = outcomesOf(farmOf([sown("S1")], grown), sheets, now);
    expect(found.map(({ daysOff }) => daysOff)).toEqual([-1]);
  });

  test("of another sowing under the same id, or of notes still to come, is none", () => {
    const said = sheetOn(monday, [outlook("S1", { reach: date("2026-04-21"), ...spread })]);
    expect(outcomesOf(farmOf([sown("S1", "kale")], grown), [said], now).dates).toEqual([]);
    expect(outcomesOf(farmOf([sown("S1")], grown), [said], at("2026-04-23")).dates).toEqual([]);
  });
});

describe("the size at a pick", () => {
  const friday = pickAt("2026-04-24");
  const size = { low: cm(7), middle: cm(9), high: cm(10) };
  const atPick = { pick: friday, size, odds: 0.8, weight: kg(6) };

  test("is inside its range up to both ends, and salad size from smallest to largest", () => {
    const found = (length: number) =>
      outcomesOf(
        farmOf([sown("S1")], [leaf(at("2026-04-24"), "S1", length)]),
        [sheetOn(monday, [outlook("S1", { atPicks: [atPick] })])],
        now,
      ).sizes.map(({ inside, came }) => [inside, came]);
    expect([6.9, 7, 8, 10, 12, 12.1].map(found)).toEqual([
      [[false, false]],
      [[true, false]],
      [[true, true]],
      [[true, true]],
      [[false, true]],
      [[false, false]],
    ]);
  });

  test("counts once, by the last sheet, while every sheet's own is kept by its lead", () => {
    const notes = [leaf(at("2026-04-24"), "S1", 8)];
    const sheets = [
      sheetOn(before, [outlook("S1", { atPicks: [{ ...atPick, odds: 0.4 }] })]),
      sheetOn(monday, [outlook("S1", { atPicks: [atPick] })]),
      sheetOn(at("2026-04-23", 18), [outlook("S1", { atPicks: [{ ...atPick, odds: 1 }] })]),
    ];
    const { sizes, everySize } = outcomesOf(farmOf([sown("S1")], notes), sheets, now);
    expect(sizes.map(({ odds }) => odds)).toEqual([0.8]);
    expect(everySize.map(({ lead }) => Math.round(lead))).toEqual([11, 4]);
  });

  test("is not known of a bed that was cut more than a day before, though the stubble was measured", () => {
    const notes = [cut(at("2026-04-22"), "S1", 5), leaf(at("2026-04-24"), "S1", 3)];
    const sheets = [sheetOn(monday, [outlook("S1", { atPicks: [atPick] })])];
    expect(outcomesOf(farmOf([sown("S1")], notes), sheets, now).sizes).toEqual([]);
  });
});

describe("weights", () => {
  const friday = pickAt("2026-04-24");
  const size = { low: cm(7), middle: cm(9), high: cm(10) };
  const fate = { as: "salad", cut: at("2026-04-23", 7), pick: friday, weight: kg(7) } as const;
  const said = outlook("S1", { fate, atPicks: [{ pick: friday, size, odds: 0.8, weight: kg(6) }] });
  const weighed = (...notes: Parameters<typeof farmOf>[1]) =>
    outcomesOf(farmOf([sown("S1")], notes), [sheetOn(monday, [said])], now).weights.map(
      ({ expected, cut: found }) => [expected, found],
    );

  test("are compared at the planned cut, else at the pick, within a day; else not", () => {
    expect(weighed(cut(at("2026-04-23", 8), "S1", 5))).toEqual([[7, 5]]);
    expect(weighed(cut(at("2026-04-24", 12), "S1", 5))).toEqual([[6, 5]]);
    expect(weighed(cut(at("2026-04-27", 8), "S1", 5))).toEqual([]);
    expect(weighed(cut(at("2026-04-23", 8), "S1", null))).toEqual([]);
  });

  test("of a bed lost whole are nothing cut", () => {
    expect(weighed(note(at("2026-04-22"), { kind: "loss", succession: "S1", share: 1 }))).toEqual([[7, 0]]);
  });
});

describe("other days", () => {
  test("a bed up two days after it was said, and one cut a day before it was planned", () => {
    const pick = pickAt("2026-04-24");
    const fate = { as: "salad", cut: pick.at, pick, weight: kg(7) } as const;
    const notes = [
      note(at("2026-04-24"), { kind: "emerged", succession: "S2" }),
      cut(at("2026-04-23"), "S1", 5),
    ];
    const sheet = sheetOn(monday, [
      outlook("S1", { fate, emergence: { at: at("2026-03-25"), seen: true } }),
      outlook("S2", { emergence: { at: at("2026-04-22"), seen: false } }),
    ]);
    const { emergences, cuts } = outcomesOf(farmOf([sown("S1"), sown("S2")], notes), [sheet], now);
    expect(emergences.map(({ succession, daysOff }) => [succession, daysOff])).toEqual([["S2", 2]]);
    expect(cuts.map(({ succession, daysOff }) => [succession, daysOff])).toEqual([["S1", -1]]);
  });
});
