import { cellOf, highest } from "./cells.ts";
import { afterCut, DIM, slopeOf } from "./evaluate.ts";
import type { Path } from "./path.ts";
import { atTheEnd, tails } from "./tails.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";
import { isClosed, type Prospect, runsOf, type Way } from "./ways.ts";

/** The least and the most that can still come from entering an interval up to an outlet; places are those of `tails`. */
export interface Coming {
  readonly leastTime: Float64Array;
  readonly mostTime: Float64Array;
  readonly mostLight: Float64Array;
  readonly leastHeat: Float64Array;
  /** Logarithm of the chance to come through, and the chance. */
  readonly mostSafe: Float64Array;
  readonly mostChance: Float64Array;
}

/** What can still come to a whole tunnel under settings left open. */
export interface AllComing {
  /** Up to an outlet, worked out when first asked. */
  outlet(j: number, w: number): Coming;
  /** Logarithm of the chance to stand to the end, of each bed and each undated bed. */
  readonly uncut: readonly Float64Array[];
  /** The same of each bed's roots, cut or not. */
  readonly rooted: readonly Float64Array[];
  readonly undated: readonly Float64Array[];
  readonly dim: Float64Array;
}

export function comingOf(
  problem: TunnelProblem,
  open: Uint8Array,
  prospects: readonly (readonly Prospect[])[],
): AllComing {
  const end = atTheEnd(problem);
  const found = prospects.map((each) => new Array<Coming | undefined>(each.length));
  return {
    outlet(j, w) {
      const before = found[j]![w];
      if (before !== undefined) return before;
      const prospect = prospects[j]![w]!;
      const { table, outlet } = prospect;
      const to = (values: Float64Array, adds: Float64Array, sign: 1 | -1): Float64Array =>
        tails(problem, open, values, { interval: outlet.interval, adds }, sign);
      const mostSafe = to(table.safe, outlet.safe, 1);
      const made: Coming = {
        leastTime: to(table.pace, outlet.pace, -1),
        mostTime: to(table.pace, outlet.pace, 1),
        mostLight: to(table.lightIn, outlet.light, 1),
        leastHeat: to(table.heat, outlet.heat, -1),
        mostSafe,
        mostChance: mostSafe.map(Math.exp),
      };
      found[j]![w] = made;
      return made;
    },
    uncut: problem.successions.map(({ safe }) => tails(problem, open, safe, end, 1)),
    rooted: problem.successions.map(({ rooted }) => tails(problem, open, rooted, end, 1)),
    undated: problem.undated.map(({ safe }) => tails(problem, open, safe, end, 1)),
    dim: tails(problem, open, Float64Array.from(problem.dim), end, -1),
  };
}

/** The most that beds can still bring from a place on a path on. */
export interface Hope {
  /**
   * The most that everything but the beds brings, and too many dim days cost, covers left out.
   *
   * @param k - Place in the tails: what is entered, and the changes then left.
   */
  rest(x: number, k: number): number;
  /** The most a bed brings, or what is needed of it when it brings no more. */
  bed(j: number, x: number, i: number, k: number, needed: number): number;
  /** The most a bed brings when it is not cut at an outlet still ahead. */
  passed(j: number, x: number, k: number): number;
  /** The most a bed brings at one of its outlets. */
  outlet(j: number, w: number, x: number, k: number): number;
  /** Outlets of each bed, the one that can bring most first, and the most each can bring. */
  readonly order: readonly Int32Array[];
  readonly most: readonly Float64Array[];
}

/**
 * @param first - Places in the tails that a schedule can begin with.
 * @param known - The most each outlet can bring, as far as it is known.
 * @param needed - Of each bed; an outlet known to bring no more is not looked at again.
 */
export function hopeOf(
  problem: TunnelProblem,
  path: Path,
  coming: AllComing,
  ways: readonly (readonly Way[])[],
  breach: number,
  first: readonly number[],
  known: readonly ArrayLike<number>[],
  needed: readonly number[],
): Hope {
  const { successions, neverLost, dimDays, heatStress, stressMost } = problem;
  const slopes = successions.map((table) => slopeOf(problem, table));

  const outlet = (j: number, w: number, x: number, k: number): number => {
    const { time, light, heat, safe, chance, rooted } = path.beds[j]!;
    const way = ways[j]![w]!;
    const to = coming.outlet(j, w);
    const t = time[x]!;
    const from = cellOf(way.time, t + to.leastTime[k]!);
    const upTo = cellOf(way.time, t + to.mostTime[k]!);
    if (isClosed(way, from, upTo)) return Number.NEGATIVE_INFINITY;
    const whole = highest(runsOf(way), from, upTo);
    const later = afterCut(problem, successions[j]!, rooted[x]! + coming.rooted[j]![k]!);
    const slope = slopes[j]! * (safe[x]! + to.mostSafe[k]!) + later;
    if (whole <= way.cutting) return slope;
    const share = way.share[cellOf(way.light, light[x]! + to.mostLight[k]!)]!;
    const good = 1 - Math.min(stressMost, heatStress * (heat[x]! + to.leastHeat[k]!));
    return Math.max(0, whole * share * good - way.cutting) * chance[x]! * to.mostChance[k]! + slope;
  };
  const most = ways.map((each, j) =>
    Float64Array.from(each, (_, w) =>
      known[j]![w]! > needed[j]!
        ? first.reduce((top, k) => Math.max(top, outlet(j, w, 0, k)), Number.NEGATIVE_INFINITY)
        : known[j]![w]!,
    ),
  );
  const order = most.map((each) => Int32Array.from(each.keys()).sort((a, b) => each[b]! - each[a]!));
  const passed = (j: number, x: number, k: number): number => {
    const top = path.settledWith(j, x, coming.rooted[j]![k]!);
    return successions[j]!.mustCut
      ? top
      : Math.max(top, slopes[j]! * (path.beds[j]!.safe[x]! + coming.uncut[j]![k]!));
  };

  return {
    outlet,
    passed,
    most,
    order,
    bed(j, x, i, k, needed) {
      let top = Math.max(needed, passed(j, x, k));
      const mine = ways[j]!;
      const highestOf = most[j]!;
      for (const w of order[j]!) {
        if (highestOf[w]! <= top) break;
        if (mine[w]!.outlet.interval < i) continue;
        const brings = outlet(j, w, x, k);
        if (brings > top) top = brings;
      }
      return top;
    },
    rest(x, k) {
      let sum = 0;
      for (let u = 0; u < path.undated.length; u++) {
        const safe = path.undated[u]![x]! + coming.undated[u]![k]!;
        sum += problem.undated[u]!.worth * (Math.exp(safe) - 1 + neverLost * safe);
      }
      const dim = path.dim[x]!;
      return sum - DIM * breach * (Math.max(0, dim + coming.dim[k]! - dimDays) - Math.max(0, dim - dimDays));
    },
  };
}
