import { calmCost } from "./calm.ts";
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

/** Going from one lay to another and lying through the interval; never what is not offered: [(walk × lays + from) × lays + to]. */
export function stepsOf(problem: TunnelProblem, gravity: Gravity, prices: Prices): Float64Array {
  const { intervals: n, lays, settings } = problem;
  const [S, L] = [settings.length, lays.length];
  const step = new Float64Array(n * L * L);
  for (let i = 0; i < n; i++) {
    const { minutes } = problem.moves[problem.parts[i]!];
    const minute = problem.minute + prices.minute[i]!;
    for (let to = 0; to < L; to++) {
      const own = prices.cloth[i * L + to]! + prices.breach * gravity.lying[i * S + lays[to]!.setting]!;
      for (let from = 0; from < L; from++) {
        const k = (i * L + from) * L + to;
        step[k] = gravity.idle[k]
          ? NEVER
          : minutes[from * L + to]! * minute +
            prices.tooLong(i, minutes[from * L + to]!) +
            calmCost(problem, i, from, to) +
            prices.breach * gravity.change[k]! +
            own;
      }
    }
  }
  return step;
}

/** What covers cost at some prices, when some lays are left open. */
export interface Costs {
  /** See `stepsOf`. */
  readonly step: Float64Array;
  /**
   * The least that is still to pay after an interval under a lay, never where it is not open:
   * [(interval × (changes + 1) + changes left) × lays + lay].
   */
  readonly after: Float64Array;
  /** The least of any schedule, and of any in which a lay lies in an interval: [interval × lays + lay]. */
  readonly least: number;
  readonly through: Float64Array;
}

/** @param possible - Lays that may lie: [interval × lays + lay]. */
export function costsOf(problem: TunnelProblem, step: Float64Array, possible: Uint8Array): Costs {
  const { intervals: n, lays, changesPerWeek: R } = problem;
  const L = lays.length;
  const all = Int32Array.from(lays.keys());
  const open = Array.from({ length: n }, (_, i) => all.filter((lay) => possible[i * L + lay] === 1));
  const after = new Float64Array(n * (R + 1) * L).fill(NEVER);
  const before = new Float64Array(n * (R + 1) * L).fill(NEVER);
  const place = (i: number, left: number): number => (i * (R + 1) + left) * L;

  const pay = (i: number, then: number, lay: number): number => {
    if (i + 1 === n) return 0;
    const left = leftAt(problem, i + 1, then);
    const stay = place(i + 1, left);
    const row = ((i + 1) * L + lay) * L;
    let cost = step[row + lay]! + after[stay + lay]!;
    const next = open[i + 1]!;
    for (let m = 0; m < next.length && left > 0; m++) {
      const to = next[m]!;
      const other = step[row + to]! + after[stay - L + to]!;
      if (to !== lay && other < cost) cost = other;
    }
    return cost;
  };
  const enter = (i: number, left: number, from: number, paid: number): void => {
    const row = (i * L + from) * L;
    const stay = place(i, left);
    for (let m = 0; m < open[i]!.length; m++) {
      const to = open[i]![m]!;
      if (to !== from && left === 0) continue;
      const k = to === from ? stay + to : stay - L + to;
      const cost = paid + step[row + to]!;
      if (cost < before[k]!) before[k] = cost;
    }
  };

  for (let i = n - 1; i >= 0; i--)
    for (let then = 0; then <= R; then++)
      for (const lay of open[i]!) after[place(i, then) + lay] = pay(i, then, lay);
  enter(0, R, NOW, 0);
  for (let i = 1; i < n; i++)
    for (let then = 0; then <= R; then++)
      for (const lay of open[i - 1]!) {
        const paid = before[place(i - 1, then) + lay]!;
        if (paid < NEVER) enter(i, leftAt(problem, i, then), lay, paid);
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
