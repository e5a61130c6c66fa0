import { loadSolver } from "../../src/cli/solver.ts";
import { planTogether } from "../../src/decide/index.ts";
import { counted, byPrices, unchanged } from "../decide/compared.ts";
import { randomFarm } from "../decide/randomFarm.ts";
const solver = await loadSolver();
const [from, to] = [Number(process.argv[2] ?? 1), Number(process.argv[3] ?? 5)];
for (let seed = from; seed <= to; seed++) {
  const problem = randomFarm(seed, { tunnels: [10, 40], walks: [14, 14], lays: [4, 6], successions: [1, 2], outlets: 4, changesPerWeek: [1, 3] });
  let t = performance.now();
  const lap = () => { const n = performance.now(); const d = (n - t).toFixed(0); t = n; return d; };
  const joint = planTogether(problem, solver);
  const tj = lap();
  const c = counted(problem, joint, solver)!;
  const ref = byPrices(problem, joint, c, 0.005, solver);
  const tr = lap();
  const no = unchanged(problem, solver);
  const p1 = problem.tunnels[0]!.problem;
  console.log(seed, problem.tunnels.length, "R", p1.changesPerWeek, "worth", c.worth.toFixed(2), "breaches", c.breaches.toFixed(2), "no", no.worth.toFixed(2), no.breaches.toFixed(2), "gap", (ref.best - c.value).toExponential(2), ((ref.best - c.value) / Math.abs(c.worth) * 100).toFixed(4)+"%", "linear", ((ref.linear - c.value) / Math.abs(c.worth) * 100).toFixed(4)+"%", ref.whole, "own bound", (joint.bound - joint.worth).toFixed(3), joint.proved, joint.weighed.length, [...ref.binds].join(), "ms", tj, tr, lap());
}
