import { evaluate, sceneOf } from "../../src/decide/index.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "../decide/smallFarm.ts";
import { planAll, week } from "../week.ts";

const short = tunnel("18 m", 18),
  long = tunnel("30 m", 30);
const cut = bed("lettuce-mix", short),
  young = bed("lettuce-mix", long);
const inp = input(
  {
    tunnels: [short, long],
    successions: [cut, young],
    pieces: [piece("32 m", "row-cover-19", 32)],
    notes: [leaf(cut, 10), leaf(young, 3.5)],
  },
  clear([4, 14], [-2, 12], [-2, 12], [4, 14], [4, 14]),
);
const scene = sceneOf(inp).scene!;
const plan = planAll(scene);
const p = plan.plans[1]!;
console.log(
  p.problem.settings.map((s) => s.map((x) => x.cover + ":" + x.state).join("+") || "bare"),
  p.choice,
  p.chosen.parts,
  p.chosen.successions.map((s) => [
    s.outlet?.fate.kind,
    s.outlet?.interval,
    s.worth.toFixed(2),
    s.timing.toFixed(2),
    s.damage.toFixed(2),
  ]),
  plan.joint.worth,
  plan.joint.orders,
);
const t = p.problem.successions[0]!;
console.log(
  "mass",
  t.mass,
  "price",
  t.price,
  "regrown",
  t.regrown,
  "cutting",
  t.cutting,
  t.outlets.map((o) => [o.fate.kind, o.interval, o.share.toFixed(2), o.pays]),
);
const S = p.problem.settings.length;
for (let s = 0; s < S; s++)
  console.log(
    s,
    Array.from({ length: p.problem.intervals }, (_, i) => t.safe[i * S + s]!.toFixed(2)).join(" "),
  );
p.problem.lays.forEach((l, k) => {
  const e = evaluate(p.problem, new Array(p.problem.intervals).fill(k));
  console.log("all", k, l.setting, e.worth.toFixed(2), e.parts);
});

import { ALONE, searcher } from "../../src/decide/index.ts";

const lays = [
  [0, 1, 1, 1, 0, 0, 0, 0, 0, 0],
  [0, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  [0, 1, 0, 1, 0, 0, 0, 0, 0, 0],
  [1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  [0, 3, 3, 3, 0, 0, 0, 0, 0, 0],
  [0, 3, 3, 3, 3, 3, 3, 3, 3, 3],
];
for (const l of lays) {
  const e = evaluate(p.problem, l);
  console.log(l.join(""), e.gravity, e.breaches.join(), e.worth.toFixed(2), JSON.stringify(e.parts));
}
const se = searcher(p.problem);
let b = -Infinity;
let bb: any;
console.log(
  se.search(
    ALONE(p.problem, 1e4),
    () => b,
    (f) => {
      b = f.worth;
      bb = f;
    },
  ),
  bb,
);
console.log(
  p.problem.changesPerWeek,
  p.problem.week.join(),
  p.problem.lays.map((l) => l.setting + ":" + l.taken.map((t) => t.piece?.id)),
);
