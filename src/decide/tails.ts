import type { TunnelProblem } from "./tunnelProblem.ts";

/** Settings that some lay left open has, in every interval: [interval × settings + setting]. */
export function openSettings({
  intervals,
  settings,
  lays,
  possible,
}: Pick<TunnelProblem, "intervals" | "settings" | "lays" | "possible">): Uint8Array {
  const open = new Uint8Array(intervals * settings.length);
  for (let i = 0; i < intervals; i++)
    lays.forEach(({ setting }, l) => {
      if (possible[i * lays.length + l]) open[i * settings.length + setting] = 1;
    });
  return open;
}

/** Changes left at a walk after some have been made: all again where a week begins. */
export const leftAt = (
  { week, changesPerWeek }: Pick<TunnelProblem, "week" | "changesPerWeek">,
  walk: number,
  left: number,
): number => (walk > 0 && walk < week.length && week[walk] !== week[walk - 1] ? changesPerWeek : left);

/** What the last interval of a tail adds, by setting, and which interval that is: their number, when it lies beyond them. */
export interface End {
  readonly interval: number;
  readonly adds: Float64Array;
}

/**
 * The greatest (1) or the least (−1) sum of `values` from entering an interval under a setting up to an end, with so many
 * changes left in the week: [(interval × (changes + 1) + changes left) × settings + setting]. With no change left in the last
 * week it is exact.
 *
 * @param open - Settings that may lie: [interval × settings + setting].
 */
export function tails(
  problem: TunnelProblem,
  open: Uint8Array,
  values: Float64Array,
  end: End,
  sign: 1 | -1,
): Float64Array {
  const { settings, changesPerWeek: R, intervals: n } = problem;
  const S = settings.length;
  const found = new Float64Array(Math.min(n, end.interval + 1) * (R + 1) * S);
  const none = -sign * Number.POSITIVE_INFINITY;
  const better = (a: number, b: number): boolean => (sign === 1 ? a > b : a < b);
  /** The best setting to change to. */
  const changed = new Float64Array((n + 1) * (R + 1)).fill(none);
  for (let i = Math.min(n - 1, end.interval); i >= 0; i--)
    for (let left = 0; left <= R; left++) {
      const row = (i * (R + 1) + left) * S;
      const next = (i + 1) * (R + 1) + leftAt(problem, i + 1, left);
      let best = none;
      for (let s = 0; s < S; s++) {
        let sum = end.adds[s]!;
        if (i < end.interval) {
          sum = values[i * S + s]!;
          if (i + 1 === n) sum += end.adds[s]!;
          else {
            const other = next % (R + 1) === 0 ? none : changed[next - 1]!;
            const stay = open[(i + 1) * S + s] ? found[next * S + s]! : none;
            sum += better(stay, other) ? stay : other;
          }
        }
        found[row + s] = sum;
        if (open[i * S + s] && better(sum, best)) best = sum;
      }
      changed[i * (R + 1) + left] = best;
    }
  return found;
}

/** The end of a sum over all intervals. */
export const atTheEnd = ({ intervals, settings }: TunnelProblem): End => ({
  interval: intervals,
  adds: new Float64Array(settings.length),
});
