import type { OutletTable, SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/**
 * The most and the least that can still come between a walk and an outlet with so many changes left in the week:
 * [(walk × (changes + 1) + changes left) × settings + setting that lies]. With no change left in the last week it is exact.
 */
export interface Tails {
  readonly outlet: OutletTable;
  readonly leastTime: Float64Array;
  readonly mostTime: Float64Array;
  readonly mostLight: Float64Array;
  readonly leastHeat: Float64Array;
  readonly mostSafe: Float64Array;
}

/** Settings that some lay left open has, in every interval: [interval × settings + setting]. */
export function openSettings({ intervals, settings, lays, possible }: TunnelProblem): Uint8Array {
  const open = new Uint8Array(intervals * settings.length);
  for (let i = 0; i < intervals; i++)
    lays.forEach(({ setting }, l) => {
      if (possible[i * lays.length + l]) open[i * settings.length + setting] = 1;
    });
  return open;
}

/** Place in a table of tails. */
export const tailAt = (
  { settings, changesPerWeek }: TunnelProblem,
  walk: number,
  left: number,
  s: number,
): number => (walk * (changesPerWeek + 1) + left) * settings.length + s;

/** Changes left at a walk after some have been made: all again where a week begins. */
export const leftAt = ({ week, changesPerWeek }: TunnelProblem, walk: number, left: number): number =>
  walk > 0 && walk < week.length && week[walk] !== week[walk - 1] ? changesPerWeek : left;

/** One table of tails: sums of `values` from every walk on, and last `end`, the greatest (sign 1) or the least (−1). */
function extremeTails(
  problem: TunnelProblem,
  open: Uint8Array,
  values: Float64Array,
  end: Float64Array,
  interval: number,
  sign: 1 | -1,
): Float64Array {
  const { settings, changesPerWeek: R, intervals: n } = problem;
  const S = settings.length;
  const tails = new Float64Array((interval + 1) * (R + 1) * S);
  const isOpen = (i: number, s: number): boolean => open[Math.min(n - 1, i) * S + s] === 1;
  for (let i = interval; i >= 0; i--) {
    for (let left = 0; left <= R; left++) {
      const after = (s: number, then: number): number =>
        i === interval
          ? end[s]!
          : values[i * S + s]! + tails[tailAt(problem, i + 1, leftAt(problem, i + 1, then), s)]!;
      let other = Number.NEGATIVE_INFINITY;
      // Beyond the days planned nothing changes any more.
      if (left > 0 && i < n)
        for (let s = 0; s < S; s++) if (isOpen(i, s)) other = Math.max(other, sign * after(s, left - 1));
      for (let s = 0; s < S; s++) {
        const stay = isOpen(i, s) ? sign * after(s, left) : Number.NEGATIVE_INFINITY;
        const best = Math.max(stay, other);
        tails[tailAt(problem, i, left, s)] = best === Number.NEGATIVE_INFINITY ? after(s, left) : sign * best;
      }
    }
  }
  return tails;
}

/** Tails of one succession to each of its outlets, in order of time. */
export function tailsOf(problem: TunnelProblem, table: SuccessionTable, open: Uint8Array): readonly Tails[] {
  return table.outlets.map((outlet) => {
    const tail = (values: Float64Array, end: Float64Array, sign: 1 | -1): Float64Array =>
      extremeTails(problem, open, values, end, outlet.interval, sign);
    return {
      outlet,
      leastTime: tail(table.pace, outlet.pace, -1),
      mostTime: tail(table.pace, outlet.pace, 1),
      mostLight: tail(table.lightIn, outlet.light, 1),
      leastHeat: tail(table.heat, outlet.heat, -1),
      mostSafe: tail(table.safe, outlet.safe, 1),
    };
  });
}
