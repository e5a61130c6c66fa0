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

/** Plans shared out among all misses, each of which has one at least: a plan takes as long as the plan itself or less. judgement */
const MOST_PLANS = 12;

/** Where a cut lies beside the pick that is missed. */
type Place = "before" | "at" | "after";

/**
 * Other cuts worth planning for: the best before the pick that is missed, that pick all the same, the best after it, and none; as the
 * schedule at hand has their worth. What the grower has settled has no other.
 */
function otherCuts(
  { farm, keep }: Scene,
  { problem, schedule }: Planned,
  table: SuccessionTable,
  miss: Miss,
): readonly KeptCut[] {
  const { succession } = table.standing;
  if (keep.some((kept) => "succession" in kept && kept.succession === succession.id)) return [];
  const results = outletResults(problem, table, schedule);
  const { worth: most, again: later } = best(results);
  const least = WORTH_PLANNING * (most - later);
  const places = new Map<Place, KeptCut>();
  for (const { outlet, worth, again } of [...results].sort((a, b) => b.worth - a.worth)) {
    const greens = worth - again;
    if (outlet === null || greens <= 0 || greens < least) continue;
    const place = outlet.at < miss.pick.at ? "before" : outlet.at > miss.pick.at ? "after" : "at";
    if (!places.has(place)) places.set(place, asKept(farm.place.zone, succession, outlet));
  }
  return [...places.values(), asKept(farm.place.zone, succession, null)];
}

const same = (a: KeptCut, b: KeptCut): boolean =>
  a.kind === "uncut" || b.kind === "uncut" ? a.kind === b.kind : a.date === b.date && a.part === b.part;

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
  const others = otherCuts(scene, planned, table, miss).filter((kept) => !same(kept, own.kept));
  const alternatives = others.slice(0, most).map((kept): PlannedAround => {
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
