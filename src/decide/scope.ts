import { type Costs, costsOf, type Gravity, stepsOf } from "./costs.ts";
import { type AllComing, comingOf, type Hope, hopeOf } from "./hope.ts";
import { type Path, pathOf } from "./path.ts";
import type { Prices } from "./prices.ts";
import { openSettings } from "./tails.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";
import { isClosed, type Prospect, type Way } from "./ways.ts";

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
export interface Scopes {
  /** Everything that is possible at all. @param floor - What is worth no more is of no interest. */
  whole(prices: Prices, ways: readonly (readonly Way[])[], floor: number): Scope;
  /** Leaves out lays that are too dear to lie in an interval whatever else is done. */
  narrowed(scope: Scope, prices: Prices, ways: readonly (readonly Way[])[], floor: number): Scope;
}

export function scopes(
  problem: TunnelProblem,
  gravity: Gravity,
  prospects: readonly (readonly Prospect[])[],
): Scopes {
  const { settings, lays, changesPerWeek: R, week } = problem;
  const [S, L] = [settings.length, lays.length];
  const depths = 2 + R * new Set(week).size;
  const all = comingOf(problem, openSettings(problem), prospects);

  const scopeOf = (
    prices: Prices,
    ways: readonly (readonly Way[])[],
    costs: Costs,
    possible: Uint8Array,
    coming: AllComing,
    known: readonly ArrayLike<number>[],
    needed: readonly number[],
  ): Scope => {
    const path = pathOf(problem, costs, prices, ways, depths);
    const first: number[] = [];
    for (let to = 0; to < L; to++) {
      if (to !== NOW && R === 0) continue;
      const then = to === NOW ? R : R - 1;
      // Never where no schedule goes on from it.
      if (costs.step[NOW * L + to]! + costs.after[then * L + to]! < Number.POSITIVE_INFINITY)
        first.push(then * S + lays[to]!.setting);
    }
    const hope = hopeOf(problem, path, coming, ways, prices.breach, first, known, needed);
    const most = (of: (k: number) => number): number =>
      first.reduce((top, k) => Math.max(top, of(k)), Number.NEGATIVE_INFINITY);
    const upper = hope.most.map((each, j) =>
      Math.max(
        most((k) => hope.passed(j, 0, k)),
        ...each,
      ),
    );
    const beds = upper.reduce(
      (sum, each) => sum + each,
      most((k) => hope.rest(0, k)),
    );
    return { possible, costs, path, hope, beds, upper };
  };

  return {
    whole(prices, ways, floor) {
      const costs = costsOf(problem, stepsOf(problem, gravity, prices), problem.possible);
      // Whole, in full light and unharmed.
      const known = ways.map((each) =>
        each.map((way) =>
          isClosed(way, 0, way.share.length - 1)
            ? Number.NEGATIVE_INFINITY
            : Math.max(0, way.highest - way.cutting) + way.table.regrown,
        ),
      );
      const upper = known.map((each) => Math.max(0, ...each));
      const beds = upper.reduce((sum, each) => sum + each, 0);
      const needed = upper.map((each) => floor - (beds - costs.least - each));
      return scopeOf(prices, ways, costs, problem.possible, all, known, needed);
    },
    narrowed(scope, prices, ways, floor) {
      const { costs, beds, upper, hope } = scope;
      const possible = scope.possible.map((open, k) =>
        open === 1 && beds - costs.through[k]! > floor ? 1 : 0,
      );
      if (possible.every((open, k) => open === scope.possible[k])) return scope;
      const dearer = costsOf(problem, costs.step, possible);
      const needed = upper.map((each) => floor - (beds - dearer.least - each));
      const coming = comingOf(problem, openSettings({ ...problem, possible }), prospects);
      return scopeOf(prices, ways, dearer, possible, coming, hope.most, needed);
    },
  };
}
