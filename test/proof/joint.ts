// The plan of all tunnels together against references that share none of its code for limits, markets or search:
// every plan of small farms, every column of middling ones, bounds by prices for large ones. Parts may be named.

import { loadSolver } from "../../src/cli/solver.ts";
import { type FarmProblem, planTogether } from "../../src/decide/index.ts";
import { median } from "../../src/farm/index.ts";
import { bruteForce } from "../decide/bruteForce.ts";
import {
  allColumns,
  byPrices,
  type Counted,
  counted,
  type Reference,
  unchanged,
} from "../decide/compared.ts";
import { pairsOf } from "../decide/kinder.ts";
import { LARGE, MIDDLE, randomFarm, type Size, SMALL } from "../decide/randomFarm.ts";

const solver = await loadSolver();
const asked = process.argv.slice(2);
const isAsked = (part: string): boolean => asked.length === 0 || asked.includes(part);
const faults: string[] = [];
/** Shares of the farms to try, for a first look. */
const some = (count: number): number => Math.ceil(count * Number(process.env.LEAFPACE_SHARE ?? 1));
const say = (line: string): void => void process.stdout.write(`${line}\n`);
const demand = (met: boolean, what: string): void => {
  if (met) return;
  faults.push(what);
  say(`FAULT ${what}`);
};
const percent = (share: number, digits = 4): string => `${(100 * share).toFixed(digits)} %`;

/** What many farms come to. */
function tally(name: string) {
  const gaps: number[] = [];
  const linear: number[] = [];
  const shares: number[] = [];
  const binds = new Map<string, number>();
  let [differ, bound, whole, proved] = [0, 0, 0, 0];
  return {
    gaps,
    linear,
    /** @param best - Value of the best plan. */
    count(
      seed: number,
      problem: FarmProblem,
      plan: Counted,
      { best, linear: parts, binds: kinds, whole: isWhole }: Reference,
      isProved: boolean,
    ): void {
      const scale = Math.max(1, Math.abs(plan.worth));
      const gap = Math.max(0, best - plan.value) / scale;
      gaps.push(gap);
      linear.push(Math.max(0, parts - plan.value) / scale);
      const none = unchanged(problem, solver);
      // Where both break as little, what is gained by changing is plain money.
      if (Math.abs(none.breaches - plan.breaches) < 1e-6 && best - none.value > 1e-3 * scale)
        shares.push((plan.value - none.value) / (best - none.value));
      if (Math.abs(plan.value - none.value) > 1e-6 * scale) differ += 1;
      if (kinds.size > 0) bound += 1;
      if (isWhole) whole += 1;
      if (isProved) proved += 1;
      for (const kind of kinds) binds.set(kind, (binds.get(kind) ?? 0) + 1);
      if (gap > 1e-6) say(`  ${name} farm ${seed}: ${percent(gap)} of worth below the reference`);
    },
    close(): void {
      const farms = gaps.length;
      say(`${name}: ${farms} farms, ${proved} proved by the plan itself, ${whole} against whole ways`);
      say(
        `  gap of worth: median ${percent(median(gaps))}, worst ${percent(Math.max(...gaps))}, ${gaps.filter((gap) => gap <= 1e-6).length} without any`,
      );
      say(
        `  to the bound in parts: median ${percent(median(linear))}, worst ${percent(Math.max(...linear))}`,
      );
      if (shares.length > 0)
        say(
          `  of the gain over changing nothing (${shares.length} farms where both break as little): median ${percent(median(shares), 2)}, worst ${percent(Math.min(...shares), 2)}`,
        );
      say(
        `  best plan differs from changing nothing: ${differ}; a limit binds: ${bound} (${[...binds].map(([kind, count]) => `${kind} ${count}`).join(", ")})`,
      );
      demand(
        median(shares) >= 0.99 && Math.min(...shares) >= 0.97,
        `${name}: 99 % of the gain in the median, 97 % at worst`,
      );
      demand(
        differ >= 0.8 * farms,
        `${name}: the best plan differs from changing nothing on four farms of five`,
      );
      demand(bound >= 0.8 * farms, `${name}: a limit binds on four farms of five`);
    },
  };
}

