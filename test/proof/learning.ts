// What learning is worth: calibration of the model by itself, dates told seven days ahead, and covers told from ten pairs.

import { catalogue } from "../../src/farm/index.ts";
import { calibrationTold } from "./calibration.ts";
import { coverTrials } from "./coverTrials.ts";
import { changeOf, changeOff, type DateScores, LEAD_CROPS, leadDates } from "./leadDates.ts";

const { settings } = catalogue();
const say = (...lines: readonly string[]): void => void process.stdout.write(`${lines.join("\n")}\n`);

const FARMS = 2000;

const OFF = [-1, 0, 1, null] as const;

const percent = (change: number): string => `${change > 0 ? "+" : ""}${(100 * change).toFixed(0)} %`;

const scored = ({ error, crps, width }: DateScores): string =>
  `error ${error.toFixed(2)} d, CRPS ${crps.toFixed(2)}, range ${width.toFixed(1)} d`;

/** Prints it all; false when a figure misses what is asked of it. */
export function report(farms: number): boolean {
  let held = true;
  say("SIMULATION-BASED CALIBRATION");
  const told = calibrationTold(farms);
  say(...told.lines);
  held &&= told.uniform;
  say("", "DATES OF SALAD SIZE, TOLD SEVEN DAYS AHEAD, BEFORE AND AFTER FIVE CUTS OF THE CROP");
  for (const crop of LEAD_CROPS) {
    const dates = new Map(OFF.map((off) => [off, leadDates(crop, off, farms, 3, settings)]));
    for (const [off, { before, after, pace }] of dates) {
      say(
        `${crop.id}, ${off === null ? "farms as they come" : off === 0 ? "the catalogue is right" : `the farm ${off > 0 ? "slower" : "faster"} by one spread`}: ${percent(after.error / before.error - 1)}`,
        `  before     ${scored(before)}`,
        `  after      ${scored(after)}`,
        `  last week  ${scored(pace)}`,
      );
    }
    const [off, right] = [changeOff(dates), changeOf(dates.get(0)!)];
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
