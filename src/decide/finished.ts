import { calmCost } from "./calm.ts";
import type { Gravity } from "./costs.ts";
import { keptDry } from "./dry.ts";
import { afterCut, DIM, slopeOf } from "./evaluate.ts";
import type { Load, Prices } from "./prices.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";
import { cutAt, loadAt, type Way } from "./ways.ts";

/** What a whole schedule comes to at some prices. */
export interface Finished {
  /** Without its beds. */
  readonly rest: number;
  /** What each bed brings at each of its outlets; the last entry is leaving it uncut. */
  readonly beds: readonly Float64Array[];
  /** What cutting a bed at one of its outlets takes. */
  load(j: number, w: number): Load;
}

/** Counts whole schedules at some prices. @param ways - Of each succession. */
export function counter(
  problem: TunnelProblem,
  gravity: Gravity,
  prices: Prices,
  ways: readonly (readonly Way[])[],
): (schedule: ArrayLike<number>) => Finished {
  const { intervals: n, settings, lays } = problem;
  const [S, L] = [settings.length, lays.length];
  const slopes = problem.successions.map((table) => slopeOf(problem, table));
  const beds = ways.map((each) => new Float64Array(each.length + 1));
  /** Thermal time, light, heat, safety and what wet leaves at each outlet: [outlet × 5]. */
  const reached = ways.map((each) => new Float64Array(5 * each.length));

  const covers = (schedule: ArrayLike<number>): number => {
    let cost = 0;
    let dim = 0;
    let grave = 0;
    for (let i = 0; i < n; i++) {
      const from = i === 0 ? NOW : schedule[i - 1]!;
      const to = schedule[i]!;
      const k = i * S + lays[to]!.setting;
      dim += problem.dim[k]!;
      grave += gravity.change[(i * L + from) * L + to]! + gravity.lying[k]!;
      if (problem.dim[k]! > 0 && dim > problem.dimDays) grave += DIM;
      const minutes = problem.moves[problem.parts[i]!].minutes[from * L + to]!;
      cost +=
        minutes * (problem.minute + prices.minute[i]!) +
        prices.tooLong(i, minutes) +
        prices.cloth[i * L + to]! +
        calmCost(problem, i, from, to);
    }
    return cost + prices.breach * grave;
  };

  const bounded = prices.tooMuch !== null;
  const load = (j: number, w: number): Load => {
    const [time, light, heat, safe, dry] = reached[j]!.subarray(5 * w);
    return loadAt(problem, ways[j]![w]!, time!, light!, heat!, safe!, dry!);
  };

  const bed = (schedule: ArrayLike<number>, j: number): void => {
    const table = problem.successions[j]!;
    const values = beds[j]!;
    const slope = slopes[j]!;
    let [time, light, heat, safe] = [table.thermalTime, table.light, 0, 0];
    let rooted = 0;
    let w = 0;
    const mine = ways[j]!;
    for (let i = 0; i <= n; i++) {
      const s = lays[schedule[Math.min(i, n - 1)]!]!.setting;
      const last = lays[i === 0 ? NOW : schedule[i - 1]!]!.setting;
      const k = i * S + s;
      for (; w < mine.length && mine[w]!.outlet.interval === i; w++) {
        const { outlet } = mine[w]!;
        const at = [
          time + outlet.pace[s]!,
          light + outlet.light[s]!,
          heat + outlet.heat[s]!,
          safe + outlet.safe[s]!,
          keptDry(outlet, last, s),
        ] as const;
        values[w] = cutAt(problem, mine[w]!, slope, ...at);
        if (bounded) reached[j]!.set(at, 5 * w);
      }
      if (i === n) break;
      time += table.pace[k]!;
      light += table.lightIn[k]!;
      heat += table.heat[k]!;
      safe += table.safe[k]!;
      rooted += table.rooted[k]!;
    }
    const later = afterCut(problem, table, rooted);
    for (w = 0; w < mine.length; w++) values[w]! += later;
    values[mine.length] = table.mustCut ? Number.NEGATIVE_INFINITY : slope * safe;
  };

  return (schedule) => {
    let rest = -covers(schedule);
    for (const { worth, safe } of problem.undated) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += safe[i * S + lays[schedule[i]!]!.setting]!;
      rest += worth * (Math.exp(sum) - 1 + problem.neverLost * sum);
    }
    for (let j = 0; j < beds.length; j++) bed(schedule, j);
    return { rest, beds, load };
  };
}
