import type { FarmProblem, Solver } from "../../src/decide/index.ts";
import { everyWay, type Way } from "./everyWay.ts";
import { ownDay } from "./ownMarket.ts";
import { beyond, type Shared, sharedOf, type Use } from "./ownShared.ts";

/** What a plan of the whole farm is worth, and what breaks or goes beyond a limit, weighed in breaches. */
export interface Whole {
  readonly worth: number;
  readonly breaches: number;
}

/** The best plan of a farm among all. */
export interface Brute extends Whole {
  readonly ways: readonly Way[];
  readonly combinations: number;
  /** Market days that were solved; the others were ruled out by prices. */
  readonly solved: number;
}

/** Counts plans of a farm. */
export interface Counter {
  /** What markets make of what is taken of each need, or no less than that. */
  revenues(taken: ArrayLike<number>, by: "revenue" | "most"): number;
  count(uses: readonly Use[]): Whole;
}

/** Counts with plain sums and a program for each market's day. */
export function counter({ farm, settings, tunnels }: FarmProblem, shared: Shared, solver: Solver): Counter {
  const { needs, days } = shared;
  const { weathers } = tunnels[0]!.problem;
  const markets = days.map((day) => ({ ...day, ...ownDay(solver, farm, settings, day.market, day.crops) }));
  const revenues = (taken: ArrayLike<number>, by: "revenue" | "most"): number => {
    let sum = 0;
    for (const market of markets)
      for (let k = 0; k < weathers.length; k++)
        sum += weathers[k]! * market[by](market.needs[k]!.map((need) => taken[need]!));
    return sum;
  };
  const count = (uses: readonly Use[]): Whole => {
    const taken = new Float64Array(needs.length);
    for (const { amounts } of uses) for (const [need, amount] of amounts) taken[need]! += amount;
    return {
      worth: uses.reduce((sum, { own }) => sum + own, 0) + revenues(taken, "revenue"),
      breaches: uses.reduce((sum, { gravity }) => sum + gravity, 0) + beyond(needs, taken),
    };
  };
  return { revenues, count };
}

/** Tries every combination of all tunnels' schedules and cuts; null when there are more than `most`. */
export function bruteForce(problem: FarmProblem, solver: Solver, most: number): Brute | null {
  const shared = sharedOf(problem);
  const all: (readonly Use[])[] = [];
  let combinations = 1;
  for (const [t, { problem: each }] of problem.tunnels.entries()) {
    const uses = everyWay(each).map((way) => shared.use(t, way));
    combinations *= uses.length;
    if (combinations > most) return null;
    all.push(uses);
  }
  const { revenues, count } = counter(problem, shared, solver);
  const { needs, breach } = shared;
  const T = all.length;
  const dense = all.map((uses) =>
    uses.map(({ amounts }) => Float64Array.from(needs, (_, r) => amounts.get(r) ?? 0)),
  );
  const sums = Array.from({ length: T + 1 }, () => new Float64Array(needs.length));
  const taken: number[] = [];
  let best = Number.NEGATIVE_INFINITY;
  let found: readonly number[] = [];
  let solved = 0;
  const go = (t: number, own: number): void => {
    if (t === T) {
      const weighed = own - breach * beyond(needs, sums[T]!);
      if (weighed + revenues(sums[T]!, "most") <= best) return;
      solved += 1;
      const whole = weighed + revenues(sums[T]!, "revenue");
      if (whole <= best) return;
      best = whole;
      found = [...taken];
      return;
    }
    for (const [w, use] of all[t]!.entries()) {
      const amounts = dense[t]![w]!;
      for (let r = 0; r < needs.length; r++) sums[t + 1]![r] = sums[t]![r]! + amounts[r]!;
      taken[t] = w;
      go(t + 1, own + use.own - breach * use.gravity);
    }
  };
  go(0, 0);
  const uses = found.map((w, t) => all[t]![w]!);
  return { ...count(uses), ways: uses.map(({ way }) => way), combinations, solved };
}
