// How long the command takes to start, as a ratio to a bare `node -e 0` on the same machine in the same run.

import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const main = join(root, "dist", "main.js");
const farm = join(root, "examples", "hollow-creek");

const CASES = [
  { name: "node -e 0", parameters: ["-e", "0"], rounds: 40, target: null },
  { name: "leafpace --version", parameters: [main, "--version"], rounds: 40, target: 1.3 },
  { name: "leafpace check", parameters: [main, "--farm", farm, "check"], rounds: 15, target: null },
  {
    name: "leafpace week",
    parameters: [main, "--farm", farm, "week", "--on", "2026-04-20"],
    rounds: 15,
    target: 6,
  },
];

const milliseconds = (parameters) => {
  const begun = process.hrtime.bigint();
  const { status } = spawnSync(process.execPath, parameters, { stdio: "ignore" });
  if (status !== 0) throw new Error(`${parameters.join(" ")} ended with ${status}`);
  return Number(process.hrtime.bigint() - begun) / 1e6;
};

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

let bare = 1;
console.log("command               median   ratio   target");
for (const { name, parameters, rounds, target } of CASES) {
  const time = median(Array.from({ length: rounds }, () => milliseconds(parameters)));
  if (target === null && name.startsWith("node")) bare = time;
  const ratio = (time / bare).toFixed(2);
  console.log(
    `${name.padEnd(20)} ${time.toFixed(0).padStart(5)} ms ${ratio.padStart(7)} ${target === null ? "" : `at most ${target}`}`,
  );
}
