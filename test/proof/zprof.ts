import { loadSolver } from "../../src/cli/solver.ts";
import { ALONE, sceneOf, searcher, standing, tunnelNow, tunnelProblem } from "../../src/decide/index.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

const input = mondayInput(exampleFarm(), "New York", "2014-03-10" as any);
let t = performance.now();
const lap = (s: string) => {
  const n = performance.now();
  console.log(s, (n - t).toFixed(0));
  t = n;
};
const { scene } = sceneOf(input);
lap("scene");
const { farm } = scene!;
for (const tunnel of farm.tunnels) {
  const at = tunnelNow(scene!, tunnel);
  const st = farm.successions.filter((s) => s.tunnel === tunnel.id).map((s) => standing(scene!, s, at));
  lap("standing");
  const p = tunnelProblem(scene!, at, st);
  lap("problem");
  const s = searcher(p);
  lap("searcher");
  const prices = ALONE(p, 1e4);
  let best = -Infinity,
    offers = 0;
  const r = s.search(
    prices,
    () => best,
    (f) => {
      offers++;
      best = Math.max(best, f.worth);
    },
  );
  lap(
    `${tunnel.id} S=${p.settings.length} L=${p.lays.length} J=${p.successions.length} outlets=${p.successions.map((x) => x.outlets.length)} nodes=${r.nodes} offers=${offers} best=${best.toFixed(2)}`,
  );
  const r2 = s.search(
    prices,
    () => best - 1e-6,
    (f) => {
      offers++;
    },
  );
  lap(`again nodes=${r2.nodes}`);
}
process.exit(0);
for (const tunnel of farm.tunnels.slice(0, 4)) {
  const at = tunnelNow(scene!, tunnel);
  const st = farm.successions.filter((s) => s.tunnel === tunnel.id).map((s) => standing(scene!, s, at));
  const p = tunnelProblem(scene!, at, st);
  const tb = p.successions[0]!;
  console.log(
    tunnel.id,
    at.now.map((x) => x.cover + x.state).join(),
    tb.standing.crop.id,
    "mass",
    tb.mass.toFixed(1),
    "price",
    tb.price.toFixed(1),
    "regrown",
    tb.regrown.toFixed(1),
    "minute",
    p.minute,
  );
  for (const o of tb.outlets)
    console.log("  outlet", o.interval, o.fate.kind, "share", o.share.toFixed(2), "days", o.days.toFixed(0));
  p.settings.forEach((s, k) => {
    let e = 0,
      l = 0,
      h = 0,
      c = 0;
    for (let i = 0; i < p.intervals; i++) {
      e += tb.pace[i * p.settings.length + k]!;
      l += tb.lightIn[i * p.settings.length + k]!;
      h += tb.heat[i * p.settings.length + k]!;
      c += tb.safe[i * p.settings.length + k]!;
    }
    console.log(
      "   ",
      s.map((x) => x.cover + ":" + x.state).join("+") || "bare",
      e.toFixed(1),
      l.toFixed(0),
      h.toFixed(1),
      c.toFixed(3),
    );
  });
}
