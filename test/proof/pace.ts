// A tunnel-year of hourly pace under one cover, climate and growth, as a ratio to a plain loop that evaluates one polynomial of
// the same hours.

import { climate, lyingIn } from "../../src/cover/index.ts";
import { catalogue } from "../../src/farm/index.ts";
import { accumulate } from "../../src/growth/index.ts";
import { groundIn } from "./sowings.ts";

const ROUNDS = 200;
const { crops, covers, settings } = catalogue();
const lettuce = crops.get("lettuce-mix")!;
const { weather, mornings } = groundIn("Seattle", [], ["2013"]);
const hours = weather.temperature;
const lying = lyingIn([{ cover: "row-cover-19", state: "on" }], "day", covers);
const stretches = [{ from: 0, to: hours.length, lying }];
const under = climate(weather, stretches, settings);

/** Horner, of the fifth degree: about what a smooth response to temperature costs. */
function polynomial(): number {
  let sum = 0;
  for (let i = 0; i < hours.length; i++) {
    const t = hours[i]!;
    sum += ((((1e-7 * t - 2e-5) * t + 1e-4) * t + 0.01) * t + 0.3) * t - 1;
  }
  return sum;
}

/** Median of many. [µs] */
function microseconds(work: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const begun = process.hrtime.bigint();
    work();
    return Number(process.hrtime.bigint() - begun) / 1000;
  });
  return times.sort((a, b) => a - b)[ROUNDS / 2]!;
}

const CASES = [
  { name: "polynomial", work: polynomial, target: null },
  { name: "pace", work: () => accumulate(lettuce, under, mornings, settings).pace, target: 12 },
  {
    name: "climate and pace",
    work: () => accumulate(lettuce, climate(weather, stretches, settings), mornings, settings).pace,
    target: 12,
  },
] as const;

// Everything is warm before anything is timed.
for (const { work } of CASES) microseconds(work);
const plain = microseconds(polynomial);
process.stdout.write(`${hours.length} hours           median   ratio   target\n`);
for (const { name, work, target } of CASES) {
  const time = microseconds(work);
  const ratio = (time / plain).toFixed(1).padStart(7);
  process.stdout.write(
    `${name.padEnd(20)} ${time.toFixed(0).padStart(5)} µs ${ratio} ${target === null ? "" : `at most ${target}`}\n`,
  );
}
