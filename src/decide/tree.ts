import type { Scope } from "./scope.ts";
import { leftAt } from "./tails.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

/** Places in the tree looked into before a search gives up proving. The same on every machine. */
const MOST_NODES = 300_000;

/** Bounds and worths are sums in different orders. */
export const ROUNDING = 1e-8;

/** A change that may be worth it. */
interface Change {
  readonly hope: number;
  readonly walk: number;
  readonly to: number;
  /** Changes left in its week. */
  readonly over: number;
}

/**
 * Lays out schedules change by change: what lies stays until the next change. A change is left out when not even the best of
 * everything still open could be worth more than the floor. What is still open is bounded by the changes that are left.
 *
 * @param floor - May rise as schedules are finished.
 * @param finish - Is given every schedule that could be worth more than the floor; it is written over afterwards.
 * @returns What was not looked into is worth no more than this.
 */
export function walkTree(
  problem: TunnelProblem,
  { costs, path, hope, upper }: Scope,
  floor: () => number,
  finish: (schedule: Int32Array) => void,
): number {
  const { intervals: n, settings, lays, changesPerWeek: R } = problem;
  const [S, L, J] = [settings.length, lays.length, problem.successions.length];
  const { step, after } = costs;
  const settingOf = Int32Array.from(lays, ({ setting }) => setting);
  const lastWeek = problem.week[n - 1];
  const schedule = new Int32Array(n);
  /** The most each bed brings from a place on, by what was found before it: [place × beds + bed]. */
  const uppers = new Float64Array(J * path.spent.length);
  uppers.set(upper);
  let nodes = 0;
  let leftOut = Number.NEGATIVE_INFINITY;

  /** The most of everything when an interval is entered so. @param into - Place the most each bed brings is kept for. */
  const look = (
    x: number,
    i: number,
    from: number,
    to: number,
    then: number,
    into: number | null,
  ): number => {
    const row = i * (R + 1) + then;
    const cost = path.spent[x]! + step[(i * L + from) * L + to]! + after[row * L + to]!;
    if (cost === Number.POSITIVE_INFINITY) return Number.NEGATIVE_INFINITY;
    nodes += 1;
    const k = row * S + settingOf[to]!;
    const needed = floor() - ROUNDING;
    let total = hope.rest(x, k) - cost;
    for (let j = 0; j < J; j++) total += uppers[x * J + j]!;
    for (let j = 0; j < J && total > needed; j++) {
      const others = total - uppers[x * J + j]!;
      const brings = hope.bed(j, x, i, k, needed - others);
      if (into !== null) uppers[into * J + j] = brings;
      total = others + brings;
    }
    return total;
  };
  const isEnough = (most: number): boolean => most > floor() - ROUNDING;

  const visit = (depth: number, begin: number, lay: number, begun: number): void => {
    const changes: Change[] = [];
    let left = begun;
    for (let i = begin; ; i++) {
      if (i === n) {
        finish(schedule.fill(lay, begin));
        break;
      }
      const x = path.place(depth, i);
      left = leftAt(problem, i, left);
      if (left > 0)
        for (let to = 0; to < L; to++) {
          if (to === lay) continue;
          const most = look(x, i, lay, to, left - 1, null);
          if (isEnough(most)) changes.push({ hope: most, walk: i, to, over: left - 1 });
        }
      if (!isEnough(look(x, i, lay, lay, left, x + 1))) break;
      path.lie(depth, i, lay, lay);
    }
    changes.sort((a, b) => b.hope - a.hope);
    for (const { hope: most, walk, to, over } of changes) {
      if (!isEnough(most)) break;
      if (nodes >= MOST_NODES) {
        leftOut = Math.max(leftOut, most);
        break;
      }
      schedule.fill(lay, begin, walk);
      if (over === 0 && problem.week[walk] === lastWeek) {
        finish(schedule.fill(to, walk));
        continue;
      }
      schedule[walk] = to;
      look(path.place(depth, walk), walk, lay, to, over, path.place(depth + 1, walk + 1));
      path.deeper(depth, walk);
      path.lie(depth + 1, walk, lay, to);
      visit(depth + 1, walk + 1, to, over);
    }
  };
  visit(0, 0, NOW, R);
  return leftOut;
}
