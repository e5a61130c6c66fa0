// Logs written in many ways, half of them damaged, read back: node test/proof/run.mjs fuzz [FILES] [FIRST SEED].

import { tried, type Verdict } from "../logs/fuzz.ts";

const [files = 200_000, first = 1] = process.argv.slice(2).map(Number);
const TOLD = 20;

interface Tally {
  exact: number;
  "in part": number;
  refused: number;
  byLine: number;
  faults: number;
}

const tallies = new Map<string, Tally>();
const faults: Verdict[] = [];
const begun = performance.now();
for (let seed = first; seed < first + files; seed++) {
  const verdict = await tried(seed);
  const { what, fate, byLine, fault } = verdict;
  const tally = tallies.get(what) ?? { exact: 0, "in part": 0, refused: 0, byLine: 0, faults: 0 };
  tallies.set(what, tally);
  tally[fate] += 1;
  if (fate === "refused" && byLine) tally.byLine += 1;
  if (fault === null) continue;
  tally.faults += 1;
  if (faults.length < TOLD) faults.push(verdict);
}
const seconds = (performance.now() - begun) / 1000;

const row = (cells: readonly (string | number)[]): string =>
  cells.map((cell, i) => (i === 0 ? String(cell).padEnd(32) : String(cell).padStart(9))).join("");
console.log(row(["done to the file", "files", "exact", "in part", "refused", "by line", "faults"]));
for (const [what, tally] of [...tallies].sort()) {
  const count = tally.exact + tally["in part"] + tally.refused;
  console.log(row([what, count, tally.exact, tally["in part"], tally.refused, tally.byLine, tally.faults]));
}
const wrong = [...tallies.values()].reduce((sum, tally) => sum + tally.faults, 0);
for (const { seed, what, fault, text } of faults)
  console.log(
    `\nseed ${seed}, ${what}: ${fault}\n${text
      .split(/\r\n?|\n/u)
      .slice(0, 8)
      .join("\n")}`,
  );
console.log(`\n${files} files in ${seconds.toFixed(0)} s, ${wrong} faults.`);
process.exitCode = wrong === 0 ? 0 : 1;
