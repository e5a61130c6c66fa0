import type { Bound } from "./bound.ts";
import type { Column, Columns } from "./columns.ts";
import type { Searcher } from "./search.ts";
import type { Whole } from "./solver.ts";
import { NOTHING, type Together } from "./together.ts";

/** Tunnels that are freed with another, and times another is. */
const MOST_PARTNERS = 8;
const MOST_TURNS = 2;

/** Times two freed tunnels answer each other, and with how many schedules. */
const ROUNDS = 3;
const ANSWERS = 4;

/** Places of the solver's tree. */
const PLACES = 300;

/**
 * A plan bettered two tunnels at a time, where hands or cold room are short: the tunnel whose schedule falls most behind at the bound's
 * prices is freed with each of those that come next, all others staying. The two answer to what is left for them, and so come to
 * schedules that make room for one another, which no prices of the whole farm ask for.
 */
export function inPairs(
  shared: Together,
  searchers: readonly Searcher[],
  columns: Columns,
  { relaxed: { prices: dear } }: Bound,
  plan: Whole,
): Whole {
  const freed = (pair: readonly number[], best: Whole): Whole => {
    const taken = columns.taken(best.values);
    const isOpen = (column: Column): boolean => pair.includes(column.tunnel) || taken.includes(column);
    let now = columns.relaxed(isOpen);
    for (let round = 0; round < ROUNDS; round++) {
      const { prices } = now;
      const answered = pair.map((t) => {
        const mine = prices[shared.one[t]!]! + NOTHING;
        const { found } = searchers[t]!.search(shared.prices(prices, t), ANSWERS, mine);
        return found.filter((one) => columns.add(t, one)).length;
      });
      if (answered.every((added) => added === 0)) break;
      now = columns.relaxed(isOpen);
    }
    if (now.objective <= best.objective + NOTHING) return best;
    const again = columns.whole(PLACES, isOpen);
    return again.objective > best.objective + NOTHING ? again : best;
  };
  let best = plan;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const behind = columns.taken(best.values).map(({ chosen }, t) => {
      const { worth } = searchers[t]!.offerOne(shared.prices(dear, t), chosen.schedule);
      return dear[shared.one[t]!]! - worth;
    });
    const [most, ...others] = [...behind.keys()].sort((a, b) => behind[b]! - behind[a]!);
    if (most === undefined || behind[most]! <= NOTHING) break;
    const better = others.slice(0, MOST_PARTNERS).reduce((top, other) => freed([most, other], top), best);
    if (better === best) break;
    best = better;
  }
  return best;
}
