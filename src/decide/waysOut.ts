import type { KeptCut } from "../farm/index.ts";
import { best, outletResults } from "./evaluate.ts";
import { asKept } from "./kept.ts";
import type { Miss, PlannedAround, SuccessionOutlook } from "./outcome.ts";
import { fateOf } from "./outlook.ts";
import type { FarmPlan, Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import { moreThan, planSettled } from "./settled.ts";
import type { Solver } from "./solver.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** A cut whose greens bring less than this share of what the best cut's do is not planned for. [1] judgement */
const WORTH_PLANNING = 0.3;

/** Other cuts of one bed that are planned for at most. judgement */
const MOST_CUTS = 2;

/** Plans shared out among all misses, each of which has one at least: a plan takes as long as the plan itself or less. judgement */
const MOST_PLANS = 12;

const same = (a: KeptCut, b: KeptCut): boolean =>
  a.kind === "uncut" || b.kind === "uncut" ? a.kind === b.kind : a.date === b.date && a.part === b.part;

/**
 * Other cuts than the plan's worth planning for, and none. Cuts are of a kind that are kept cold or fresh, in salad size or not, and
 * before the pick that is missed, at it or after it; of the best kinds, as the schedule at hand has their worth, the best cut. What
 * the grower has settled has no other.
 */
function otherCuts(
  { farm, keep }: Scene,
  { problem, schedule }: Planned,
  table: SuccessionTable,
  own: KeptCut,
  miss: Miss,
): readonly KeptCut[] {
  const { succession } = table.standing;
  if (keep.some((kept) => "succession" in kept && kept.succession === succession.id)) return [];
  const results = outletResults(problem, table, schedule);
  const { worth: most, again: later } = best(results);
  const least = WORTH_PLANNING * (most - later);
  const kinds = new Map<string, KeptCut>();
  const open = results.filter((each) => each.open);
  for (const result of open.sort((a, b) => b.worth - a.worth)) {
    const { outlet, worth, again } = result;
    const greens = worth - again;
    if (outlet === null || greens <= 0 || greens < least) continue;
    const kept = asKept(farm.place.zone, succession, outlet);
    const fate = fateOf(table.standing, table.growing, result);
    if (same(kept, own) || fate.kind === "none") continue;
    const place = outlet.at < miss.pick.at ? "before" : outlet.at > miss.pick.at ? "after" : "at";
    const kind = `${fate.kind} ${fate.as} ${place}`;
    if (!kinds.has(kind)) kinds.set(kind, kept);
  }
  const uncut = asKept(farm.place.zone, succession, null);
  return [...[...kinds.values()].slice(0, MOST_CUTS), ...(same(uncut, own) ? [] : [uncut])];
}

/** The ways out of one miss, each with the farm planned anew around it; the most worth first. */
function waysOut(
  scene: Scene,
  plan: FarmPlan,
  tunnel: number,
  { succession, fate }: SuccessionOutlook,
  miss: Miss,
  most: number,
  solver: Solver,
): readonly PlannedAround[] {
  const planned = plan.plans[tunnel]!;
  const isOwn = ({ standing }: SuccessionTable): boolean => standing.succession.id === succession.id;
  const table = planned.problem.successions.find(isOwn)!;
  const outlet = planned.chosen.successions.find((each) => each.table === table)?.outlet ?? null;
  const own: PlannedAround = {
    forced: true,
    fate,
    kept: asKept(scene.farm.place.zone, succession, outlet),
    planned: true,
    worth: 0,
    off: 0,
  };
  const alternatives = otherCuts(scene, planned, table, own.kept, miss)
    .slice(0, most)
    .map((kept): PlannedAround => {
      const settled = planSettled(plan, kept, solver);
      const result = settled.tunnels[tunnel]!.evaluation.successions.find((each) => isOwn(each.table));
      return {
        forced: true,
        fate: fateOf(table.standing, table.growing, result),
        kept,
        planned: false,
        ...moreThan(settled, plan.joint),
      };
    });
  return [own, ...alternatives].sort((a, b) => b.worth - a.worth);
}

/** Outlooks with the farm planned anew around every way out of their misses. */
export function withWaysOut(
  scene: Scene,
  plan: FarmPlan,
  outlooks: readonly SuccessionOutlook[],
  solver: Solver,
): readonly SuccessionOutlook[] {
  const misses = outlooks.filter(({ miss }) => miss !== null).length;
  const most = Math.ceil(MOST_PLANS / Math.max(1, misses));
  return outlooks.map((outlook) => {
    const { succession, miss } = outlook;
    if (miss === null) return outlook;
    const tunnel = plan.plans.findIndex(({ at }) => at.tunnel.id === succession.tunnel);
    return {
      ...outlook,
      miss: { ...miss, alternatives: waysOut(scene, plan, tunnel, outlook, miss, most, solver) },
    };
  });
}
