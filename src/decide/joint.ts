import { type Evaluation, evaluate } from "./evaluate.ts";
import type { LimitName } from "./outcome.ts";
import { ALONE } from "./prices.ts";
import { type Priced, searcher } from "./search.ts";
import type { Relaxed, Solver } from "./solver.ts";
import { type FarmProblem, outdoes, type ProgramColumn, type Together, together } from "./together.ts";
import { NOW } from "./tunnelProblem.ts";

/** The best plan of all tunnels together. */
export interface Joint {
  readonly tunnels: readonly Chosen[];
  /** Worth of the whole, orders and stalls counted; without what limits that give way weigh. */
  readonly worth: number;
  /** What markets together make of it beside what each kilogram is worth alone: orders, stalls, mixes. */
  readonly orders: number;
  /** No plan can be worth more than this; found by other means than the plan. */
  readonly bound: number;
  /** The plan is the best there is, up to a millionth. */
  readonly proved: boolean;
  /** Limits of hands, hours and cold room that give way. */
  readonly overrun: readonly LimitName[];
  /** Schedules that were weighed against each other. */
  readonly weighed: readonly WeighedSchedule[];
  /** The plan with another schedule for one tunnel, its beds cut for what is best then; all else stays. */
  instead(tunnel: number, schedule: readonly number[]): Instead;
}

/** What another schedule for one tunnel would make of the plan. */
export interface Instead {
  readonly evaluation: Evaluation;
  readonly worth: number;
  readonly orders: number;
  readonly overrun: readonly LimitName[];
}

/** A schedule with its cuts of one tunnel. */
export interface WeighedSchedule {
  readonly tunnel: number;
  readonly chosen: Chosen;
}

/** One tunnel's part of it. */
export interface Chosen {
  readonly schedule: readonly number[];
  readonly cuts: readonly number[];
  readonly evaluation: Evaluation;
}

/** A tunnel's schedule with its cuts from which a plan begins. */
export interface Begun extends Omit<Chosen, "evaluation"> {
  readonly tunnel: number;
}

/** Rounds of asking each tunnel for a better schedule at the farm's prices. */
const MOST_ROUNDS = 300;

/** Schedules of one tunnel weighed at most in the last choice, and places of the solver's own tree. */
const MOST_NEAR = 2000;
const MOST_PLACES = 20_000;

/** Times each tunnel answers the plan at hand, and with how many schedules. */
const MOST_PASSES = 4;
const ANSWERS = 12;

/** Differences of worth below this are none. */
const NOTHING = 1e-6;

/** Schedules of the best tunnel-alone search that the farm begins with. */
const FIRST = 8;

/** Schedules of it that are asked first at other prices: where one of them is better no other need be sought yet. */
const POOL = 120;

interface Column extends WeighedSchedule {
  readonly number: number;
  readonly column: ProgramColumn;
}

const keyOf = ({ schedule, cuts }: Pick<Priced, "schedule" | "cuts">): string =>
  `${schedule.join()} ${cuts.join()}`;

/**
 * Finds the schedules of all tunnels that are worth most together. The farm's program says what cloth, hands and kilograms are
 * worth; each tunnel answers with its best schedule at those prices, until none has a better one: that gives the bound. Then every schedule
 * that could still be part of a better plan than the one at hand is weighed, and the solver chooses among them.
 *
 * @param begin - Schedules with their cuts to begin from; a tunnel without any begins from what is best for it alone.
 */
