import type { Horizon } from "./horizon.ts";
import type { Joint } from "./joint.ts";
import { outletIndex } from "./ledger.ts";
import type { Change, LimitName, Parts } from "./outcome.ts";
import { type Planned, takenIn } from "./planned.ts";
import { NOW } from "./tunnelProblem.ts";

/** The schedule without its change at an interval: what lay before goes on lying until the next change. */
export function without(schedule: readonly number[], at: number): readonly number[] {
  const before = at === 0 ? NOW : schedule[at - 1]!;
  const next = schedule.findIndex((s, i) => i > at && s !== schedule[i - 1]);
  return schedule.map((s, i) => (i >= at && (next < 0 || i < next) ? before : s));
}

/** What one has more than another, part by part. */
export const lessParts = (a: Parts, b: Parts): Parts => ({
  timing: a.timing - b.timing,
  stress: a.stress - b.stress,
  damage: a.damage - b.damage,
  labour: a.labour - b.labour,
  orders: a.orders - b.orders,
});

/** Limits that are broken more often in one list than in the other. */
function extra(more: readonly LimitName[], fewer: readonly LimitName[]): readonly LimitName[] {
  const count = (list: readonly LimitName[], name: LimitName): number =>
    list.filter((other) => other === name).length;
  return [...new Set(more)].filter((name) => count(more, name) > count(fewer, name));
}

const PARTS = ["damage", "stress", "timing", "orders", "labour"] as const;

/** Every change of a tunnel's plan with what it gains, found by taking it out while all else stays as planned. */
export function changesOf(
  planned: Planned,
  tunnel: number,
  joint: Joint,
  horizon: Horizon,
): readonly Change[] {
  const { at, problem, schedule, chosen } = planned;
  const L = problem.lays.length;
  return schedule.flatMap((to, i): readonly Change[] => {
    const from = i === 0 ? NOW : schedule[i - 1]!;
    if (from === to) return [];
    const other = joint.instead(tunnel, without(schedule, i));
    const gain = lessParts(
      { ...chosen.parts, orders: joint.orders },
      { ...other.evaluation.parts, orders: other.orders },
    );
    const limit =
      extra([...other.evaluation.breaches, ...other.overrun], [...chosen.breaches, ...joint.overrun])[0] ??
      null;
    const strongest = PARTS.reduce((top, part) => (gain[part] > gain[top] ? part : top), PARTS[0]);
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
        decidedBy: limit === null ? strongest : "limit",
        gain,
        limit,
        without: {
          worth: other.worth,
          breaks: other.evaluation.breaches,
          overrun: other.overrun,
          cuts: other.evaluation.successions.map((result) => ({
            succession: result.table.standing.succession.id,
            outlet: outletIndex(result),
          })),
        },
      },
    ];
  });
}
