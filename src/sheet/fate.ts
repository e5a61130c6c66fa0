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
const CUT: Readonly<Record<Sold, (when: string, long: string) => string>> = {
  salad: (when, long) => `Cut ${when}, keep cold ${long}.`,
  braising: (when, long) => `Cut ${when} as braising greens, keep cold ${long}.`,
  small: (when, long) => `Cut ${when}, below salad size, keep cold ${long}.`,
};
const HOLD: Readonly<Record<Sold, (when: string, long: string, market: string) => string>> = {
  salad: (when, long, market) => `Cut it ${when} and keep it cold ${long} for ${market}.`,
  braising: (when, long, market) => `Cut it ${when} as braising greens and keep it cold ${long} for ${market}.`,
  small: (when, long, market) => `Cut it ${when}, below salad size, and keep it cold ${long} for ${market}.`,
};
/** Beyond the days planned nothing is decided yet. */
const GROW: Readonly<Record<Sold, (when: string) => string>> = {
  salad: (when) => `Let it grow for ${when}.`,
  braising: (when) => `Let it grow: braising greens for ${when}.`,
  small: () => "Let it grow.",
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
  if (!fate.pick.planned) return GROW[fate.as](day(farm.units, fate.pick.marketDate));
  return fate.kind === "pick"
    ? PICK[fate.as](day(farm.units, fate.pick.date))
    : CUT[fate.as](dayOf(farm, fate.cut), days(fate.days));
}

type When = "before" | "same" | "after";

const OTHERWISE: Readonly<Record<When, Readonly<Record<Sold, (when: string, market: string) => string>>>> = {
  before: {
    salad: (when, market) => `Pick it early, ${when}, for ${market}.`,
    braising: (when, market) => `Pick it early, ${when}, for ${market} as braising greens.`,
    small: (when, market) => `Pick it early, ${when}, for ${market}, below salad size.`,
  },
  same: {
    salad: (when, market) => `Pick it all the same ${when} for ${market}.`,
    braising: (when, market) => `Pick it ${when} for ${market} as braising greens.`,
    small: (when, market) => `Pick it ${when} for ${market}, below salad size.`,
  },
  after: {
    salad: (when, market) => `Leave it and pick it ${when} for ${market}.`,
    braising: (when, market) => `Leave it and pick it ${when} for ${market} as braising greens.`,
    small: (when, market) => `Leave it and pick it ${when} for ${market}, below salad size.`,
  },
};

/** A way out of a miss. `missed` is the instant of the pick that is missed. */
export function otherwise(farm: Farm, fate: Fate, missed: number): string {
  if (fate.kind === "none") return "Do not cut it for any market of these days.";
  const { units } = farm;
  const { market, marketDate, date, at } = fate.pick;
  const name = clean(market.name);
  if (fate.kind === "hold")
    return HOLD[fate.as](dayOf(farm, fate.cut), days(fate.days), `${name} on ${day(units, marketDate)}`);
  const when = at < missed ? "before" : at === missed ? "same" : "after";
  return OTHERWISE[when][fate.as](day(units, date), marketDay(units, name, date, marketDate));
}
