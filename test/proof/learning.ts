// What learning is worth: calibration of the model by itself, dates told seven days ahead, and covers told from ten pairs.

import { catalogue } from "../../src/farm/index.ts";
import { calibration, plainSettings, type Ranks } from "./calibration.ts";
import { coverTrials } from "./coverTrials.ts";
import { changeOf, changeOff, type DateScores, LEAD_CROPS, leadDates } from "./leadDates.ts";

const { settings } = catalogue();
const say = (...lines: readonly string[]): void => void process.stdout.write(`${lines.join("\n")}\n`);

const FARMS = 2000;

function ranksTable(heading: string, ranks: readonly Ranks[]): void {
  say(heading);
  for (const { what, chiSquare, p, mean, spread } of ranks)
    say(
      `  ${what.padEnd(18)} χ² ${chiSquare.toFixed(1).padStart(6)} of 19, p ${p.toFixed(3)}; mean ${mean.toFixed(3)} (0.500), spread ${spread.toFixed(3)} (0.289)`,
    );
}

const OFF = [-1, 0, 1, null] as const;

const percent = (change: number): string => `${change > 0 ? "+" : ""}${(100 * change).toFixed(0)} %`;

const scored = ({ error, crps, width }: DateScores): string =>
  `error ${error.toFixed(2)} d, CRPS ${crps.toFixed(2)}, range ${width.toFixed(1)} d`;

/** Prints it all; false when a figure misses what is asked of it. */
export function report(farms: number): boolean {
  let held = true;
  say("SIMULATION-BASED CALIBRATION (Talts and others 2018, arXiv:1804.06788)");
  const plain = calibration(farms, 1, plainSettings());
  ranksTable(`${farms} farms, floor, drift and weighing down off: every rank alike`, plain);
  held &&= plain.every(({ p }) => p > 0.001);
  ranksTable("the same, all of them on: how far they move it", calibration(farms, 1, settings));
  say("", "DATES OF SALAD SIZE, TOLD SEVEN DAYS AHEAD, BEFORE AND AFTER FIVE CUTS OF THE CROP");
  for (const crop of LEAD_CROPS) {
    const told = new Map(OFF.map((off) => [off, leadDates(crop, off, farms, 3, settings)]));
    for (const [off, { before, after, pace }] of told) {
      say(
        `${crop.id}, ${off === null ? "farms as they come" : off === 0 ? "the catalogue is right" : `the farm ${off > 0 ? "slower" : "faster"} by one spread`}: ${percent(after.error / before.error - 1)}`,
        `  before     ${scored(before)}`,
        `  after      ${scored(after)}`,
        `  last week  ${scored(pace)}`,
      );
    }
    const [off, right] = [changeOff(told), changeOf(told.get(0)!)];
    const passed = off <= -1 / 3 && right <= 0.05;
    held &&= passed;
    say(`  off by one spread either way ${percent(off)}, right ${percent(right)}${passed ? "" : "  MISSED"}`);
  }
  say("", "COVERS FROM TEN MEASURED PAIRS");
  for (const { what, truth, low, high, before, inside, seeds } of coverTrials(farms)) {
    const narrow = (high - low) / before;
    held &&= narrow <= 0.5;
    say(
      `${what}: truth ${truth}, first farm's range ${low.toFixed(2)} to ${high.toFixed(2)}, ${(100 * narrow).toFixed(0)} % as wide as before; the truth inside on ${inside} of ${seeds} farms`,
    );
  }
  return held;
}

if (process.argv[1]?.endsWith("learning.mjs")) process.exitCode = report(FARMS) ? 0 : 1;
