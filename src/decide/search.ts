import { gravityIn } from "./costs.ts";
import { counter, type Finished } from "./finished.ts";
import { allOf, bestOf, type Offered } from "./offered.ts";
import type { Prices } from "./prices.ts";
import { scopes } from "./scope.ts";
import { ROUNDING, walkTree } from "./tree.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";
import { prospectsOf, type Way, wayOf } from "./ways.ts";

/** A schedule with its cuts, and what it is worth at some prices. */
export interface Priced {
  /** Index of a lay for each interval. */
  readonly schedule: readonly number[];
  /** For each succession the index of its outlet; the number of its outlets leaves it uncut. */
  readonly cuts: readonly number[];
  readonly worth: number;
}

/** What a search came to. */
export interface Searched {
  /** The best first. */
  readonly found: readonly Priced[];
  /** Every schedule was looked at or ruled out by a bound. */
  readonly complete: boolean;
  /** No schedule is worth more than this or what was found, whichever is more. */
  readonly bound: number;
}

/** Searches one tunnel's schedules again and again at other prices. */
export interface Searcher {
  readonly problem: TunnelProblem;
  /** The best so many schedules with their cuts that are worth more than something. */
  search(prices: Prices, most: number, above: number): Searched;
  /** All that are worth more than something; it is not complete when there are more than so many. */
  near(prices: Prices, most: number, above: number): Searched;
  /** One schedule with its best cuts. */
  offerOne(prices: Prices, schedule: readonly number[]): Priced;
  /** The best of some schedules, with its best cuts. */
  bestAmong(prices: Prices, schedules: readonly (readonly number[])[]): Priced;
}

export function searcher(problem: TunnelProblem): Searcher {
  const { intervals: n, lays, changesPerWeek: R } = problem;
  const L = lays.length;
  const gravity = gravityIn(problem);
  const prospects = problem.successions.map((table) =>
    [...prospectsOf(problem, table)].sort((a, b) => a.outlet.interval - b.outlet.interval),
  );
  const { whole, narrowed } = scopes(problem, gravity, prospects);
  const waysAt = (prices: Prices): readonly (readonly Way[])[] =>
    prospects.map((each) => each.map((prospect) => wayOf(problem, prospect, prices)));

  /** The index of an outlet by its place among a bed's ways. */
  const cutOf = (ways: readonly Way[], w: number): number => ways[w]?.index ?? ways.length;

  /** What beds cost on top that only together go beyond what there is for them. */
  const crowding = (
    { tooMuch }: Prices,
    ways: readonly (readonly Way[])[],
    { load }: Finished,
    cuts: readonly number[],
  ): number => {
    if (tooMuch === null || cuts.length < 2) return 0;
    const loads = cuts.flatMap((w, j) => (w < ways[j]!.length ? [load(j, w)] : []));
    return loads.length < 2 ? 0 : loads.reduce((sum, each) => sum - tooMuch([each]), tooMuch(loads));
  };

  /** Offers every choice of cuts of a finished schedule that is worth more than the floor. */
  const offerCuts = (
    schedule: ArrayLike<number>,
    finished: Finished,
    prices: Prices,
    ways: readonly (readonly Way[])[],
    floor: () => number,
    offered: Offered<Priced>,
  ): void => {
    const { rest, beds } = finished;
    const later = new Float64Array(beds.length + 1);
    for (let j = beds.length - 1; j >= 0; j--) later[j] = later[j + 1]! + Math.max(...beds[j]!);
    const chosen: number[] = [];
    const choose = (j: number, sum: number): void => {
      if (!(sum + later[j]! > floor())) return;
      if (j === beds.length) {
        const worth = sum - crowding(prices, ways, finished, chosen);
        if (!(worth > floor())) return;
        const cuts = chosen.map((w, k) => cutOf(ways[k]!, w));
        offered.offer({ schedule: Array.from(schedule), cuts, worth });
        return;
      }
      const values = beds[j]!;
      const order = Array.from(values.keys()).sort((a, b) => values[b]! - values[a]!);
      for (const w of order) {
        if (!(sum + values[w]! + later[j + 1]! > floor())) break;
        chosen[j] = w;
        choose(j + 1, sum + values[w]!);
      }
    };
    choose(0, rest);
  };

  /** Finds the best cuts of schedules. */
  const bestOfEach = (
    prices: Prices,
    ways: readonly (readonly Way[])[],
  ): ((schedule: ArrayLike<number>) => Priced) => {
    const count = counter(problem, gravity, prices, ways);
    return (schedule) => {
      const best = bestOf<Priced>(1, Number.NEGATIVE_INFINITY);
      offerCuts(schedule, count(schedule), prices, ways, best.floor, best);
      return best.kept[0]!;
    };
  };

  const bestAmong = (prices: Prices, schedules: readonly (readonly number[])[]): Priced =>
    schedules
      .map(bestOfEach(prices, waysAt(prices)))
      .reduce((top, each) => (each.worth > top.worth ? each : top));

  /** A floor so many schedules are worth: the best of those that change once at most. */
  const seedFloor = (prices: Prices, ways: readonly (readonly Way[])[], most: number): number => {
    const best = bestOfEach(prices, ways);
    const seeds = bestOf<{ readonly worth: number }>(most, Number.NEGATIVE_INFINITY);
    const schedule = new Int32Array(n).fill(NOW);
    const offer = (): void => {
      if (!schedule.every((lay, i) => problem.possible[i * L + lay])) return;
      seeds.offer(best(schedule));
    };
    offer();
    for (let i = 0; i < n && R > 0; i++)
      for (let to = 0; to < L; to++) {
        if (to === NOW || gravity.idle[(i * L + NOW) * L + to]) continue;
        schedule.fill(NOW, 0, i).fill(to, i);
        offer();
      }
    return seeds.floor();
  };

  /** @param least - Known to be reached by as many as are wanted. */
  const run = (
    prices: Prices,
    ways: readonly (readonly Way[])[],
    count: (schedule: Int32Array) => Finished,
    offered: Offered<Priced>,
    least: number,
  ): Searched => {
    const floor = (): number => Math.max(least, offered.floor());
    const needed = floor() - ROUNDING;
    const scope = narrowed(whole(prices, ways, needed), prices, ways, needed);
    const leftOut = walkTree(problem, scope, floor, (schedule) =>
      offerCuts(schedule, count(schedule), prices, ways, floor, offered),
    );
    return { found: offered.kept, complete: leftOut === Number.NEGATIVE_INFINITY, bound: leftOut };
  };

  return {
    problem,
    offerOne: (prices, wanted) => bestAmong(prices, [wanted]),
    bestAmong,
    search(prices, most, above) {
      const ways = waysAt(prices);
      const count = counter(problem, gravity, prices, ways);
      const least = above === Number.NEGATIVE_INFINITY ? seedFloor(prices, ways, most) - ROUNDING : above;
      return run(prices, ways, count, bestOf<Priced>(most, above), least);
    },
    near(prices, most, above) {
      const ways = waysAt(prices);
      const count = counter(problem, gravity, prices, ways);
      const searched = run(prices, ways, count, allOf<Priced>(most, above), above);
      const found = [...searched.found].sort((a, b) => b.worth - a.worth);
      return { ...searched, found, complete: searched.complete && found.length <= most };
    },
  };
}