export function planTogether(problem: FarmProblem, solver: Solver, begin: readonly Begun[] = []): Joint {
  const { tunnels } = problem;
  const shared = together(problem, solver);
  const searchers = tunnels.map(({ problem: each }) => searcher(each));
  const columns: Column[] = [];
  const known = tunnels.map(() => new Set<string>());
  const add = (tunnel: number, found: Pick<Priced, "schedule" | "cuts">): boolean => {
    const key = keyOf(found);
    if (known[tunnel]!.has(key)) return false;
    known[tunnel]!.add(key);
    const evaluation = evaluate(tunnels[tunnel]!.problem, found.schedule, found.cuts);
    const column = shared.column(tunnel, found.schedule, evaluation);
    const chosen = { schedule: found.schedule, cuts: found.cuts, evaluation };
    columns.push({ tunnel, number: shared.add(tunnel, column), column, chosen });
    return true;
  };
  /** Of some schedules those that none of the others outdoes. */
  const undominated = (tunnel: number, found: readonly Priced[]): readonly Priced[] => {
    const kept: { readonly found: Priced; readonly column: ProgramColumn }[] = [];
    for (const each of found) {
      const evaluation = evaluate(tunnels[tunnel]!.problem, each.schedule, each.cuts);
      const column = shared.column(tunnel, each.schedule, evaluation);
      if (!kept.some((other) => outdoes(other.column, column, shared.exact)))
        kept.push({ found: each, column });
    }
    return kept.map((each) => each.found);
  };

  for (const { tunnel, ...found } of begin) add(tunnel, found);
  const pools = searchers.map((each, t) => {
    const begun = begin.filter(({ tunnel }) => tunnel === t);
    if (begun.length > 0)
      return [...new Map(begun.map(({ schedule }) => [schedule.join(), schedule])).values()];
    const alone = ALONE(each.problem, shared.breach);
    const { intervals, lays, possible } = each.problem;
    const stay = new Array<number>(intervals).fill(NOW);
    // Nothing cut takes no hands: there is always a plan to begin with.
    const uncut = (schedule: readonly number[]): Pick<Priced, "schedule" | "cuts"> => ({
      schedule,
      cuts: each.problem.successions.map(({ outlets, mustCut }) => outlets.length - (mustCut ? 1 : 0)),
    });
    const { found: best } = each.search(alone, POOL, Number.NEGATIVE_INFINITY);
    // Where no schedule may be, what lies now stays.
    const first = best.length === 0 || stay.every((lay, i) => possible[i * lays.length + lay]) ? [stay] : [];
    for (const schedule of first)
      for (const found of [each.offerOne(alone, schedule), uncut(schedule)]) add(t, found);
    for (const found of best.slice(0, FIRST)) add(t, found);
    return [...first, ...best.map(({ schedule }) => schedule)];
  });

  let bound = Number.POSITIVE_INFINITY;
  let prices = shared.program.relaxed();
  for (let round = 0, now = prices; round < MOST_ROUNDS; round++) {
    const pooled = searchers.filter((each, t) => {
      const mine = now.prices[shared.one[t]!]!;
      const found = each.bestAmong(shared.prices(now.prices, t), pools[t]!);
      return found.worth > mine + NOTHING && add(t, found);
    });
    if (pooled.length > 0) {
      now = shared.program.relaxed();
      continue;
    }
    let better = 0;
    let gain = 0;
    searchers.forEach((each, t) => {
      const mine = now.prices[shared.one[t]!]!;
      const searched = each.search(shared.prices(now.prices, t), 1, mine + NOTHING);
      const found = searched.found[0];
      if (found !== undefined && add(t, found)) {
        better += 1;
        pools[t]!.push(found.schedule);
      }
      gain += Math.max(0, (found?.worth ?? mine) - mine, searched.bound - mine);
    });
    // The prices kept are those of the bound.
    if (now.objective + gain < bound) [bound, prices] = [now.objective + gain, now];
    if (better === 0) break;
    now = shared.program.relaxed();
  }

  const take = (values: Float64Array): readonly Column[] =>
    tunnels.map((_, t) => columns.find(({ tunnel, number }) => tunnel === t && values[number]! > 0.5)!);
  /** Prices with the columns of a plan alone. */
  const pricesOf = (taken: readonly Column[]): Relaxed => {
    const on = new Set(taken.map(({ number }) => number));
    for (const { number } of columns) shared.program.limit(number, on.has(number) ? 1 : 0);
    const relaxed = shared.program.relaxed();
    for (const { number } of columns) shared.program.limit(number, 1);
    return relaxed;
  };
  let chosen = choose(shared, columns);
  const near = (): number => bound - chosen.objective - NOTHING * Math.max(1, Math.abs(bound));
  // Each tunnel answers to what the others do in the plan at hand; the solver chooses anew among all.
  for (let pass = 0; pass < MOST_PASSES && near() > 0; pass++) {
    const taken = take(chosen.values);
    const { prices: here } = pricesOf(taken);
    const added = searchers.map((each, t) => {
      const { found } = each.search(shared.prices(here, t), ANSWERS, Number.NEGATIVE_INFINITY);
      return found.filter((answer) => add(t, answer)).length > 0;
    });
    if (!added.some((some) => some)) break;
    const again = choose(shared, columns);
    const better = again.objective > chosen.objective + NOTHING;
    chosen = again;
    if (!better) break;
  }
  let proved = chosen.proved && near() <= 0;
  if (!proved) {
    // At the prices of the bound a schedule that falls behind by more than the gap is part of no better plan.
    const gap = bound - chosen.objective + NOTHING;
    const all: (readonly Priced[])[] = [];
    for (const [t, each] of searchers.entries()) {
      const mine = prices.prices[shared.one[t]!]!;
      const { found, complete } = each.near(shared.prices(prices.prices, t), MOST_NEAR, mine - gap);
      if (!complete) break;
      all.push(found);
    }
    if (all.length === searchers.length) {
      all.forEach((found, t) => {
        for (const each of undominated(t, found)) add(t, each);
      });
      chosen = choose(shared, columns);
      proved = chosen.proved;
      bound = Math.min(bound, chosen.bound);
    }
  }
  const { values } = chosen;
  const taken = take(values);
  /** What some columns come to, given the program's own answer for them. */
  const told = (parts: readonly Column[], objective: number, amounts: Float64Array) => {
    const sum = (of: (evaluation: Evaluation) => number): number =>
      parts.reduce((total, { chosen: { evaluation } }) => total + of(evaluation), 0);
    const weight =
      parts.reduce((total, { column }) => total + column.weight, 0) +
      shared.overWorth(amounts) +
      shared.offset;
    const worth = objective + weight;
    const overrun = new Set([
      ...parts.flatMap(({ column }) => [...column.beyond]),
      ...shared.overrun(amounts),
    ]);
    return { worth, orders: worth - sum((each) => each.worth), overrun: [...overrun], weight };
  };
  const { weight, ...whole } = told(taken, chosen.objective, values);
  return {
    ...whole,
    tunnels: taken.map((column) => column.chosen),
    bound: Math.max(whole.worth, bound + weight),
    proved,
    weighed: [...columns],
    instead(tunnel, schedule) {
      const stay = taken[tunnel]!.chosen.cuts;
      const { cuts } = searchers[tunnel]!.offerOne(shared.prices(prices.prices, tunnel), schedule);
      const tries = [stay, cuts].map((of): Instead => {
        add(tunnel, { schedule, cuts: of });
        const key = keyOf({ schedule, cuts: of });
        const other = columns.find((column) => column.tunnel === tunnel && keyOf(column.chosen) === key)!;
        const parts = taken.map((column, t) => (t === tunnel ? other : column));
        const on = new Set(parts.map(({ number }) => number));
        for (const { number } of columns) shared.program.limit(number, on.has(number) ? 1 : 0);
        const { objective, values: amounts } = shared.program.relaxed();
        const { worth, orders, overrun } = told(parts, objective, amounts);
        return { evaluation: other.chosen.evaluation, worth, orders, overrun };
      });
      return tries.reduce((top, each) => (each.worth > top.worth ? each : top));
    },
  };
}

function choose({ program }: Together, columns: readonly Column[]) {
  return program.whole(
    columns.map(({ number }) => number),
    MOST_PLACES,
  );
}
