import { breachesAt, gravityOf, idle } from "./evaluate.ts";
import type { Prices } from "./prices.ts";
import { leftAt } from "./tails.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

const NEVER = Number.POSITIVE_INFINITY;

/** Limits broken by lying or changing, as gravity, and moves never offered. They are the same at all prices. */
export interface Gravity {
  /** Of having a setting in an interval: [interval × settings + setting]. */
  readonly lying: Int32Array;
  /** Of a change: [(walk × lays + from) × lays + to]. */
  readonly change: Int32Array;
  readonly idle: Uint8Array;
}

export function gravityIn(problem: TunnelProblem): Gravity {
  const { intervals: n, lays } = problem;
  const L = lays.length;
  const length = n * L * L;
  const each =
    <Of>(of: (problem: TunnelProblem, walk: number, from: number, to: number) => Of) =>
    (_: unknown, k: number): Of =>
      of(problem, Math.floor(k / (L * L)), Math.floor(k / L) % L, k % L);
  return {
    lying: Int32Array.from(problem.broken, gravityOf),
    change: Int32Array.from(
      { length },
      each((...move) => gravityOf(breachesAt(...move))),
    ),
    idle: Uint8Array.from(
      { length },
      each((...move) => (idle(...move) ? 1 : 0)),
    ),
  };
}

/** What covers cost at some prices. */
export interface Costs {
  /** Going from one lay to another and lying through the interval, never when that is not offered: [(walk × lays + from) × lays + to]. */
  readonly step: Float64Array;
  /** The least that is still to pay after an interval under a lay: [(interval × (changes + 1) + changes left) × lays + lay]. */
  readonly after: Float64Array;
  /** The least of any schedule, and of any in which a lay lies in an interval: [interval × lays + lay]. */
  readonly least: number;
  readonly through: Float64Array;
}

/** @param possible - Lays that may lie: [interval × lays + lay]. */
export function costsOf(problem: TunnelProblem, gravity: Gravity, prices: Prices, possible: Uint8Array): Costs {
  const { intervals: n, lays, settings, changesPerWeek: R } = problem;
  const [S, L] = [settings.length, lays.length];
  const all = [...lays.keys()];
  const open = Array.from({ length: n }, (_, i) => all.filter((lay) => possible[i * L + lay]));
  const lying = (i: number): readonly number[] => (i === 0 ? [NOW] : open[i - 1]!);
  const step = new Float64Array(n * L * L).fill(NEVER);
  for (let i = 0; i < n; i++) {
    const { minutes } = problem.moves[problem.parts[i]!];
    const minute = problem.minute + prices.minute[i]!;
    for (const to of open[i]!) {
      const own = prices.cloth[i * L + to]! + prices.breach * gravity.lying[i * S + lays[to]!.setting]!;
      for (const from of lying(i)) {
        const k = (i * L + from) * L + to;
        if (gravity.idle[k]) continue;
        step[k] = minutes[from * L + to]! * minute + prices.breach * gravity.change[k]! + own;
      }
    }
  }
  const after = new Float64Array(n * (R + 1) * L);
  const before = new Float64Array(n * (R + 1) * L).fill(NEVER);
  const place = (i: number, left: number): number => (i * (R + 1) + left) * L;
  for (let i = n - 2; i >= 0; i--)
    for (let then = 0; then <= R; then++) {
      const left = leftAt(problem, i + 1, then);
      const stay = place(i + 1, left);
      for (const lay of open[i]!) {
        const row = ((i + 1) * L + lay) * L;
        let cost = step[row + lay]! + after[stay + lay]!;
        if (left > 0)
          for (const to of open[i + 1]!)
            if (to !== lay) cost = Math.min(cost, step[row + to]! + after[stay - L + to]!);
        after[place(i, then) + lay] = cost;
      }
    }
  for (let i = 0; i < n; i++)
    for (let then = 0; then <= R; then++) {
      if (i === 0 && then < R) continue;
      const left = leftAt(problem, i, then);
      for (const lay of lying(i)) {
        const paid = i === 0 ? 0 : before[place(i - 1, then) + lay]!;
        if (paid === NEVER) continue;
        for (const to of open[i]!) {
          if (to !== lay && left === 0) continue;
          const k = place(i, to === lay ? left : left - 1) + to;
          before[k] = Math.min(before[k]!, paid + step[(i * L + lay) * L + to]!);
        }
      }
    }
  const through = new Float64Array(n * L).fill(NEVER);
  for (let i = 0; i < n; i++)
    for (let then = 0; then <= R; then++)
      for (const lay of open[i]!) {
        const k = place(i, then) + lay;
        through[i * L + lay] = Math.min(through[i * L + lay]!, before[k]! + after[k]!);
      }
  return { step, after, through, least: Math.min(...through.subarray(0, L)) };
}