/** Farms of a size, one by one. */
function* farms(from: number, count: number, size: Size): Generator<readonly [number, FarmProblem]> {
  for (let seed = from; seed < from + count; seed++) yield [seed, randomFarm(seed, size)];
}

if (isAsked("small")) {
  const MOST = 1_000_000;
  const { count, close } = tally("small");
  let [equal, tried, combinations, solved] = [0, 0, 0, 0];
  for (const [seed, problem] of farms(1, 5000, SMALL)) {
    const brute = bruteForce(problem, solver, MOST);
    if (brute === null) continue;
    tried += 1;
    combinations += brute.combinations;
    solved += brute.solved;
    const joint = planTogether(problem, solver);
    const plan = counted(problem, joint, solver);
    demand(plan !== null, `small farm ${seed}: its plan is not allowed`);
    if (plan !== null) {
      const scale = Math.max(1, Math.abs(brute.worth));
      const best = brute.worth - plan.shared.breach * brute.breaches;
      const same =
        Math.abs(plan.value - best) <= 1e-6 * scale && Math.abs(joint.worth - plan.worth) <= 1e-6 * scale;
      if (same) equal += 1;
      demand(
        same,
        `small farm ${seed}: found ${plan.value} (told ${joint.worth} of ${plan.worth}), best ${best}`,
      );
      count(seed, problem, plan, { ...allColumns(problem, plan, solver), best }, joint.proved);
    }
    if (tried === some(500)) break;
  }
  close();
  say(
    `  ${equal} of ${tried} equal to trying all ${combinations} plans; ${solved} needed their markets solved, prices ruled out the rest`,
  );
}

if (isAsked("middle")) {
  const { count, close, gaps } = tally("middle");
  let columns = 0;
  for (const [seed, problem] of farms(1, some(50), MIDDLE)) {
    const joint = planTogether(problem, solver);
    const plan = counted(problem, joint, solver)!;
    const reference = allColumns(problem, plan, solver);
    columns += reference.ways;
    count(seed, problem, plan, reference, joint.proved);
    demand(
      Math.abs(joint.worth - plan.worth) <= 1e-6 * Math.max(1, Math.abs(plan.worth)),
      `middle farm ${seed}: told ${joint.worth}, is ${plan.worth}`,
    );
  }
  close();
  say(`  ${columns} columns`);
  demand(Math.max(...gaps) <= 1e-4, "middle: within 0.01 % of every column");
}

if (isAsked("large")) {
  const LOOSE = 0.005;
  const { count, close, gaps } = tally("large");
  for (const [seed, problem] of farms(1, some(50), LARGE)) {
    const joint = planTogether(problem, solver);
    const plan = counted(problem, joint, solver)!;
    count(seed, problem, plan, byPrices(problem, joint, plan, LOOSE, solver), joint.proved);
    demand(
      Math.abs(joint.worth - plan.worth) <= 1e-6 * Math.max(1, Math.abs(plan.worth)),
      `large farm ${seed}: told ${joint.worth}, is ${plan.worth}`,
    );
  }
  close();
  demand(median(gaps) <= 1e-3, "large: a median gap of at most 0.1 %");
}

if (isAsked("properties")) {
  const held = new Map<string, number>();
  const size: Size = { ...MIDDLE, tunnels: [4, 6], walks: [5, 6] };
  for (const [seed, problem] of farms(1, some(40), size))
    for (const { name, less, more, same } of pairsOf(problem)) {
      const [one, other] = [less, more].map((each) => counted(each, planTogether(each, solver), solver)!);
      // A breach weighs alike in both, so that they can be compared.
      const breach = other!.shared.breach;
      const gain = other!.worth - one!.worth - breach * (other!.breaches - one!.breaches);
      const scale = Math.max(1, Math.abs(other!.worth));
      const kept = same ? Math.abs(gain) <= 1e-6 * scale : gain >= -1e-6 * scale;
      if (kept) held.set(name, (held.get(name) ?? 0) + 1);
      demand(kept, `farm ${seed}, ${name}: ${gain}`);
    }
  say("properties held on farms:");
  for (const [name, count] of held) say(`  ${name}: ${count}`);
}

say(faults.length === 0 ? "no faults" : `${faults.length} faults`);
if (faults.length > 0) process.exitCode = 1;
