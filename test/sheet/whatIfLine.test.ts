import { expect, test } from "vitest";
import type { WhatIf } from "../../src/decide/index.ts";
import { metre } from "../../src/quantity/index.ts";
import { sheetOf, sheetText, weekHtml, weekJson } from "../../src/sheet/index.ts";
import { metricSample, sample } from "./sample.ts";

const { pieces, markets } = sample().farm;
const piece = { ...pieces[0]!, length: metre(15.24) };
const all: readonly WhatIf[] = [
  { kind: "piece", piece, worth: 23.4, off: 0 },
  { kind: "hands", worth: 6.2, off: 9 },
  { kind: "pick", market: markets[0]!, days: 1, worth: 0.4, off: 0 },
  { kind: "pick", market: markets[0]!, days: -1, worth: -12.3, off: 0 },
];

test("each is told in a line of its own, nothing where it comes to less than a dollar", () => {
  expect(sheetOf(sample({}, { whatIf: all })).whatIf.map((line) => line.replaceAll("\u00A0", " "))).toEqual([
    "One more piece of row cover 30 g, 50 ft: $23.",
    "Twice the minutes at every walk and pick: perhaps $6.",
    "Picking for Saturday stall a day later: nothing.",
    "Picking for Saturday stall a day earlier: costs $12.",
  ]);
});

test("without a currency half a pound is nothing", () => {
  const little: readonly WhatIf[] = [
    { kind: "hands", worth: 0.2, off: 0 },
    { kind: "hands", worth: 0.3, off: 0 },
  ];
  expect(
    sheetOf({ ...metricSample(), whatIf: little }).whatIf.map((line) => line.replaceAll("\u00A0", " ")),
  ).toEqual([
    "Twice the minutes at every walk and pick: nothing.",
    "Twice the minutes at every walk and pick: 0.3 kg.",
  ]);
});

test("it is a part of its own in text, page and data, and nowhere when it was not asked for", () => {
  const [asked, not] = [sample({}, { whatIf: all }), sample()];
  const text = (outcome: typeof asked): string => sheetText(sheetOf(outcome), { width: 80 } as never);
  expect(text(asked)).toContain("WHAT ONE MORE WOULD BE WORTH");
  expect(text(not)).not.toContain("WHAT ONE MORE");
  expect(weekHtml(asked)).toContain("What one more would be worth");
  expect(weekHtml(not)).not.toContain("What one more");
  expect(JSON.parse(weekJson(not)).whatIf).toBeNull();
  expect(JSON.parse(weekJson(asked)).whatIf).toEqual([
    { kind: "piece", piece: piece.id, market: null, daysD: null, worth: 23.4, off: 0 },
    { kind: "hands", piece: null, market: null, daysD: null, worth: 6.2, off: 9 },
    { kind: "pick", piece: null, market: markets[0]!.id, daysD: 1, worth: 0.4, off: 0 },
    { kind: "pick", piece: null, market: markets[0]!.id, daysD: -1, worth: -12.3, off: 0 },
  ]);
});
