import type { ChangedInstruction, Outcome, SinceIssued, TogetherPlan, Unnoted } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { WEEKDAYS } from "../folder/index.ts";
import { daysBetween, localDate, weekday } from "../quantity/index.ts";
import { actions } from "./actions.ts";
import type { Names } from "./names.ts";
import { reason } from "./reason.ts";
import { sheetCalled } from "./sheetCalled.ts";
import { whole } from "./why.ts";
import { capital, day, value } from "./words.ts";

/** What is new against the sheet given out before. */
export interface SinceBlock {
  readonly heading: string;
  /** Whole sentences: each changed instruction with what it was and why; or that none is. */
  readonly changed: readonly string[];
  /** What should have been done by now and is not noted. */
  readonly unnoted: readonly string[];
}

/** Why the plan no longer asks for something, where no change of its own says it. */
const LEFT: Readonly<Record<keyof TogetherPlan["parts"] | "limit", string>> = {
  timing: "Size and weight come out better so.",
  stress: "Leaves keep better so: they get less heat, or are cut dry.",
  damage: "It lowers the damage to be feared.",
  again: "More can be cut that grows again.",
  labour: "It saves work that no longer pays.",
  orders: "It fills orders and stalls better.",
  limit: "A limit or the cloth at hand no longer allows it.",
  calm: "It goes with the other changes.",
};

function changed(
  { walk, tunnel, was, is, decidedBy }: ChangedInstruction,
  outcome: Outcome,
  names: Names,
): string {
  const plan = outcome.tunnels.find((each) => each.tunnel.id === tunnel.id)!;
  const told = ({ from, to }: ChangedInstruction["was"]): string =>
    actions(from, to, walk.part, names.shortCover).join(" ") || "Leave it as it is.";
  const change = plan.changes.find((each) => each.walk.index === walk.index);
  const why = change === undefined ? LEFT[decidedBy] : whole(reason(change, plan, outcome, names)).brief;
  const when = `${day(outcome.farm.units, walk.date)}, ${walk.part}`;
  return `${when}, ${names.tunnel(tunnel.id)}: ${told(is)} It was: ${told(was)} Why: ${why}`;
}

const LIES: Readonly<Record<Unnoted["state"], string>> = {
  on: "on",
  off: "off",
  nights: "by night only on",
  vented: "with one side lifted on",
};

function unnoted({ tunnel, walk, cover, state }: Unnoted, { farm, on }: Outcome, names: Names): string {
  const recent = daysBetween(walk.date, localDate(farm.place.zone, on)) < 7;
  const name = WEEKDAYS[weekday(walk.date)]!;
  const when = recent ? `${name} ${walk.part}` : `${day(farm.units, walk.date)}, ${walk.part}`;
  // What a shell would take for its own is left to the id.
  const where = /^[\p{L}\p{N} .-]+$/u.test(tunnel.name) ? tunnel.name : tunnel.id;
  const noted = `${where} ${cover} ${state} ${recent ? name : walk.date} ${walk.part}`;
  return `Not noted, so taken as not done: ${names.shortCover(cover)} ${LIES[state]} ${names.tunnel(tunnel.id)}, ${when}. Done? leafpace note ${noted}`;
}

const nothingChanged = (farm: Farm, { price }: SinceIssued, called: string): string =>
  `Nothing. ${capital(called)} still holds; no change to it would be worth ${value(farm, price)}.`;

/** The part of the sheet on the one given out before; null where there is nothing to say. */
export function since(outcome: Outcome, names: Names): SinceBlock | null {
  const { farm, on, since: issued } = outcome;
  if (issued === null || (issued.walks === 0 && issued.unnoted.length === 0)) return null;
  const called = sheetCalled(farm, issued.on, on);
  const sentences = issued.changed.map((each) => changed(each, outcome, names));
  return {
    heading: issued.walks === 0 ? `Left over from ${called}` : `Changed since ${called}`,
    changed: sentences.length > 0 || issued.walks === 0 ? sentences : [nothingChanged(farm, issued, called)],
    unnoted: issued.unnoted.map((each) => unnoted(each, outcome, names)),
  };
}
