// Loading what the store holds for a plan, as a ratio to csv-parse alone on one year's file, with its line numbers.

import { createReadStream, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse";
import { readSensors } from "../../src/cli/store.ts";
import { type StoredHour, storeName, writeStore } from "../../src/folder/index.ts";
import { instant, utcHour } from "../../src/quantity/index.ts";

const ROUNDS = 9;
const HOUR = 3_600_000;
const YEARS = Array.from({ length: 10 }, (_, i) => 2016 + i);

/** A year of quarter-hours, summed up. */
function hoursOf(year: number): readonly StoredHour[] {
  const first = Date.UTC(year, 0, 1) / HOUR;
  const count = Date.UTC(year + 1, 0, 1) / HOUR - first;
  return Array.from({ length: count }, (_, i) => {
    const mean = Math.round(10_000 + 9000 * Math.sin(i / 1394) + 5000 * Math.sin((i * Math.PI) / 12)) / 1000;
    const [lowest, highest] = [mean - 0.437, mean + 0.512].map((each) => Math.round(each * 1000) / 1000);
    const sum = Math.round(mean * 4000) / 1000;
    return {
      hour: utcHour(first + i),
      sum,
      count: 4,
      lowest: lowest!,
      highest: highest!,
      origin: "logger.csv",
    };
  });
}

function farm(sensors: readonly string[], years: readonly number[]): string {
  const dir = mkdtempSync(join(tmpdir(), "leafpace-stored-"));
  mkdirSync(join(dir, "temperature"));
  for (const year of years) {
    const hours = hoursOf(year);
    for (const sensor of sensors)
      writeFileSync(join(dir, "temperature", storeName(sensor, year)), writeStore(sensor, hours));
  }
  return dir;
}

const one = farm(["outside"], [2025]);
const all = farm(["outside", "creek-1", "creek-2"], YEARS);
const now = instant(Date.UTC(2026, 3, 20));

async function parsed(): Promise<number> {
  let rows = 0;
  const parser = createReadStream(join(one, "temperature", storeName("outside", 2025))).pipe(
    parse({ info: true, relax_column_count: true }),
  );
  for await (const _ of parser) rows += 1;
  return rows;
}

async function loaded(dir: string): Promise<number> {
  const { sensors, problems } = await readSensors(dir, now);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  return sensors.reduce((sum, { hours }) => sum + hours.length, 0);
}

async function milliseconds(work: () => Promise<number>): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

const CASES = [
  { name: "csv-parse, one year", work: parsed, target: null },
  { name: "one year loaded", work: () => loaded(one), target: 1.5 },
  { name: "ten years by three sensors", work: () => loaded(all), target: 12 },
] as const;

// Taken in turns, so that a machine that slows down slows all of them.
const times = CASES.map((): number[] => []);
for (let round = 0; round < ROUNDS; round++)
  for (const [i, { work }] of CASES.entries()) times[i]!.push(await milliseconds(work));
const medians = times.map((each) => each.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]!);
process.stdout.write("store                         median   ratio   target\n");
for (const [i, { name, target }] of CASES.entries()) {
  const ratio = medians[i]! / medians[0]!;
  process.stdout.write(
    `${name.padEnd(27)} ${medians[i]!.toFixed(0).padStart(6)} ms ${ratio.toFixed(2).padStart(7)} ${target === null ? "" : `at most ${target}`}\n`,
  );
  if (target !== null && ratio > target) process.exitCode = 1;
}
for (const dir of [one, all]) rmSync(dir, { recursive: true });
