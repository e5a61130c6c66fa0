import type { AtPick, Right, SuccessionOutlook } from "../decide/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";

/** A market, and how a succession can be in salad size for it. */
export interface MarketReach {
  readonly id: string;
  readonly market: string;
  readonly date: LocalDate;
  /** One of its picks lies in the days planned. */
  readonly planned: boolean;
  readonly right: Right;
}

const BEST: readonly Right[] = ["asItIs", "withCovers", "no"];

/** The better of what two picks of one market can have. */
const better = (a: Right, b: Right): Right => BEST.find((each) => each === a || each === b)!;

const sameMarket = (a: AtPick["pick"], b: AtPick["pick"]): boolean =>
  a.market.id === b.market.id && a.marketDate === b.marketDate;

/** Every market in sight, in order of its first pick. A market is reached by any of its picks. */
export const marketsOf = ({ atPicks }: Pick<SuccessionOutlook, "atPicks">): readonly MarketReach[] =>
  atPicks
    .filter(({ pick }, i) => atPicks.findIndex((other) => sameMarket(other.pick, pick)) === i)
    .map(({ pick }) => {
      const its = atPicks.filter((other) => sameMarket(other.pick, pick));
      return {
        id: pick.market.id,
        market: clean(pick.market.name),
        date: pick.marketDate,
        planned: its.some((each) => each.pick.planned),
        right: its.map(({ right }) => right).reduce(better),
      };
    });
