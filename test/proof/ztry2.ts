import { loadSolver } from "../../src/cli/solver.ts";
import { planTogether } from "../../src/decide/index.ts";
import { counter } from "../decide/bruteForce.ts";
import { everyWay, wayOf } from "../decide/everyWay.ts";
import { sharedOf } from "../decide/ownShared.ts";
import { ownProgram, worthAt } from "../decide/ownProgram.ts";
import { randomFarm } from "../decide/randomFarm.ts";
const solver = await loadSolver();
const [from, to] = [Number(process.argv[2] ?? 1), Number(process.argv[3] ?? 5)];
for (let seed = from; seed <= to; seed++) {
  const problem = randomFarm(seed, { tunnels: [10, 14], walks: [8, 8], lays: [4, 4], successions: [1, 2], outlets: 3, changesPerWeek: [1, 2] });
  let t = performance.now();
  const lap = () => { const n = performance.now(); const d = (n - t).toFixed(0); t = n; return d; };
  const joint = planTogether(problem, solver);
  const tj = lap();
  const shared = sharedOf(problem);
  const chosen = joint.tunnels.map(({ schedule, cuts }, i) => shared.use(i, wayOf(problem.tunnels[i]!.problem, schedule, cuts)!));
  const mine = counter(problem, shared, solver).count(chosen);
  const value = mine.worth - shared.breach * mine.breaches;
  const all = problem.tunnels.map(({ problem: each }, i) => everyWay(each).map((way) => shared.use(i, way)));
  const te = lap();
  const big = ownProgram(problem, shared, solver);
  all.forEach((uses, i) => { for (const use of uses) big.add(i, use); });
  const tb = lap();
  const r = big.relaxed();
  const tr = lap();
  const gap = r.objective - value;
  const small = ownProgram(problem, shared, solver);
  all.forEach((uses, i) => { for (const use of uses) if (chosen[i]!.way.course.schedule.join() === use.way.course.schedule.join() || worthAt(use, r.needs, shared.breach) > r.tunnels[i]! - gap - 1e-6) small.add(i, use); });
  const w = small.whole(1e6);
  const tw = lap();
  let tall = "";
  if (process.argv[4]) { const a = big.whole(1e6); tall = `all ${lap()} ms ${(a.objective - w.objective).toExponential(1)} ${a.proved}`; }
  console.log(seed, problem.tunnels.length, "ways", big.ways, "->", small.ways, "lp-value", gap.toFixed(4), "joint bound-lp", (joint.bound - joint.worth - gap).toExponential(1), "value", value.toFixed(2), mine.breaches.toFixed(2), "best-value", (w.objective - value).toExponential(2), w.proved, "joint", joint.proved, joint.weighed.length, "self", (joint.worth - mine.worth).toExponential(1), "ms: joint", tj, "enum", te, "build", tb, "lp", tr, "whole", tw, tall);
}
