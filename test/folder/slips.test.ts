import { describe, expect, test } from "vitest";
import { heavyCuts, oldSowings } from "../../src/folder/index.ts";
import { instantAt } from "../../src/quantity/index.ts";
import { farmOf, messages, problemsOf } from "./fixtures.ts";

const SOWN = "id,crop,tunnel,from (m),to (m),sown";
const NOTED = "when,kind,about,value,remark";
const PIECES = "id,cover,length (m),count,lies on\nC1,row-cover-19,18,1,T1";
const successions = `${SOWN}\nS01,spinach,T1,0,10,2026-03-01\nS02,kale,T1,10,15,2026-03-04`;

describe("a cut of more than its bed can bear", () => {
  // Spinach is taken to yield 0.5 kg a metre (judgement); four times that is the limit (judgement).
  test("is worth a look, one of four times the usual is not", () => {
    expect(problemsOf({ successions, notes: `${NOTED}\n2026-04-12,cut,S01,21 kg,` })).toEqual([
      'notes.csv:2 column "value": expected a weight that 10 m of spinach can bear, usually some 5 kg, received 21 kg. Look at the weight and its unit.',
    ]);
    expect(problemsOf({ successions, notes: `${NOTED}\n2026-04-12,cut,S01,20 kg,` })).toEqual([]);
  });

  test("typed on the command line has no line", () => {
    const farm = farmOf({ successions, notes: `${NOTED}\n2026-04-12,cut,S01,50 lb,` });
    const problems = heavyCuts({ file: "note", numbered: false, column: null }, farm.notes, farm);
    expect(messages({ problems })).toEqual([
      "note: expected a weight that 10 m of spinach can bear, usually some 5 kg, received 50 lb. Look at the weight and its unit.",
    ]);
  });
});

describe("cloth that no note speaks of", () => {
  test("is told once, with the day its bed was sown", () => {
    expect(problemsOf({ successions, pieces: PIECES })).toEqual([
      'pieces.csv:2 column "lies on": expected a note of when the cloth went on T1, received none. Taken as lying since sowing. Note when it went on, like "leafpace note T1 row-cover-19 on, 2026-03-01 18:00".',
    ]);
  });

  test("is not told of a tunnel without a bed, nor where a note speaks of it or cannot be read", () => {
    const noted = (note: string): readonly string[] =>
      problemsOf({ successions, pieces: PIECES, notes: `${NOTED}\n${note}` });
    expect(problemsOf({ pieces: PIECES })).toEqual([]);
    expect(noted("2026-03-01 18:00,cover,T1,row-cover-19 on,")).toEqual([]);
    expect(noted("soon,cover,T1,row-cover-19 on,")).toHaveLength(1);
  });
});

describe("a sowing long ago", () => {
  const told = (notes: string): string[] => {
    const farm = farmOf({
      successions: `${SOWN}\nS01,spinach,T1,0,10,2024-03-01`,
      notes: `${NOTED}\n${notes}`,
    });
    return messages({ problems: oldSowings(farm, instantAt(farm.place.zone, "2026-04-20", 7)) });
  };

  test("is worth a look while it stands", () => {
    expect(told("")).toEqual([
      'successions.csv column "sown": expected a sowing of S01 within the last year, received 2024-03-01. Correct the year, or note its last cut: "leafpace note S01 last cut".',
    ]);
    expect(told("2024-05-01,cut,S01,last,")).toEqual([]);
    expect(told("2026-03-01,resown,S01,,")).toEqual([]);
  });
});
