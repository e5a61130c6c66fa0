import { type Begun, boundOf } from "./bound.ts";
import { type Chosen, type Column, type Columns, columnsOf } from "./columns.ts";
import type { Evaluation } from "./evaluate.ts";
import type { LimitName } from "./outcome.ts";
import { inPairs } from "./pairs.ts";
import { searcher } from "./search.ts";
import type { Relaxed, Solver, Whole } from "./solver.ts";
import { type FarmProblem, NOTHING, together } from "./together.ts";

/** The best plan of all tunnels together. */
export interface Joint {
  readonly tunnels: readonly Chosen[];
  /** Worth of the whole, orders and stalls counted; without what limits that give way weigh, and what differs from a sheet given out. */
  readonly worth: number;
  /** What markets together make of it beside what each kilogram is worth alone: orders, stalls, mixes. */
  readonly orders: number;
  /** No plan can be worth more than this that goes no further beyond limits and differs from a sheet given out no more. */
  readonly bound: number;
  /** The plan is the best there is, up to a millionth. */
  readonly proved: boolean;
  /** Limits of hands, hours and cold room that give way. */
  readonly overrun: readonly LimitName[];
  /** Schedules that were weighed against each other. */
  readonly weighed: readonly Column[];
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

/** Schedules of one tunnel weighed at most in the last choice, and places of the solver's own tree. */
const MOST_NEAR = 2000;
const MOST_PLACES = 20_000;

/** Schedules of all tunnels together, and at least of each, that are tried when there are too many to weigh each. */
const CLOSEST = 500;
const LEAST_CLOSE = 30;

/** Turns of trying them: a better plan leaves fewer that could be part of a better one still. */
const MOST_TURNS = 2;

/** Places of the solver's tree where nothing is to be proved. */
const FEW_PLACES = 300;

/** A gap as wide as this, as a share of a breach, is worth looking at tunnels in pairs for. judgement */
const WIDE = 0.004;

/** Times each tunnel answers the plan at hand, and with how many schedules. */
const MOST_PASSES = 4;
const ANSWERS = 12;

/**
 * Finds the schedules of all tunnels that are worth most together. First what no plan can be worth more than; then every schedule
 * that could still be part of a better plan than the one at hand is weighed, and the solver chooses among them.
 *
 * @param begin - Schedules to begin from; a tunnel without any begins from what is best for it alone.
 */
export function planTogether(problem: FarmProblem, solver: Solver, begin: readonly Begun[] = []): Joint {
  const { tunnels } = problem;
  const shared = together(problem, solver);
  const searchers = tunnels.map(({ problem: each }) => searcher(each));
  const columns = columnsOf(problem, shared);
  const limit = boundOf(problem, shared, searchers, columns, begin);
  const { worth: linear, relaxed } = limit;
  const only = (parts: readonly Column[]): Relaxed => columns.relaxed((column) => parts.includes(column));
  let bound = linear;
  let chosen = choose(columns, FEW_PLACES);
  // A part of what the farm is worth, not of what its breaches weigh: a breach is worth a little more than twice the whole.
  const little = (NOTHING * shared.breach) / 10;
  const apart = (): number => bound - chosen.objective - little;
  /** Takes a choice that is better than the one at hand. */
  const bettered = (again: Whole): boolean => {
    const better = again.objective > chosen.objective + NOTHING;
    if (better) chosen = again;
    return better;
  };
  /** Each tunnel answers to what the others do in the plan at hand; the solver chooses anew among all. */
  const answer = (): boolean => {
    const { prices: here } = only(columns.taken(chosen.values));
    const added = searchers.map((each, t) => {
      const { found } = each.search(shared.prices(here, t), ANSWERS, Number.NEGATIVE_INFINITY);
      return found.filter((one) => columns.add(t, one)).length > 0;
    });
    return added.some((some) => some) && bettered(choose(columns, FEW_PLACES));
  };
  /** The schedules that could be part of a better plan, or where there are too many the closest of those looked at. */
  const near = (): boolean => {
    // At the prices of the bound a schedule that falls behind by more than the gap is part of no better plan.
    const gap = bound - chosen.objective + little;
    const close = searchers.map((each, t) =>
      each.near(shared.prices(relaxed.prices, t), MOST_NEAR, relaxed.prices[shared.one[t]!]! - gap),
    );
    const all = close.every(({ complete }) => complete);
    const most = all ? MOST_NEAR : Math.max(LEAST_CLOSE, Math.ceil(CLOSEST / close.length));
    close.forEach(({ found }, t) => {
      for (const one of columns.undominated(t, found, most)) columns.add(t, one);
    });
    const again = choose(columns, all ? MOST_PLACES : FEW_PLACES);
    // Nothing is proved by some of them.
    if (all && again.proved) bound = Math.min(bound, again.bound);
    if (all) proved = again.proved;
    return bettered(again) && !all;
  };
  let proved = false;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    for (let pass = 0; pass < MOST_PASSES && apart() > 0 && answer(); pass++);
    proved = apart() <= 0;
    if (proved || !near()) break;
  }
  if (!proved && apart() > WIDE * shared.breach) bettered(inPairs(shared, searchers, columns, limit, chosen));
  const { values } = chosen;
  const taken = columns.taken(values);
  /** What some columns come to, given the program's own answer for them. */
  const told = (parts: readonly Column[], objective: number, amounts: Float64Array) => {
    const sum = (of: (evaluation: Evaluation) => number): number =>
      parts.reduce((total, { chosen: { evaluation } }) => total + of(evaluation), 0);
    const given = parts.reduce((total, { column }) => total + column.weight, 0) + shared.overWorth(amounts);
    const weight = given - sum(({ parts }) => parts.calm) + shared.offset;
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
    // A better plan of the last turn may meet the bound.
    proved: proved || apart() <= 0,
    weighed: [...columns.all],
    instead(tunnel, schedule) {
      const stay = taken[tunnel]!.chosen.cuts;
      const { cuts } = searchers[tunnel]!.offerOne(shared.prices(relaxed.prices, tunnel), schedule);
      const tries = [stay, cuts].map((of): Instead => {
        const other = columns.of(tunnel, { schedule, cuts: of });
        const parts = taken.map((column, t) => (t === tunnel ? other : column));
        const { objective, values: amounts } = only(parts);
        const { worth, orders, overrun } = told(parts, objective, amounts);
        return { evaluation: other.chosen.evaluation, worth, orders, overrun };
      });
      return tries.reduce((top, each) => (each.worth > top.worth ? each : top));
    },
  };
}

/** @param places - More where no whole solution is found in so few; where none is found at all, what each tunnel begins with. */
function choose(columns: Columns, places: number): Whole {
  const chosen = columns.whole(places);
  if (columns.taken(chosen.values).every((column) => column !== undefined)) return chosen;
  if (places < MOST_PLACES) return choose(columns, MOST_PLACES);
  const first = columns.all.filter(
    ({ tunnel }, i) => columns.all.findIndex((other) => other.tunnel === tunnel) === i,
  );
  return {
    ...columns.relaxed((column) => first.includes(column)),
    proved: false,
    bound: Number.POSITIVE_INFINITY,
  };
}
