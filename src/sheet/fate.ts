import type { Fate, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { type LocalDate, localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { day, dayOf, days, marketDay } from "./words.ts";

/** What its fate is told from. */
type Fated = Pick<SuccessionOutlook, "fate" | "stage" | "emergence">;

type Sold = "salad" | "braising" | "small";

/** What an overgrown succession sells as, and the same where columns are narrow. */
export const SECOND_USE = "braising or bunched greens";
export const SECOND_USE_SHORT = "braising greens";

/** The words of one use, for a whole sentence each. */
const PICK: Readonly<Record<Sold, (when: string, second: string) => string>> = {
  salad: (when) => `Pick ${when}.`,
  braising: (when, second) => `Pick ${when} as ${second}.`,
  small: (when) => `Pick ${when}, below salad size.`,
};
const CUT: Readonly<Record<Sold, (when: string, second: string, long: string) => string>> = {
  salad: (when, _, long) => `Cut ${when}, keep cold ${long}.`,
  braising: (when, second, long) => `Cut ${when} as ${second}, keep cold ${long}.`,
  small: (when, _, long) => `Cut ${when}, below salad size, keep cold ${long}.`,
};
const KEEP: Readonly<Record<Sold, (when: string, second: string, long: string, market: string) => string>> = {
  salad: (when, _, long, market) => `Cut ${when}, keep cold ${long} for ${market}.`,
  braising: (when, second, long, market) => `Cut ${when} as ${second}, keep cold ${long} for ${market}.`,
  small: (when, _, long, market) => `Cut ${when}, below salad size, keep cold ${long} for ${market}.`,
};
const HOLD: Readonly<Record<Sold, (when: string, long: string, market: string) => string>> = {
  salad: (when, long, market) => `Cut it ${when} and keep it cold ${long} for ${market}.`,
  braising: (when, long, market) => `Cut it ${when} as ${SECOND_USE} and keep it cold ${long} for ${market}.`,
  small: (when, long, market) => `Cut it ${when}, below salad size, and keep it cold ${long} for ${market}.`,
};
/** Beyond the days planned nothing is decided yet. */
const GROW: Readonly<Record<Sold, (when: string, second: string) => string>> = {
  salad: (when) => `Let it grow for ${when}.`,
  braising: (when, second) => `Let it grow: ${second} for ${when}.`,
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

/**
 * What to do with a succession, in one short sentence.
 *
 * @param last - Last day planned; what lies beyond it is not decided yet.
 * @param second - What it is called when it sells beyond salad size.
 */
export function todo(
  farm: Farm,
  { fate, stage, emergence }: Fated,
  last: LocalDate | null,
  second: string = SECOND_USE,
): string {
  const { units, place } = farm;
  if (fate.kind !== "none" && fate.pick.planned) return way(farm, fate, second);
  if (fate.kind === "hold" && last !== null && localDate(place.zone, fate.cut) <= last)
    return KEEP[fate.as](dayOf(farm, fate.cut), second, days(fate.days), day(units, fate.pick.marketDate));
  if (stage === "emerging" && emergence !== null) return `Comes up about ${dayOf(farm, emergence.at)}.`;
  return fate.kind === "none" ? NONE[stage] : GROW[fate.as](day(units, fate.pick.marketDate), second);
}

/** What to do with a succession whatever the days planned, in few words. */
export const way = (farm: Farm, fate: Fate, second: string = SECOND_USE_SHORT): string =>
  fate.kind === "none"
    ? "Leave it uncut."
    : fate.kind === "pick"
      ? PICK[fate.as](day(farm.units, fate.pick.date), second)
      : CUT[fate.as](dayOf(farm, fate.cut), second, days(fate.days));

type When = "before" | "same" | "after";

const OTHERWISE: Readonly<Record<When, Readonly<Record<Sold, (when: string, market: string) => string>>>> = {
  before: {
    salad: (when, market) => `Pick it early, ${when}, for ${market}.`,
    braising: (when, market) => `Pick it early, ${when}, as ${SECOND_USE} for ${market}.`,
    small: (when, market) => `Pick it early, ${when}, below salad size, for ${market}.`,
  },
  same: {
    salad: (when, market) => `Pick it all the same ${when} for ${market}.`,
    braising: (when, market) => `Pick it ${when} as ${SECOND_USE} for ${market}.`,
    small: (when, market) => `Pick it ${when}, below salad size, for ${market}.`,
  },
  after: {
    salad: (when, market) => `Leave it and pick it ${when} for ${market}.`,
    braising: (when, market) => `Leave it and pick it ${when} as ${SECOND_USE} for ${market}.`,
    small: (when, market) => `Leave it and pick it ${when}, below salad size, for ${market}.`,
  },
};

/** A way out of a miss. `missed` is the instant of the pick that is missed. */
export function otherwise(farm: Farm, fate: Fate, missed: number): string {
  if (fate.kind === "none") return "Leave it uncut.";
  const { units } = farm;
  const { market, marketDate, date, at } = fate.pick;
  const name = clean(market.name);
  if (fate.kind === "hold")
    return HOLD[fate.as](dayOf(farm, fate.cut), days(fate.days), `${name} on ${day(units, marketDate)}`);
  const when = at < missed ? "before" : at === missed ? "same" : "after";
  return OTHERWISE[when][fate.as](day(units, date), marketDay(units, name, date, marketDate));
}
