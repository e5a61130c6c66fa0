import type { Columns, Cutting } from "./columns.ts";
import { ALONE, type Prices, samePrices } from "./prices.ts";
import type { Searcher } from "./search.ts";
import type { Relaxed } from "./solver.ts";
import { type FarmProblem, NOTHING, type Together } from "./together.ts";
import { NOW } from "./tunnelProblem.ts";

/** What no plan can be worth more than, and the farm's prices that show it. */
export interface Bound {
  readonly worth: number;
  readonly relaxed: Relaxed;
}

/** Rounds in which all schedules of each tunnel are searched for better ones at the farm's prices. */
const MOST_ROUNDS = 300;

/** Schedules of the best tunnel-alone search that the farm begins with. */
const FIRST = 8;

/** Schedules of it that are asked first at other prices: where one of them is better no other need be sought yet. */
const POOL = 60;

/** Schedules a tunnel answers with when all of them are searched. */
const ANSWERS = 4;

/**
 * What a round may still gain for the bound to be left as it is, as a share of a breach, which is about twice what the farm is worth
 * at most. The last rounds gain little and take as long as the first; what they would gain lies within the gap, so no better plan is
 * missed for it.
 */
const ENOUGH = 1e-4;

/** A tunnel's schedule from which a plan begins. */
export interface Begun extends Cutting {
  readonly tunnel: number;
}

/** Schedules to begin with: those given; where none are, those of the tunnel that are best alone, and a plan that is always there. */
function beginning(
  { tunnels }: FarmProblem,
  searchers: readonly Searcher[],
  breach: number,
  columns: Columns,
  begin: readonly Begun[],
): (readonly number[])[][] {
  for (const begun of begin) columns.add(begun.tunnel, begun);
  return searchers.map((each, t) => {
    const begun = begin.filter(({ tunnel }) => tunnel === t);
    if (begun.length > 0)
      return [...new Map(begun.map(({ schedule }) => [schedule.join(), schedule])).values()];
    const { intervals, lays, possible, successions } = tunnels[t]!.problem;
    const alone = ALONE(each.problem, breach);
    const stay = new Array<number>(intervals).fill(NOW);
    // Nothing cut takes no hands: there is always a plan to begin with.
    const uncut = (schedule: readonly number[]): Cutting => ({
      schedule,
      cuts: successions.map(({ outlets, mustCut }) => outlets.length - (mustCut ? 1 : 0)),
    });
    const { found: best } = each.search(alone, POOL, Number.NEGATIVE_INFINITY);
    // Where no schedule may be, what lies now stays.
    const first = best.length === 0 || stay.every((lay, i) => possible[i * lays.length + lay]) ? [stay] : [];
    for (const schedule of first)
      for (const found of [each.offerOne(alone, schedule), uncut(schedule)]) columns.add(t, found);
    for (const found of best.slice(0, FIRST)) columns.add(t, found);
    return [...first, ...best.map(({ schedule }) => schedule)];
  });
}

/** The most any schedule of a tunnel was worth at some prices. */
interface Answered {
  readonly prices: Prices;
  readonly most: number;
}

/**
 * The farm's program says what cloth, hands and kilograms are worth; each tunnel answers with its best schedule at those prices,
 * until none has one that is better by more than can matter.
 */
export function boundOf(
  problem: FarmProblem,
  shared: Together,
  searchers: readonly Searcher[],
  columns: Columns,
  begin: readonly Begun[],
): Bound {
  const pools = beginning(problem, searchers, shared.breach, columns, begin);
  const answered: Answered[] = [];
  const enough = ENOUGH * shared.breach;
  let now = columns.relaxed();
  let bound: Bound = { worth: Number.POSITIVE_INFINITY, relaxed: now };
  // Only full searches tell a bound, so only they are counted; of the pools there is an end, since each time columns are added.
  for (let rounds = 0; rounds < MOST_ROUNDS; ) {
    const asked = searchers.map((each, t) => ({
      each,
      t,
      here: shared.prices(now.prices, t),
      mine: now.prices[shared.one[t]!]!,
    }));
    const pooled = asked.filter(({ each, t, here, mine }) => {
      const found = each.bestAmong(here, pools[t]!);
      return found.worth > mine + NOTHING && columns.add(t, found);
    });
    if (pooled.length > 0) {
      now = columns.relaxed();
      continue;
    }
    rounds += 1;
    let added = 0;
    let gain = 0;
    for (const { each, t, here, mine } of asked) {
      const before = answered[t];
      if (
        before === undefined ||
        before.most > mine + NOTHING ||
        !samePrices(each.problem, before.prices, here)
      ) {
        const { found, bound: leftOut } = each.search(here, ANSWERS, mine + NOTHING);
        for (const answer of found) {
          if (!columns.add(t, answer)) continue;
          added += 1;
          pools[t]!.push(answer.schedule);
        }
        answered[t] = { prices: here, most: Math.max(found[0]?.worth ?? mine + NOTHING, leftOut) };
      }
      gain += Math.max(0, answered[t]!.most - mine);
    }
    if (now.objective + gain < bound.worth) bound = { worth: now.objective + gain, relaxed: now };
    if (added === 0 || gain <= enough) break;
    now = columns.relaxed();
  }
  return bound;
}
