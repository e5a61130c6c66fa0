import type {
  ChangedCut,
  ChangedInstruction,
  LimitName,
  Outcome,
  PlannedCut,
  SinceIssued,
  TogetherPlan,
  Unnoted,
} from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { WEEKDAYS } from "../folder/index.ts";
import { daysBetween, localDate, weekday } from "../quantity/index.ts";
import { actions } from "./actions.ts";
import { SECOND_USE } from "./fate.ts";
import type { Names } from "./names.ts";
import { reason } from "./reason.ts";
import { sheetCalled } from "./sheetCalled.ts";
import { whole } from "./why.ts";
import { capital, day, moment, value } from "./words.ts";

/** What is new against the sheet given out before. */
export interface SinceBlock {
  readonly heading: string;
  /** Whole sentences: each changed instruction with what it was and why; or that none is. */
  readonly changed: readonly string[];
  /** What should have been done by now and is not noted. */
  readonly unnoted: readonly string[];
}

/** Why the plan no longer asks for something, where no change of its own says it. */
const LEFT: Readonly<Record<keyof TogetherPlan["parts"], string>> = {
  timing: "Size and weight come out better so.",
  stress: "Leaves keep better so: they get less heat, or dry sooner before the cut.",
  damage: "It lowers the damage to be feared.",
  again: "More can be cut that grows again.",
  labour: "It saves work that no longer pays.",
  orders: "It fills orders and stalls better.",
  calm: "It goes with the other changes.",
};

/** What forbids doing as the sheet says. */
const FORBIDDEN: Readonly<Record<LimitName, string>> = {
  rowCoverInHeat: "It would get too hot under it.",
  wind: "It is too windy for it by now.",
  frozen: "The cloth is frozen then.",
  snow: "Snow lies on it then.",
  net: "What grows there must stay under net.",
  dim: "It would lie too long in too little light.",
  pieces: "The cloth is needed on another tunnel.",
  changes: "Your changes a week are used up.",
  minutes: "That walk has no minutes left for it.",
  picking: "There is no time to cut more at that pick.",
  washing: "No more can be washed of that pick.",
  cooler: "The cooler holds no more.",
};

function left({ walk, tunnel, decidedBy, limit }: ChangedInstruction, { warnings }: Outcome): string {
  if (decidedBy !== "limit") return LEFT[decidedBy];
  if (limit === null) return "The cloth for it is not at hand, or you keep the tunnel otherwise.";
  const frost = warnings.some(
    (each) => each.kind === "frost" && each.tunnel === tunnel.id && each.date >= walk.date,
  );
  return limit === "rowCoverInHeat" && !frost
    ? `No frost is expected there any more. ${FORBIDDEN[limit]}`
    : FORBIDDEN[limit];
}

function changed(instruction: ChangedInstruction, outcome: Outcome, names: Names): string {
  const { walk, tunnel, was, is } = instruction;
  const plan = outcome.tunnels.find((each) => each.tunnel.id === tunnel.id)!;
  const told = ({ from, to }: ChangedInstruction["was"]): string =>
    actions(from, to, walk.part, names.shortCover).join(" ") || "Leave it as it is.";
  const change = plan.changes.find((each) => each.walk.index === walk.index);
  const why =
    change === undefined ? left(instruction, outcome) : whole(reason(change, plan, outcome, names)).brief;
  const when = `${day(outcome.farm.units, walk.date)}, ${walk.part}`;
  return `${when}, ${names.tunnel(tunnel.id)}: ${told(is)} It was: ${told(was)} Why: ${why}`;
}

const AS: Readonly<Record<PlannedCut["as"], string>> = {
  salad: "",
  braising: ` as ${SECOND_USE}`,
  small: ", below salad size",
};

function cutChanged({ succession, was, is }: ChangedCut, { farm }: Outcome, names: Names): string {
  const told = (cut: PlannedCut | null): string =>
    cut === null ? "not in these days" : moment(farm, cut.at) + AS[cut.as];
  return `Cut the ${names.succession(succession)}: ${told(is)}. It was: ${told(was)}.`;
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
  const sentences = [
    ...issued.changed.map((each) => changed(each, outcome, names)),
    ...issued.cuts.map((each) => cutChanged(each, outcome, names)),
  ];
  return {
    heading: issued.walks === 0 ? `Left over from ${called}` : `Changed since ${called}`,
    changed: sentences.length > 0 || issued.walks === 0 ? sentences : [nothingChanged(farm, issued, called)],
    unnoted: issued.unnoted.map((each) => unnoted(each, outcome, names)),
  };
}
