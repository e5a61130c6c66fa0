import type { KeptCut } from "../farm/index.ts";
import { type Joint, planTogether } from "./joint.ts";
import { keptOutlets } from "./kept.ts";
import type { PlannedAround } from "./outcome.ts";
import type { FarmPlan } from "./planned.ts";
import { restated } from "./restated.ts";
import type { Solver } from "./solver.ts";
import type { FarmProblem } from "./together.ts";

/** A farm's problem with one cut settled, as if the grower kept it; all else is open. */
function withCut(problem: FarmProblem, kept: KeptCut): FarmProblem {
  const scene = { farm: problem.farm, keep: [kept] };
  return {
    ...problem,
    tunnels: problem.tunnels.map(({ id, problem: each }) => ({
      id,
      problem: {
        ...each,
        successions: each.successions.map((table) =>
          table.standing.succession.id === kept.succession
            ? { ...table, ...keptOutlets(scene, table.standing, table.outlets) }
            : table,
        ),
      },
    })),
  };
}

/** The best plan of all tunnels with one cut settled; it begins from the schedules weighed for the plan at hand. */
export function planSettled({ problem, joint }: FarmPlan, kept: KeptCut, solver: Solver): Joint {
  const settled = withCut(problem, kept);
  return planTogether(settled, solver, restated(joint.weighed, problem, settled));
}

const gapOf = ({ bound, worth, proved }: Joint): number => (proved ? 0 : bound - worth);

/** What a plan is worth less what it pays for differing from a sheet given out: what it was chosen by. */
const chosenBy = ({ worth, tunnels }: Joint): number =>
  tunnels.reduce((sum, { evaluation }) => sum + evaluation.parts.calm, worth);

/** What one plan is worth more than another, changed instructions of a sheet given out paid by both, and how far that may be off, either way. */
export const moreThan = (one: Joint, other: Joint): Pick<PlannedAround, "worth" | "off"> => ({
  worth: chosenBy(one) - chosenBy(other),
  off: Math.max(gapOf(one), gapOf(other)),
});
