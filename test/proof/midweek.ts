// What keeping to Monday's sheet saves and costs when a week is planned anew on Wednesday, over random farms in the measured
// weather of two cities with the forecast turned between. Fails where a plan gave up more worth than the price of the
// instructions it saved.
// node test/proof/run.mjs midweek [farms] [seed]

import { midweek, tooCalm } from "./midweekTrials.ts";

const [count = 100, seed = 1] = process.argv.slice(2).map(Number);

const weeks = Array.from({ length: count }, (_, i) => ({ seed: seed + i, ...midweek(seed + i) }));
const sum = (of: (week: (typeof weeks)[number]) => number): number =>
  weeks.reduce((total, week) => total + of(week), 0);
const number = (value: number): string => value.toFixed(2);

const saved = sum(({ scratch, calm }) => scratch - calm);
const lost = sum((week) => week.lost);
console.log(`${count} farms planned on a Monday and again on Wednesday, 2012 to 2015.`);
console.log(`Instructions left on Monday's sheets: ${sum(({ walks }) => walks)}, a tunnel and a walk each.`);
console.log(`  changed by a plan from scratch: ${sum(({ scratch }) => scratch)}`);
console.log(`  changed by the calm plan:       ${sum(({ calm }) => calm)}`);
console.log(
  `Worth given up for that: $${number(lost)}, $${number(saved === 0 ? 0 : lost / saved)} an instruction saved; the price of one is $${number(weeks[0]?.price ?? 0)}.`,
);
console.log(
  `Most given up on one farm: $${number(Math.max(0, ...weeks.map((week) => week.lost)))}; nothing on ${weeks.filter((week) => week.lost < 1e-6).length} farms.`,
);
console.log(
  `Not proved best: ${weeks.filter(({ open }) => open > 0).length}; limits give way otherwise: ${weeks.filter(({ otherLimits }) => otherLimits).length}.`,
);
const wrong = weeks.filter(tooCalm);
for (const week of wrong) console.log(`FAULT ${JSON.stringify(week)}`);
console.log(`${wrong.length} farms lost more than the price of the instructions saved`);
if (wrong.length > 0) process.exitCode = 1;
