import type { SuccessionTable } from "./successionTable.ts";
import { openSettings } from "./tails.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** For each interval the setting under which a succession grows fastest, and slowest, of those allowed in it. */
export interface PaceBounds {
  readonly fastest: (interval: number) => number;
  readonly slowest: (interval: number) => number;
}

/** However many changes that takes. Slowing by heat is not allowed and so never counts. */
export function paceBounds(problem: TunnelProblem, { pace }: SuccessionTable): PaceBounds {
  const S = problem.settings.length;
  const open = openSettings(problem);
  const allowed = (i: number): readonly number[] => {
    const all = problem.settings.map((_, s) => s).filter((s) => open[i * S + s]);
    const kept = all.filter((s) => problem.broken[i * S + s]!.length === 0);
    return kept.length > 0 ? kept : all;
  };
  const extreme =
    (better: (a: number, b: number) => boolean) =>
    (i: number): number =>
      allowed(i).reduce((top, s) => (better(pace[i * S + s]!, pace[i * S + top]!) ? s : top));
  return { fastest: extreme((a, b) => a > b), slowest: extreme((a, b) => a < b) };
}
