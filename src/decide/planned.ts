import type { Evaluation } from "./evaluate.ts";
import { type Joint, planTogether } from "./joint.ts";
import type { Taken } from "./lays.ts";
import type { LimitName } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { Solver } from "./solver.ts";
import type { Standing } from "./standing.ts";
import type { FarmProblem } from "./together.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import { NOW, type TunnelProblem, tunnelProblem } from "./tunnelProblem.ts";

/** A tunnel with its standings, its problem and its schedule. */
export interface Planned {
  readonly at: TunnelNow;
  readonly standings: readonly Standing[];
  readonly problem: TunnelProblem;
  /** Index of a lay for each interval. */
  readonly schedule: readonly number[];
  /** Index of a setting for each interval. */
  readonly choice: readonly number[];
  readonly chosen: Evaluation;
  /** Leaving on what lies now. */
  readonly unchanged: Evaluation;
}

/** The plan of the whole farm. */
export interface FarmPlan {
  readonly problem: FarmProblem;
  readonly plans: readonly Planned[];
  readonly joint: Joint;
  readonly unchanged: Joint;
}

/** Nothing can be laid but what lies now, and nothing is kept. */
const leftAlone = (problem: TunnelProblem): TunnelProblem => ({
  ...problem,
  changesPerWeek: 0,
  possible: problem.possible.map((_, k) => (k % problem.lays.length === NOW ? 1 : 0)),
});

/** The best schedules for all tunnels together, and what leaving everything as it is would bring. */
export function planFarm(
  scene: Scene,
  tunnels: readonly { readonly at: TunnelNow; readonly standings: readonly Standing[] }[],
  solver: Solver,
): FarmPlan {
  const { farm, settings } = scene;
  const problems = tunnels.map(({ at, standings }) => tunnelProblem(scene, at, standings));
  const whole = (of: (problem: TunnelProblem) => TunnelProblem): FarmProblem => ({
    farm,
    settings,
    picks: problems.flatMap(({ successions }) =>
      successions.flatMap(({ outlets }) => outlets.map(({ fate }) => fate.pick)),
    ),
    keptCold: scene.keptCold,
    tunnels: problems.map((problem, t) => ({ id: tunnels[t]!.at.tunnel.id, problem: of(problem) })),
  });
  const problem = whole((each) => each);
  const joint = planTogether(problem, solver);
  const unchanged = planTogether(whole(leftAlone), solver);
  return {
    problem,
    joint,
    unchanged,
    plans: tunnels.map(({ at, standings }, t): Planned => {
      const problem = problems[t]!;
      const { schedule, evaluation } = joint.tunnels[t]!;
      return {
        at,
        standings,
        problem,
        schedule,
        choice: schedule.map((lay) => problem.lays[lay]!.setting),
        chosen: evaluation,
        unchanged: unchanged.tunnels[t]!.evaluation,
      };
    }),
  };
}

/** The pieces that lie on a tunnel through an interval of its plan. */
export const takenIn = ({ problem, schedule }: Planned, interval: number): readonly Taken[] =>
  problem.lays[schedule[interval]!]!.taken;

/** Limits of its own a plan cannot keep, those on its changes in a week among them. */
export function gaveWay({ problem, schedule, chosen }: Planned, most: number): readonly LimitName[] {
  const inWeek = new Map<number, number>();
  schedule.forEach((lay, i) => {
    if (lay === (i === 0 ? NOW : schedule[i - 1])) return;
    inWeek.set(problem.week[i]!, (inWeek.get(problem.week[i]!) ?? 0) + 1);
  });
  const often = [...inWeek.values()].some((changes) => changes > most);
  return [...new Set([...chosen.breaches, ...(often ? (["changes"] as const) : [])])];
}
