// How long a log of a million rows takes to be understood and summed into hours, as a ratio to csv-parse alone walking
// the same file; and how much memory short and long logs take. After a build: node test/bench/logs.mjs.

import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const main = join(root, "dist", "main.js");
const folder = mkdtempSync(join(tmpdir(), "leafpace-bench-"));

const FARM = `name: Little Field
units: US
place: { latitude: 44.12, longitude: -72.84, elevation: 620 ft, zone: America/New_York }
markets:
  - { id: friday, day: Friday, picks: [{ time: "6:00" }] }
tunnels:
  - { id: T1, length: 50 ft, hoops: wire }
`;

const two = (value) => String(value).padStart(2, "0");

/** A log with a reading every so many seconds: month first, Fahrenheit, humidity beside it, standard time all year. */
function makeLog(rows, seconds) {
  const path = join(folder, `${rows}-${seconds}.csv`);
  const file = openSync(path, "w");
  let text = "Date/Time,Temp (°F),RH (%)\n";
  for (let i = 0; i < rows; i++) {
    const at = new Date(Date.UTC(2016, 0, 1) + i * seconds * 1000);
    const day = `${two(at.getUTCMonth() + 1)}/${two(at.getUTCDate())}/${at.getUTCFullYear()}`;
    const days = (i * seconds) / 86_400;
    const value = 50 - 15 * Math.cos(2 * Math.PI * days) + 20 * Math.sin(days / 58);
    text += `${day} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())}:${two(at.getUTCSeconds())},${value.toFixed(1)},${60 + (i % 30)}\n`;
    if (text.length > 1e6 || i === rows - 1) {
      writeSync(file, text);
      text = "";
    }
  }
  closeSync(file);
  return path;
}

const REPORT = `data:text/javascript,${encodeURIComponent(
  'process.on("exit",()=>process.stderr.write("\\npeak "+process.resourceUsage().maxRSS))',
)}`;

const WALK = `
import { createReadStream } from "node:fs";
import { parse } from "csv-parse";
let rows = 0;
const parser = createReadStream(process.argv[1]).pipe(parse({ info: true, relax_column_count: true }));
for await (const { record } of parser) rows += record.length > 0 ? 1 : 0;
console.log(rows);
`;

/** Seconds and megabytes of a child. */
function measured(parameters) {
  const begun = process.hrtime.bigint();
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--import", REPORT, ...parameters], {
    cwd: root,
    encoding: "utf8",
  });
  const seconds = Number(process.hrtime.bigint() - begun) / 1e9;
  if (status !== 0) throw new Error(`${parameters.slice(0, 6).join(" ")} ended with ${status}: ${stderr}`);
  return { seconds, megabytes: Number(/peak (\d+)/u.exec(stderr)[1]) / 1024, stdout };
}

const understand = (path) =>
  measured([main, "--farm", folder, "import", path, "--dry-run", "--zone", "Etc/GMT+5"]);
const walk = (path) => measured(["--input-type=module", "-e", WALK, path]);

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const ROUNDS = 5;
const RATIO = 1.5;
const MEGABYTES = 250;
const APART = 1.2;

try {
  writeFileSync(join(folder, "farm.yaml"), FARM);
  const million = makeLog(1_000_000, 60);
  const pairs = Array.from({ length: ROUNDS }, () => [walk(million).seconds, understand(million).seconds]);
  const [alone, whole] = [0, 1].map((which) => median(pairs.map((pair) => pair[which])));
  console.log("a log of 1,000,000 rows      median   ratio   target");
  console.log(`csv-parse alone             ${alone.toFixed(2).padStart(5)} s`);
  console.log(
    `understood and summed       ${whole.toFixed(2).padStart(5)} s   ${(whole / alone).toFixed(2).padStart(5)}   at most ${RATIO}`,
  );
  // The same 579 days, read fifty times as often; and nine and a half years of minutes.
  const [little, much, years] = [
    [100_000, 500],
    [5_000_000, 10],
    [5_000_000, 60],
  ].map(([rows, seconds]) => understand(makeLog(rows, seconds)).megabytes.toFixed(0));
  console.log("\nmemory at its highest                     target");
  console.log(`100,000 rows in 579 days     ${little.padStart(5)} MB     at most ${MEGABYTES} MB`);
  console.log(
    `5,000,000 rows in 579 days   ${much.padStart(5)} MB     at most ${MEGABYTES} MB, ${APART} times the other; ${(much / little).toFixed(2)} times`,
  );
  console.log(`5,000,000 rows in 9½ years   ${years.padStart(5)} MB     at most ${MEGABYTES} MB`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
