import { type Costs, costsOf, type Gravity } from "./costs.ts";
import { type AllComing, comingOf, type Hope, hopeOf } from "./hope.ts";
import { type Path, pathOf } from "./path.ts";
import type { Prices } from "./prices.ts";
import { openSettings } from "./tails.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";
import type { Prospect, Way } from "./ways.ts";

/** What a search lays out among, at some prices. */
export interface Scope {
  /** Lays that may lie: [interval × lays + lay]. */
  readonly possible: Uint8Array;
  readonly costs: Costs;
  readonly path: Path;
  readonly hope: Hope;
  /** The most that beds can bring, whatever covers cost. */
  readonly beds: number;
  /** The most each bed can bring. */
  readonly upper: readonly number[];
}

/** Makes scopes of one tunnel; what can come is worked out once for what is left open. */
export function scopes(
  problem: TunnelProblem,
  gravity: Gravity,
  prospects: readonly (readonly Prospect[])[],
) {
  const { settings, lays, changesPerWeek: R, week } = problem;
  const [S, L] = [settings.length, lays.length];
  const depths = 2 + R * new Set(week).size;
  const known = new Map<string, AllComing>();
  const comingUnder = (open: Uint8Array): AllComing => {
    const key = open.join("");
    const before = known.get(key);
    if (before !== undefined) return before;
    const made = comingOf(problem, open, prospects);
    known.set(key, made);
    return made;
  };

  const scopeOf = (prices: Prices, ways: readonly (readonly Way[])[], possible: Uint8Array): Scope => {
    const costs = costsOf(problem, gravity, prices, possible);
    const coming = comingUnder(openSettings({ ...problem, possible }));
    const path = pathOf(problem, costs, prices, ways, depths);
    const first: number[] = [];
    for (let to = 0; to < L; to++) {
      if (costs.step[NOW * L + to] === Number.POSITIVE_INFINITY || (to !== NOW && R === 0)) continue;
      first.push((to === NOW ? R : R - 1) * S + lays[to]!.setting);
    }
    const hope = hopeOf(problem, path, coming, ways, prices.breach, first);
    const most = (of: (k: number) => number): number =>
      first.reduce((top, k) => Math.max(top, of(k)), Number.NEGATIVE_INFINITY);
    const upper = problem.successions.map((_, j) => most((k) => hope.bed(j, 0, 0, k, Number.NEGATIVE_INFINITY)));
    const beds = upper.reduce((sum, each) => sum + each, most((k) => hope.rest(0, k)));
    return { possible, costs, path, hope, beds, upper };
  };

  /** Leaves out lays that are too dear to lie in an interval whatever else is done. */
  return {
    scopeOf,
    narrowed(scope, prices, ways, floor) {
      const { possible, costs, beds } = scope;
      const left = possible.map((open, k) => (open === 1 && beds - costs.through[k]! > floor ? 1 : 0));
      return left.every((open, k) => open === possible[k]) ? scope : scopeOf(prices, ways, left);
    },
  };
}
