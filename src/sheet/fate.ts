import type { Fate, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { clean } from "./clean.ts";
import { day, dayOf, days, marketDay } from "./words.ts";

type Sold = "salad" | "braising" | "small";

/** The words of one use, for a whole sentence each. */
const PICK: Readonly<Record<Sold, (when: string) => string>> = {
  salad: (when) => `Pick ${when}.`,
  braising: (when) => `Pick ${when} as braising greens.`,
  small: (when) => `Pick ${when}, below salad size.`,
};
const HOLD: Readonly<Record<Sold, (when: string, long: string, market: string) => string>> = {
  salad: (when, long, market) => `Cut ${when} and keep cold ${long} for ${market}.`,
  braising: (when, long, market) => `Cut ${when} as braising greens and keep cold ${long} for ${market}.`,
  small: (when, long, market) => `Cut ${when}, below salad size, and keep cold ${long} for ${market}.`,
};
const NONE: Readonly<Record<SuccessionOutlook["stage"], string>> = {
  future: "Not sown yet.",
  emerging: "Let it come up.",
  growing: "Let it grow.",
  ready: "No market of these days takes it.",
  past: "Past salad size, and no market of these days takes it.",
  finished: "Finished.",
};

/** What to do with a succession, in one short sentence. */
export function todo(farm: Farm, fate: Fate, stage: SuccessionOutlook["stage"]): string {
  if (fate.kind === "none") return NONE[stage];
  const { market, marketDate } = fate.pick;
  return fate.kind === "pick"
    ? PICK[fate.as](day(farm.units, fate.pick.date))
    : HOLD[fate.as](
        dayOf(farm, fate.cut),
        days(fate.days),
        `${clean(market.name)} on ${day(farm.units, marketDate)}`,
      );
}

const OTHERWISE: Readonly<Record<Sold, (when: string, market: string, same: boolean) => string>> = {
  salad: (when, market, same) =>
    same ? `Pick it all the same ${when} for ${market}.` : `Leave it and pick it ${when} for ${market}.`,
  braising: (when, market, same) =>
    same
      ? `Pick it ${when} for ${market} as braising greens.`
      : `Leave it and pick it ${when} for ${market} as braising greens.`,
  small: (when, market, same) =>
    same
      ? `Pick it ${when} for ${market}, below salad size.`
      : `Leave it and pick it ${when} for ${market}, below salad size.`,
};

/** A way out of a miss. `missed` is the instant of the pick that is missed. */
export function otherwise(farm: Farm, fate: Fate, missed: number): string {
  if (fate.kind === "none") return "Do not cut it for any market of these days.";
  if (fate.kind === "hold") return todo(farm, fate, "growing");
  const { pick } = fate;
  return OTHERWISE[fate.as](
    day(farm.units, pick.date),
    marketDay(farm.units, clean(pick.market.name), pick.date, pick.marketDate),
    pick.at === missed,
  );
}
