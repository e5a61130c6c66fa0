import { evaluate, rounded } from "./evaluate.ts";
import type { Horizon } from "./horizon.ts";
import type { Change, LimitName, Parts } from "./outcome.ts";
import type { Planned } from "./planned.ts";

/** The schedule without its change at an interval: what lay before goes on lying until the next change. */
export function without(choice: readonly number[], now: number, at: number): readonly number[] {
  const before = at === 0 ? now : choice[at - 1]!;
  const next = choice.findIndex((s, i) => i > at && s !== choice[i - 1]);
  return choice.map((s, i) => (i >= at && (next < 0 || i < next) ? before : s));
}

const less = (a: Parts, b: Parts): Parts => ({
  timing: a.timing - b.timing,
  stress: a.stress - b.stress,
  damage: a.damage - b.damage,
  labour: a.labour - b.labour,
});

/** Limits that are broken more often in one list than in the other. */
function extra(more: readonly LimitName[], fewer: readonly LimitName[]): readonly LimitName[] {
  const count = (list: readonly LimitName[], name: LimitName): number =>
    list.filter((other) => other === name).length;
  return [...new Set(more)].filter((name) => count(more, name) > count(fewer, name));
}

/** Limits for whose sake a plan is worth less than changing nothing: those it keeps and changing nothing breaks more often. */
export function demandedBy({ chosen, unchanged }: Planned): readonly LimitName[] {
  if (rounded(chosen.worth) >= rounded(unchanged.worth)) return [];
  return extra(unchanged.breaches, chosen.breaches);
}

/** Every change of a plan with what it gains, found by taking it out. */
export function changesOf(
  { at, problem, choice, chosen, pieces }: Planned,
  horizon: Horizon,
): readonly Change[] {
  const S = problem.settings.length;
  return choice.flatMap((to, i): readonly Change[] => {
    const from = i === 0 ? problem.now : choice[i - 1]!;
    if (from === to) return [];
    const other = evaluate(problem, without(choice, problem.now, i));
    const gain = less(chosen.parts, other.parts);
    const limit = extra(other.breaches, chosen.breaches)[0] ?? null;
    const order = ["damage", "stress", "timing", "labour"] as const;
    const strongest = order.reduce((top, part) => (gain[part] > gain[top] ? part : top), order[0]);
    const setting = problem.settings[to]!;
    const had = new Set(problem.settings[from]!.map(({ cover }) => cover));
    const rhythm = setting.some(({ state }) => state === "nights");
    const { day, night } = problem.moves;
    return [
      {
        walk: horizon.walks[i]!,
        tunnel: at.tunnel,
        from: problem.settings[from]!,
        to: setting,
        pieces: setting
          .filter(({ cover }) => !had.has(cover))
          .flatMap(({ cover }) => pieces.get(cover) ?? []),
        minutes: problem.moves[problem.parts[i]!].minutes[from * S + to]!,
        minutesEachWalk: rhythm ? Math.max(day.minutes[to * S + to]!, night.minutes[to * S + to]!) : 0,
        decidedBy: limit === null ? strongest : "limit",
        gain,
        limit,
      },
    ];
  });
}
