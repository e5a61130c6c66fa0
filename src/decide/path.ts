import type { Costs } from "./costs.ts";
import { keptDry } from "./dry.ts";
import { afterCut, DIM, slopeOf } from "./evaluate.ts";
import type { Prices } from "./prices.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";
import { cutAt, type Way } from "./ways.ts";

/** Sums along a schedule that is being laid out, by depth of the tree and walk: [depth × (intervals + 1) + walk]. */
export interface Sums {
  readonly time: Float64Array;
  readonly light: Float64Array;
  readonly heat: Float64Array;
  /** Logarithm of the chance to come through up to here, and the chance. */
  readonly safe: Float64Array;
  readonly chance: Float64Array;
  /** Logarithm of the chance of its roots, cut or not. */
  readonly rooted: Float64Array;
  /** The best of the outlets passed, what grows again left out; where there are none less than anything. */
  readonly settled: Float64Array;
}

/** A schedule that is being laid out, change by change; each depth of the tree has sums of its own. */
export interface Path {
  readonly beds: readonly Sums[];
  readonly undated: readonly Float64Array[];
  readonly spent: Float64Array;
  readonly dim: Int32Array;
  readonly place: (depth: number, walk: number) => number;
  /** Lies through an interval. */
  lie(depth: number, interval: number, from: number, to: number): void;
  /** The most the outlets passed bring when the roots come through so much more. @param more - Logarithm of their chance. */
  settledWith(j: number, x: number, more: number): number;
  /** Takes what one depth has come to up to a walk over into the next. */
  deeper(depth: number, walk: number): void;
}

const LOST = Number.NEGATIVE_INFINITY;

export function pathOf(
  problem: TunnelProblem,
  { step }: Costs,
  { breach }: Prices,
  ways: readonly (readonly Way[])[],
  depths: number,
): Path {
  const { intervals: n, settings, lays, successions } = problem;
  const [S, L] = [settings.length, lays.length];
  const column = (): Float64Array => new Float64Array(depths * (n + 1));
  const beds = successions.map(
    (table): Sums => ({
      time: column().fill(table.thermalTime, 0, 1),
      light: column().fill(table.light, 0, 1),
      heat: column(),
      safe: column(),
      chance: column().fill(1, 0, 1),
      rooted: column(),
      settled: column().fill(LOST),
    }),
  );
  const slopes = successions.map((table) => slopeOf(problem, table));
  const undated = problem.undated.map(column);
  const spent = column();
  const dim = new Int32Array(depths * (n + 1));
  const place = (depth: number, walk: number): number => depth * (n + 1) + walk;

  const grow = (depth: number, i: number, before: number, s: number, j: number): void => {
    const { time, light, heat, safe, chance, rooted, settled } = beds[j]!;
    const table = successions[j]!;
    const mine = ways[j]!;
    const x = place(depth, i);
    const k = i * S + s;
    rooted[x + 1] = rooted[x]! + table.rooted[k]!;
    let top = settled[x]!;
    for (let w = 0; w < mine.length; w++) {
      const { outlet } = mine[w]!;
      if (outlet.interval < i) continue;
      if (outlet.interval > i) break;
      const brings = cutAt(
        problem,
        mine[w]!,
        slopes[j]!,
        time[x]! + outlet.pace[s]!,
        light[x]! + outlet.light[s]!,
        heat[x]! + outlet.heat[s]!,
        safe[x]! + outlet.safe[s]!,
        keptDry(outlet, before, s),
      );
      top = Math.max(top, brings);
    }
    settled[x + 1] = top;
    time[x + 1] = time[x]! + table.pace[k]!;
    light[x + 1] = light[x]! + table.lightIn[k]!;
    heat[x + 1] = heat[x]! + table.heat[k]!;
    safe[x + 1] = safe[x]! + table.safe[k]!;
    chance[x + 1] = Math.exp(safe[x + 1]!);
  };

  return {
    beds,
    undated,
    spent,
    dim,
    place,
    lie(depth, i, from, to) {
      const s = lays[to]!.setting;
      const x = place(depth, i);
      const shaded = problem.dim[i * S + s]!;
      dim[x + 1] = dim[x]! + shaded;
      const tooDim = shaded > 0 && dim[x + 1]! > problem.dimDays;
      spent[x + 1] = spent[x]! + step[(i * L + from) * L + to]! + (tooDim ? DIM * breach : 0);
      for (let u = 0; u < undated.length; u++)
        undated[u]![x + 1] = undated[u]![x]! + problem.undated[u]!.safe[i * S + s]!;
      for (let j = 0; j < beds.length; j++) grow(depth, i, lays[from]!.setting, s, j);
    },
    settledWith(j, x, more) {
      const { settled, rooted } = beds[j]!;
      return settled[x]! + afterCut(problem, successions[j]!, rooted[x]! + more);
    },
    deeper(depth, walk) {
      const [here, there] = [place(depth, walk), place(depth + 1, walk)];
      for (const row of [spent, dim, ...undated]) row[there] = row[here]!;
      for (const sums of beds) for (const row of Object.values(sums)) row[there] = row[here]!;
    },
  };
}
