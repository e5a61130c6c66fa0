import { bedsBeside, worstOf } from "./beside.ts";
import { outletResults, type SuccessionResult } from "./evaluate.ts";
import { filledBetter } from "./filled.ts";
import { decidedBetween } from "./gain.ts";
import type { Instead, Joint } from "./joint.ts";
import { outletIndex } from "./ledger.ts";
import type { BedBeside, Change } from "./outcome.ts";
import { type Planned, takenIn } from "./planned.ts";
import { ratherOf } from "./rather.ts";
import type { Scene } from "./scene.ts";
import { type Courses, tellOf } from "./told.ts";
import { NOW } from "./tunnelProblem.ts";

/** The schedule without its change at an interval: what lay before goes on lying until the next change. */
export function without(schedule: readonly number[], at: number): readonly number[] {
  const before = at === 0 ? NOW : schedule[at - 1]!;
  const next = schedule.findIndex((s, i) => i > at && s !== schedule[i - 1]);
  return schedule.map((s, i) => (i >= at && (next < 0 || i < next) ? before : s));
}

/** Every change of a tunnel's plan with what it gains, found by taking it out while all else stays as planned. */
export function changesOf(
  planned: Planned,
  tunnel: number,
  joint: Joint,
  scene: Scene,
  courses: Courses,
): readonly Change[] {
  const { at, problem, schedule, chosen } = planned;
  const { horizon, farm, picks } = scene;
  const results = new Map(
    problem.successions.map((table) => [table, outletResults(problem, table, schedule)]),
  );
  const tells = new Map(
    problem.successions.map((table) => [table, tellOf(scene, table, courses(planned, table))]),
  );
  const beds = (other: readonly number[], { evaluation }: Instead): readonly BedBeside[] =>
    bedsBeside(
      planned,
      other,
      evaluation,
      (table) => results.get(table)!,
      (table) => tells.get(table)!,
    );
  const brought = (instead: readonly SuccessionResult[]): readonly SuccessionResult[] =>
    joint.tunnels.flatMap(({ evaluation }, t) => (t === tunnel ? instead : evaluation.successions));
  const L = problem.lays.length;
  return schedule.flatMap((to, i): readonly Change[] => {
    const from = i === 0 ? NOW : schedule[i - 1]!;
    if (from === to) return [];
    const left = without(schedule, i);
    const other = joint.instead(tunnel, left);
    const setting = problem.settings[problem.lays[to]!.setting]!;
    const had = i === 0 ? problem.lays[NOW]!.taken : takenIn(planned, i - 1);
    const rhythm = setting.some(({ state }) => state === "nights");
    const { day, night } = problem.moves;
    return [
      {
        walk: horizon.walks[i]!,
        tunnel: at.tunnel,
        from: problem.settings[problem.lays[from]!.setting]!,
        to: setting,
        pieces: takenIn(planned, i)
          .filter(({ piece }) => !had.some((lain) => lain.piece === piece))
          .flatMap(({ piece }) => piece ?? []),
        minutes: problem.moves[problem.parts[i]!].minutes[from * L + to]!,
        minutesEachWalk: rhythm ? Math.max(day.minutes[to * L + to]!, night.minutes[to * L + to]!) : 0,
        ...decidedBetween(planned, joint, other),
        without: {
          worth: other.worth,
          breaks: other.evaluation.breaches,
          overrun: other.overrun,
          cuts: other.evaluation.successions.map((result) => ({
            succession: result.table.standing.succession.id,
            outlet: outletIndex(result),
          })),
          beds: beds(left, other),
          worst: worstOf(scene, planned, left),
          filled: filledBetter(
            farm,
            picks,
            scene.keptCold,
            scene.weathers.shares,
            brought(chosen.successions),
            brought(other.evaluation.successions),
          ),
        },
        rather: ratherOf(planned, tunnel, joint, i, beds),
      },
    ];
  });
}
