import { loadSolver } from "../../src/cli/solver.ts";
import { planTogether } from "../../src/decide/index.ts";
import { LARGE, randomFarm } from "../decide/randomFarm.ts";
(globalThis as any).DBG = 1;
const solver = await loadSolver();
const c0 = process.cpuUsage();
const problem = randomFarm(Number(process.argv[2]), LARGE);
const j = planTogether(problem, solver);
console.log(process.argv[2], problem.tunnels.length, problem.tunnels[0]!.problem.changesPerWeek, j.worth, j.bound - j.worth, j.proved, j.weighed.length, process.cpuUsage(c0).user / 1000);
