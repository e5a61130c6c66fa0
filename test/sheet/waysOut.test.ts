import { expect, test } from "vitest";
import type { Miss } from "../../src/decide/index.ts";
import { sheetOf, weekHtml } from "../../src/sheet/index.ts";
import { sample } from "./sample.ts";

const PLAN = "Leave it uncut.";

/** What is told of the lettuce's ways out, its best cut worth $130. */
function told(changed: Partial<Miss>): readonly string[] {
  const outcome = sample();
  const successions = outcome.successions.map((outlook) =>
    outlook.succession.id === "L7" && outlook.miss !== null
      ? { ...outlook, miss: { ...outlook.miss, ...changed } }
      : outlook,
  );
  return sheetOf({ ...outcome, successions })
    .misses.find(({ succession }) => succession === "L7")!
    .alternatives.map(({ brief, beside }) => [brief, ...beside].join(" ").replaceAll("\u00A0", " "));
}

test("clearing a bed is a way out where it is worth half of the best cut", () => {
  const free = "Clear it and sow anew. The bed is free about 9 days sooner.";
  expect(told({ freed: { days: 9.2, worth: 70 } })).toEqual([PLAN, "Pick Wed Apr 29.", free]);
  expect(told({ freed: { days: 9.2, worth: 60 } })).toEqual([PLAN, "Pick Wed Apr 29."]);
});

test("it is told before a cut that is worth less", () => {
  expect(told({ freed: { days: 1, worth: 140 } })).toEqual([
    "Clear it and sow anew. The bed is free about 1 day sooner.",
    PLAN,
    "Pick Wed Apr 29.",
  ]);
});

test("of a cut's worth it is told how much comes only with the next cut", () => {
  const outcome = sample();
  const worths = (again: number | null): readonly (string | null)[] =>
    sheetOf({
      ...outcome,
      successions: outcome.successions.map((outlook) =>
        outlook.miss === null ? outlook : { ...outlook, miss: { ...outlook.miss, again } },
      ),
    }).misses.flatMap(({ alternatives }) => alternatives.map(({ worth }) => worth));
  const own = ["That is the plan.", "By judgement worth $70."];
  expect(worths(null)).toEqual([
    "That is the plan. Worth $152.",
    "Worth $124.",
    own[0],
    "Worth $130.",
    own[1],
  ]);
  expect(worths(40)).toEqual([
    "That is the plan. Worth $152, up to $40 of it by a later cut, by judgement.",
    "Worth $124, the later cut counted.",
    own[0],
    "Worth $130, up to $40 of it by a later cut, by judgement.",
    own[1],
  ]);
});

test("paper tells what the plan does, screens every way", () => {
  const page = weekHtml(sample());
  const ways = [...page.matchAll(/<span class="(way[^"]*)"><span class="paper">([^<]*)/gu)].map((each) => [
    each[1],
    each[2]!.replaceAll("\u00A0", " "),
  ]);
  expect(ways).toEqual([
    ["way", "Cut Mon Apr 20, keep cold 4 days."],
    ["way screen", "Pick Fri Apr 24 as braising greens."],
    ["way", "Leave it uncut."],
    ["way screen", "Pick Wed Apr 29."],
    ["way screen", "Clear it and sow anew."],
  ]);
});
