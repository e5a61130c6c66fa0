import { expect, test } from "vitest";
import type { KeptCut } from "../../src/farm/index.ts";
import type { LocalDate } from "../../src/quantity/index.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";
import { A, ARUGULA } from "./frostyFarm.ts";
import { clear, input, leaf, piece } from "./smallFarm.ts";

const { markets, crops: CROPS } = exampleFarm();
const [FRIDAY] = markets.filter(({ weekday }) => weekday === 5);
const cutOn = (date: string): KeptCut => ({
  kind: "cut",
  succession: ARUGULA.id,
  date: date as LocalDate,
  part: null,
});

/** Arugula that is too small and keeps for three days, settled for a day. */
const settled = (date: string) =>
  week({
    ...input(
      {
        tunnels: [A],
        successions: [ARUGULA],
        notes: [leaf(ARUGULA, 5)],
        pieces: [piece("light", "row-cover-19", 16)],
        markets: [FRIDAY!],
        crops: new Map([...CROPS].map(([id, crop]) => [id, { ...crop, storage: 3 }])),
      },
      clear([3, 13], [3, 13], [3, 13], [3, 13], [3, 13], [3, 13]),
    ),
    keep: [cutOn(date)],
  });

test("a bed is cut early on the day it is settled for, even below its size", () => {
  const { successions, problems } = settled("2026-04-21");
  expect(successions[0]!.fate).toMatchObject({ kind: "hold", as: "small" });
  expect(problems.filter(({ file }) => file === "--keep")).toEqual([]);
});

test("a day on which no market takes it is told, and the plan decides", () => {
  const { successions, problems } = settled("2026-04-25");
  expect(successions[0]!.fate.kind).not.toBe("hold");
  expect(problems.filter(({ file }) => file === "--keep")).toEqual([
    {
      code: "kept-cut-impossible",
      weight: "needsYou",
      file: "--keep",
      line: null,
      column: null,
      expected: "a cut of arugula in A that some market can take",
      received: "a cut on 2026-04-25",
      hint: `No market that lies within ${successions[0]!.crop.storage} days in the cold takes it, its pick is past, or the bed is not up then: the plan decides about it.`,
    },
  ]);
});
