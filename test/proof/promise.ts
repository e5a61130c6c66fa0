// How often the pounds called safe to offer were there, over many weeks as they might go in the measured weather of two cities.
// Fails where they were there less often, or oftener, than four times in five by more than a little.
// node test/proof/run.mjs promise [weeks of each kind of farm] [seed]

import { toPounds } from "../../src/index.ts";
import { shareKept, weeksKept } from "./keptShare.ts";
import type { Kept } from "./trueWeek.ts";

const [count = 300, seed = 1] = process.argv.slice(2).map(Number);

/** What the share kept may be. */
const [LEAST, MOST] = [0.76, 0.86];

type Weeks = readonly (readonly Kept[])[];

const percent = (share: number): string => (Number.isNaN(share) ? "-" : (100 * share).toFixed(1));
const ratio = (weeks: Weeks, of: (kept: Kept) => number): string => {
  const promised = weeks.flat().filter(({ safe }) => safe > 0);
  const sum = (weight: (kept: Kept) => number): number =>
    promised.reduce((total, each) => total + weight(each), 0);
  return promised.length === 0 ? "-" : (sum(({ safe }) => safe) / sum(of)).toFixed(2);
};
const line = (cells: readonly string[]): void =>
  console.log(cells.map((cell, i) => (i === 0 ? cell.padEnd(26) : cell.padStart(9))).join(""));

/** Half pounds, down: as the list shows them. */
const shown = ({ safe }: Kept): number => {
  const halves = Math.floor(2 * toPounds(safe as never));
  return (safe * halves) / (2 * toPounds(safe as never));
};

function row(name: string, weeks: Weeks, keep: (kept: Kept) => boolean = () => true): void {
  const own = weeks.map((week) => week.filter(keep));
  const { promises, kept, binomial, byWeek } = shareKept(own, ({ safe }) => safe);
  const may = shareKept(own, ({ mayCome }) => mayCome);
  const down = shareKept(own, shown);
  line([
    name,
    String(promises),
    percent(kept / promises),
    percent(binomial),
    percent(byWeek),
    percent(down.kept / down.promises),
    ratio(own, ({ median }) => median),
    ratio(own, ({ came }) => came),
    percent(may.kept / may.promises),
  ]);
}

const example = weeksKept("example", count, seed);
const random = weeksKept("random", count, seed);
const all = [...example, ...random];

console.log(`${count} weeks of the example's beds and cloth and ${count} of random farms, 2012 to 2015.`);
console.log(
  "Promises of more than nothing; how often the pounds were there [%], with half of the 95 % range by the binomial and with a",
);
console.log(
  "week's promises taken together; the same rounded down to half pounds; pounds safe over the middle case and over what came;",
);
console.log("how often what may come was reached [%].");
console.log("");
line(["", "promises", "kept %", "±", "± weeks", "shown %", "/ middle", "/ came", "may come"]);
row("all", all);
row("the example's farm", example);
row("random farms", random);
row("mixes", all, ({ mix }) => mix);
row("one crop", all, ({ mix }) => !mix);
const daysAhead = [...new Set(all.flat().map(({ ahead }) => ahead))].sort((a, b) => a - b);
for (const days of daysAhead) row(`sold in ${days} days`, all, ({ ahead }) => ahead === days);
const products = [...new Set(all.flat().map(({ product }) => product))].sort();
for (const id of products) row(id, all, ({ product }) => product === id);
const nothing = all.flat().filter(({ safe, came }) => safe === 0 && came > 0);
console.log("");
console.log(
  `Of ${all.flat().filter(({ came }) => came > 0).length} products that came on a day, ${nothing.length} had nothing safe.`,
);

const { promises, kept } = shareKept(all, ({ safe }) => safe);
if (!(kept / promises >= LEAST && kept / promises <= MOST)) process.exitCode = 1;
