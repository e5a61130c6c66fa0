import { loadSolver } from "../../src/cli/solver.ts";
import { planTogether, evaluate } from "../../src/decide/index.ts";
import { bruteForce, counter } from "../decide/bruteForce.ts";
import { everyWay, wayOf } from "../decide/everyWay.ts";
import { sharedOf } from "../decide/ownShared.ts";
import { randomFarm, SMALL } from "../decide/randomFarm.ts";
const solver = await loadSolver();
const [from, to] = [Number(process.argv[2] ?? 1), Number(process.argv[3] ?? 20)];
let n = 0;
for (let seed = from; seed <= to; seed++) {
  const problem = randomFarm(seed, SMALL);
  let t = performance.now();
  let brute = null;
  try { brute = bruteForce(problem, solver, 1e6); } catch (e) { console.log(seed, "brute", String(e).slice(0,100)); continue; }
  const tb = performance.now() - t; t = performance.now();
  if (brute === null) { console.log(seed, "too many"); continue; }
  let joint; try { joint = planTogether(problem, solver); } catch (e) { console.log(seed, "joint", String(e).slice(0, 200)); continue; }
  const tj = performance.now() - t;
  const shared = sharedOf(problem);
  const ways = joint.tunnels.map(({ schedule, cuts }, i) => wayOf(problem.tunnels[i]!.problem, schedule, cuts));
  const w = ways.includes(undefined) ? null : counter(problem, shared, solver).count(ways.map((way, i) => shared.use(i, way!)));
  const diff = w === null ? "NOT ALLOWED" : ((w.worth - shared.breach * w.breaches) - (brute.worth - shared.breach * brute.breaches)).toExponential(1);
  const self = w === null ? "" : (w.worth - joint.worth).toExponential(1);
  console.log(seed, "comb", brute.combinations, "solved", brute.solved, "brute", brute.worth.toFixed(4), brute.breaches.toFixed(3), "joint", joint.worth.toFixed(4), "diff", diff, "self", self, joint.proved, joint.overrun.join(), tb.toFixed(0), tj.toFixed(0), "ms");
}
