// Planning a farm's tunnels together, as a ratio to the solver alone choosing among every schedule with its cuts. The time to
// write those down is not counted.

import { loadSolver } from "../../src/cli/solver.ts";
import { planTogether } from "../../src/decide/index.ts";
import { median } from "../../src/farm/index.ts";
import { counted } from "../decide/compared.ts";
import { everyWay } from "../decide/everyWay.ts";
import { ownProgram } from "../decide/ownProgram.ts";
import { sharedOf } from "../decide/ownShared.ts";
import { randomFarm, type Size } from "../decide/randomFarm.ts";

const FARMS = Number(process.argv[2] ?? 12);
const NODES = 100_000;
const MEGABYTE = 2 ** 20;
const SIZE: Size = {
  tunnels: [11, 13],
  walks: [8, 8],
  lays: [4, 4],
  successions: [2, 2],
  outlets: 3,
  changesPerWeek: [2, 2],
};
const solver = await loadSolver();

function milliseconds<Answer>(work: () => Answer): readonly [number, Answer] {
  const begun = performance.now();
  const answer = work();
  return [performance.now() - begun, answer];
}

const ratios: number[] = [];
const times: number[] = [];
let most = 0;
process.stdout.write("farm   columns   together   every column   ratio   memory\n");
for (let seed = 1; seed <= FARMS; seed++) {
  const problem = randomFarm(seed, SIZE);
  const [mine, joint] = milliseconds(() => planTogether(problem, solver));
  const { rss } = process.memoryUsage();
  const shared = sharedOf(problem);
  const program = ownProgram(problem, shared, solver);
  problem.tunnels.forEach(({ problem: each }, t) => {
    for (const way of everyWay(each)) program.add(t, shared.use(t, way));
  });
  const { ways } = program;
  const [theirs, { objective, proved }] = milliseconds(() => program.whole(NODES));
  program.close();
  const { value, worth } = counted(problem, joint, solver)!;
  if (proved && objective - value > 1e-4 * Math.max(1, Math.abs(worth))) {
    process.stdout.write(`farm ${seed}: ${value} together, ${objective} by every column\n`);
    process.exitCode = 1;
  }
  ratios.push(theirs / mine);
  times.push(mine);
  most = Math.max(most, rss);
  process.stdout.write(
    `${String(seed).padStart(4)} ${String(ways).padStart(9)} ${mine.toFixed(0).padStart(7)} ms ${theirs.toFixed(0).padStart(11)} ms ${(theirs / mine).toFixed(1).padStart(7)} ${(rss / MEGABYTE).toFixed(0).padStart(5)} MB${proved ? "" : "   not proved"}\n`,
  );
}
process.stdout.write(
  `planned together: median ${median(times).toFixed(0)} ms; every column takes ${median(ratios).toFixed(1)} times as long in the median (aim at least 20), ${Math.min(...ratios).toFixed(1)} at worst; up to ${(most / MEGABYTE).toFixed(0)} MB\n`,
);
