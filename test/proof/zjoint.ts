import { readFileSync } from "node:fs";
import { loadSolver } from "../../src/cli/solver.ts";
import { sceneOf } from "../../src/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";

const input = mondayInput(
  exampleFarm(),
  (process.argv[2] ?? "New York") as any,
  (process.argv[3] ?? "2012-04-23") as any,
);
const o = week(input, await loadSolver());
console.log(o.together);
