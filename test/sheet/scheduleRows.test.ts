import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { csv } from "../../src/cli/csv.ts";
import { scheduleRows } from "../../src/sheet/index.ts";
import { sample } from "./sample.ts";

const rows = () => scheduleRows(sample());

test("the table holds one line for each thing to do, in the order of the walks", () => {
  expect(rows().slice(0, 4)).toEqual([
    ["date", "walk", "time", "tunnel", "succession", "what to do", "minutes", "why", "mind", "done"],
    [
      "2026-04-20",
      "morning",
      "7:00",
      "North 1",
      "spinach (S4)",
      "Cut the spinach (S4) in North 1, 15 lb; keep it cold for Sat Apr 25.",
      "",
      "",
      "",
      "",
    ],
    [
      "2026-04-20",
      "morning",
      "7:00",
      "North 1",
      "",
      "Put on shade cloth 40 %. Use C1 (60 ft).",
      "18",
      "Holds back the arugula (A12): 4½ in on Fri Apr 24 instead of 5 in; odds of salad size 4 in 5 instead of 3 in 5. Worth $59 in all.",
      "",
      "",
    ],
    [
      "2026-04-20",
      "morning",
      "7:00",
      "South 1",
      "",
      "Take off row cover 30 g: from now on it goes on every evening and comes off every morning.",
      "9",
      "Heat on Mon Apr 20: 96 °F at the crop if left as it is, 75 °F with the plan. Too hot: it would grow slower, not faster.",
      "",
      "",
    ],
  ]);
});

test("what is to be minded at a walk stands beside everything done at it", () => {
  const outcome = sample();
  const snowy = { ...outcome, walks: outcome.walks.map((walk) => ({ ...walk, snow: walk.index === 8 })) };
  const minded = scheduleRows(snowy)
    .slice(1)
    .filter((row) => row[8] !== "")
    .map((row) => [row[0], row[2], row[3], row[8]]);
  const frozen = "Frozen cloth tears: wait until it has thawed before you move it.";
  const windy =
    "Wind 18 mph: put no cloth on at this walk. Snow may lie: brush it off gently before you open a bed, and drag no cloth from under it.";
  expect(minded).toEqual([
    ["2026-04-23", "7:00", "North 1", frozen],
    ["2026-04-23", "7:00", "South 1", frozen],
    ["2026-04-24", "6:00", "North 1", windy],
    ["2026-04-24", "6:00", "North 2", windy],
    ["2026-04-24", "7:00", "North 1", windy],
    ["2026-04-24", "7:00", "South 1", windy],
  ]);
});

test("a table reads back the same from the file a spreadsheet opens", () => {
  expect(parse(csv(rows()), { bom: true })).toEqual(rows());
});

test("no cell is one a spreadsheet would run as a formula", () => {
  const evil = ["=1+1", "+1", "-2", "@SUM(A1)", "\tx"];
  const farm = sample().farm;
  const named = sample({
    tunnels: farm.tunnels.map((tunnel, i) => ({ ...tunnel, name: evil[i] ?? tunnel.name })),
  });
  const written = [
    ...parse(csv(scheduleRows(named)), { bom: true }).flat(),
    ...parse(csv([evil]), { bom: true }).flat(),
  ];
  expect(written.filter((cell) => /^[=+\-@\t]/u.test(cell))).toEqual([]);
  expect(parse(csv([evil]), { bom: true })).toEqual([evil.map((cell) => `'${cell}`)]);
});
