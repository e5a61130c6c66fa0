import {
  type FarmProblem,
  type Joint,
  NOW,
  type Priced,
  planTogether,
  type Solver,
  searcher,
} from "../../src/decide/index.ts";
import { counter, type Whole } from "./bruteForce.ts";
import { bestPriced, waysAbove } from "./everyPriced.ts";
import { everyWay, wayOf } from "./everyWay.ts";
import { type OwnPrices, type OwnProgram, ownProgram, worthAt } from "./ownProgram.ts";
import { type Need, type Shared, sharedOf, type Use } from "./ownShared.ts";

/** A plan that was found, counted by plain sums. */
export interface Counted extends Whole {
  readonly shared: Shared;
  readonly uses: readonly Use[];
  /** Worth less what breaches weigh: what a plan is to be greatest in. */
  readonly value: number;
}

/** How good any plan can be at most. */
export interface Reference {
  /** No plan's value is more. */
  readonly best: number;
  /** The same of ways taken in parts. */
  readonly linear: number;
  /** What binds: a little more of it would be worth something. */
  readonly binds: ReadonlySet<Need["kind"]>;
  /** Ways that were columns. */
  readonly ways: number;
  /** Whether `best` is that of whole ways, not of parts. */
  readonly whole: boolean;
}

const ENDLESS = 10_000_000;

/** Differences of worth that are rounding. */
const NOTHING = 1e-6;

const useOf = (
  problem: FarmProblem,
  shared: Shared,
  t: number,
  schedule: readonly number[],
  cuts: readonly number[],
): Use | undefined => {
  const way = wayOf(problem.tunnels[t]!.problem, schedule, cuts);
  return way && shared.use(t, way);
};

/** Counts a plan; null where one of its schedules may not be. */
export function counted(problem: FarmProblem, joint: Joint, solver: Solver): Counted | null {
  const shared = sharedOf(problem);
  const uses: Use[] = [];
  for (const [t, { schedule, cuts }] of joint.tunnels.entries()) {
    const use = useOf(problem, shared, t, schedule, cuts);
    if (use === undefined) return null;
    uses.push(use);
  }
  const whole = counter(problem, shared, solver).count(uses);
  return { ...whole, shared, uses, value: whole.worth - shared.breach * whole.breaches };
}

/** The farm with nothing changed: nothing can be laid but what lies now. */
export const leftAlone = (problem: FarmProblem): FarmProblem => ({
  ...problem,
  tunnels: problem.tunnels.map(({ id, problem: each }) => ({
    id,
    problem: {
      ...each,
      changesPerWeek: 0,
      possible: each.possible.map((_, k) => Number(k % each.lays.length === NOW)),
    },
  })),
});

/** What leaving everything as it is comes to, its beds cut for what is best then. */
export const unchanged = (problem: FarmProblem, solver: Solver): Counted => {
  const still = leftAlone(problem);
  return counted(still, planTogether(still, solver), solver)!;
};

const binding = ({ needs }: Shared, { needs: prices }: OwnPrices): ReadonlySet<Need["kind"]> =>
  new Set(
    needs.filter(({ kind }, r) => kind !== "sale" && Math.abs(prices[r]!) > NOTHING).map(({ kind }) => kind),
  );

/** The best of some ways whole; those of the plan are among them, so there is one. */
function wholeOf(program: OwnProgram): number {
  const { bound, proved, objective } = program.whole(ENDLESS);
  program.close();
  return proved ? objective : bound;
}

/**
 * The best plan with every way of every tunnel as a column. Ways whose reduced cost lies beyond the difference between the
 * program in parts and the plan at hand are in no better plan and are left out when ways must be whole.
 */
export function allColumns(
  problem: FarmProblem,
  { shared, uses, value }: Counted,
  solver: Solver,
): Reference {
  const parts = ownProgram(problem, shared, solver);
  const all = problem.tunnels.map(({ problem: each }, t) => everyWay(each).map((way) => shared.use(t, way)));
  all.forEach((list, t) => {
    for (const use of list) parts.add(t, use);
  });
  const prices = parts.relaxed();
  const { ways } = parts;
  parts.close();
  const gap = prices.objective - value + NOTHING;
  const some = ownProgram(problem, shared, solver);
  all.forEach((list, t) => {
    for (const use of [
      uses[t]!,
      ...list.filter((each) => worthAt(each, prices.needs, shared.breach) > prices.tunnels[t]! - gap),
    ])
      some.add(t, use);
  });
  return { best: wholeOf(some), linear: prices.objective, binds: binding(shared, prices), ways, whole: true };
}

/** Rounds in which a search suggests ways, and in which all are tried. */
const SUGGESTED = 100;
const TRIED = 3;

/**
 * A bound by prices: whatever prices needs have, no plan is worth more than each tunnel's best way at them, tried one by one,
 * and what is left over sells for. Prices settle with ways that a search suggests; the bound does not rest on it. Where that
 * bound is loose, every way within the gap is a column and must be whole.
 *
 * @param loose - Share of the worth from which on the bound is loose.
 */
export function byPrices(
  problem: FarmProblem,
  joint: Joint,
  { shared, uses, value, worth }: Counted,
  loose: number,
  solver: Solver,
): Reference {
  const parts = ownProgram(problem, shared, solver);
  const add = (t: number, { schedule, cuts }: Pick<Priced, "schedule" | "cuts">): void => {
    const use = useOf(problem, shared, t, schedule, cuts);
    if (use !== undefined) parts.add(t, use);
  };
  for (const { tunnel, chosen } of joint.weighed) add(tunnel, chosen);
  const searchers = problem.tunnels.map(({ problem: each }) => searcher(each));
  const scale = Math.max(1, Math.abs(worth));
  let now = parts.relaxed();
  for (let round = 0; round < SUGGESTED; round++) {
    let gain = 0;
    searchers.forEach((each, t) => {
      const floor = now.tunnels[t]! + NOTHING;
      const [best] = each.search(shared.prices(t, now.needs), 1, floor).found;
      if (best === undefined) return;
      gain += best.worth - floor;
      add(t, best);
    });
    if (gain < NOTHING * scale) break;
    now = parts.relaxed();
  }
  let linear = Number.POSITIVE_INFINITY;
  let at = now;
  let tops: readonly number[] = [];
  for (let round = 0; round < TRIED; round++) {
    const best = problem.tunnels.map(
      ({ problem: each }, t) => bestPriced(each, shared.prices(t, now.needs))!,
    );
    const gains = best.map((each, t) => Math.max(0, each.worth - now.tunnels[t]!));
    const bound = gains.reduce((sum, gain) => sum + gain, now.objective);
    if (bound < linear) [linear, at, tops] = [bound, now, best.map((each) => each.worth)];
    if (bound - now.objective < 10 * NOTHING * scale) break;
    best.forEach(({ way }, t) => {
      if (gains[t]! > 0) parts.add(t, shared.use(t, way));
    });
    now = parts.relaxed();
  }
  const { ways } = parts;
  parts.close();
  const binds = binding(shared, at);
  const gap = linear - value;
  if (gap <= loose * scale) return { best: linear, linear, binds, ways, whole: false };
  const near = ownProgram(problem, shared, solver);
  problem.tunnels.forEach(({ problem: each }, t) => {
    near.add(t, uses[t]!);
    for (const way of waysAbove(each, shared.prices(t, at.needs), tops[t]! - gap - NOTHING))
      near.add(t, shared.use(t, way));
  });
  const columns = near.ways;
  return { best: wholeOf(near), linear, binds, ways: columns, whole: true };
}
