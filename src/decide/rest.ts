import type { OutletTable as Outlet, SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** What can still be gained from an interval up to an outlet, whatever is done: for bounds. */
export interface Rest {
  readonly outlet: Outlet;
  /** Cut at the walk that opens its interval: what lies from that walk on changes nothing. */
  readonly atWalk: boolean;
  readonly leastPace: Float64Array;
  readonly mostPace: Float64Array;
  readonly mostLight: Float64Array;
  readonly leastHeat: Float64Array;
  readonly mostSafe: Float64Array;
  /** The same sums when one setting stays on to the end: [interval × settings + setting]. */
  readonly stay: {
    readonly pace: Float64Array;
    readonly light: Float64Array;
    readonly heat: Float64Array;
    readonly safe: Float64Array;
  };
}

const least = (values: readonly number[]): number => Math.min(...values);
const most = (values: readonly number[]): number => Math.max(...values);

/** For each outlet and each interval the extremes of what lies between them. */
export function restsOf(problem: TunnelProblem, table: SuccessionTable): readonly Rest[] {
  const { intervals: n } = problem;
  const S = problem.settings.length;
  const possible = (i: number): readonly number[] =>
    problem.settings.map((_, s) => s).filter((s) => problem.possible[Math.min(n - 1, i) * S + s]);
  const over = (values: Float64Array, i: number, pick: (values: readonly number[]) => number): number =>
    pick(possible(i).map((s) => values[i * S + s]!));
  const extremes = (
    values: Float64Array,
    tail: (outlet: Outlet) => Float64Array,
    pick: (values: readonly number[]) => number,
  ) => {
    const each = Array.from({ length: n }, (_, i) => over(values, i, pick));
    return (outlet: Outlet): Float64Array => {
      const sums = new Float64Array(n + 1);
      if (outlet.interval <= n)
        sums[outlet.interval] = pick(possible(outlet.interval).map((s) => tail(outlet)[s]!));
      for (let i = outlet.interval - 1; i >= 0; i--) sums[i] = sums[i + 1]! + each[i]!;
      return sums;
    };
  };
  const staying = (values: Float64Array, outlet: Outlet, tail: Float64Array): Float64Array => {
    const sums = new Float64Array((n + 1) * S);
    for (let s = 0; s < S; s++) {
      let sum = tail[s]!;
      sums[outlet.interval * S + s] = sum;
      for (let i = outlet.interval - 1; i >= 0; i--) {
        sum += values[i * S + s]!;
        sums[i * S + s] = sum;
      }
    }
    return sums;
  };
  const leastPace = extremes(table.pace, ({ pace }) => pace, least);
  const mostPace = extremes(table.pace, ({ pace }) => pace, most);
  const mostLight = extremes(table.lightIn, ({ light }) => light, most);
  const leastHeat = extremes(table.heat, ({ heat }) => heat, least);
  const mostSafe = extremes(table.safe, ({ safe }) => safe, most);
  return table.outlets
    .map((outlet) => ({
      outlet,
      atWalk:
        outlet.interval < n &&
        [outlet.light, outlet.pace, outlet.heat, outlet.safe].every((added) =>
          added.every((value) => value === 0),
        ),
      leastPace: leastPace(outlet),
      mostPace: mostPace(outlet),
      mostLight: mostLight(outlet),
      leastHeat: leastHeat(outlet),
      mostSafe: mostSafe(outlet),
      stay: {
        pace: staying(table.pace, outlet, outlet.pace),
        light: staying(table.lightIn, outlet, outlet.light),
        heat: staying(table.heat, outlet, outlet.heat),
        safe: staying(table.safe, outlet, outlet.safe),
      },
    }))
    .sort((a, b) => a.outlet.interval - b.outlet.interval);
}
