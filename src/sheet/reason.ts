import type {
  AtPick,
  Change,
  LimitName,
  Outcome,
  Range,
  SuccessionOutlook,
  TunnelPlan,
} from "../decide/index.ts";
import { course } from "../decide/index.ts";
import { settingKey } from "../farm/index.ts";
import { type Celsius, type Centimetre, type LocalDate, localDate } from "../quantity/index.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { samePick } from "./samePick.ts";
import { sheetCalled } from "./sheetCalled.ts";
import { day, dayOfMonth, leaves, night, odds, temperature, value } from "./words.ts";

/** A reason in whole sentences, and in the fewest words for where there is no room. */
export interface Why {
  readonly told: string;
  readonly brief: string;
}

const why = (told: string, brief: string = told): Why => ({ told, brief });

const joined = (whys: readonly Why[]): Why =>
  why(whys.map(({ told }) => told).join(" "), whys.map(({ brief }) => brief).join(" "));

/** Why a limit leaves no choice. */
const FORBIDS: Readonly<Record<LimitName, Why>> = {
  rowCoverInHeat: why("Too hot: it would grow slower, not faster.", "Heat slows it."),
  wind: why("Other walks are too windy for it.", "Other walks: wind."),
  frozen: why("At other walks the cloth is frozen and may not be moved.", "Other walks: frozen cloth."),
  net: why("What grows here must stay under net.", "Must stay under net."),
  dim: why("Shade cloth may not keep it below its light floor any longer.", "Too little light any longer."),
  pieces: why("The cloth is needed on another tunnel.", "Cloth needed elsewhere."),
  changes: why("Your limit of changes a week leaves no other walk for it.", "Limit of changes a week."),
  minutes: why("There are no minutes left for it at other walks.", "Other walks: no minutes left."),
  picking: why("There is not time enough to cut more at that pick.", "No time to cut more."),
  washing: why("No more can be washed of that pick.", "No more can be washed."),
  cooler: why("The cooler holds no more.", "The cooler is full."),
};

/** Indices of the walks a change holds for: from its own to the tunnel's next change. */
function stretch(change: Change, plan: TunnelPlan, outcome: Outcome): { first: number; end: number } {
  const first = outcome.walks.findIndex(({ index }) => index === change.walk.index);
  const next = outcome.walks.findIndex(
    (walk, i) => i > first && plan.changes.some((other) => other.walk.index === walk.index),
  );
  return { first, end: next < 0 ? outcome.walks.length : next };
}

/** The coldest night of the stretch at which the change warms the crop. */
function frostReason(change: Change, plan: TunnelPlan, outcome: Outcome): Why | null {
  const { first, end } = stretch(change, plan, outcome);
  const evenings = new Set(
    outcome.walks
      .slice(first, end)
      .filter(({ part }) => part === "evening")
      .map(({ date }) => date),
  );
  const coldest = plan.nights
    .filter(({ date, bare, gain }) => evenings.has(date) && bare <= 0 && gain > 0)
    .reduce((a, b) => (a !== null && a.bare <= b.bare ? a : b), null as TunnelPlan["nights"][number] | null);
  if (coldest === null || change.to.length === 0) return null;
  const { units } = outcome.farm;
  const [bare, expected, promised] = [coldest.bare, coldest.expected, coldest.promised].map((at) =>
    temperature(units, at),
  );
  return why(
    `Frost in ${night(units, coldest.date)}: ${expected} expected at the crop, ${promised} promised, ${bare} with nothing on.`,
    `Frost ${dayOfMonth(coldest.date)}, night: ${expected} expected, ${promised} promised, ${bare} bare.`,
  );
}

/** The first day of the stretch that is too hot, as the warning gives it, or its hottest as the ledger does for the setting before and after. */
function heatReason(change: Change, plan: TunnelPlan, outcome: Outcome): Why | null {
  const { units } = outcome.farm;
  const { first, end } = stretch(change, plan, outcome);
  const walks = outcome.walks.slice(first, end);
  const dates = new Set(walks.map(({ date }) => date));
  const [tooHot] = outcome.warnings
    .flatMap((warning) =>
      warning.kind === "heat" &&
      warning.tunnel === plan.tunnel.id &&
      dates.has(warning.date) &&
      warning.planned < warning.ifLeft
        ? [warning]
        : [],
    )
    .sort((a, b) => (a.date < b.date ? -1 : 1));
  if (tooHot !== undefined) {
    const [left, planned] = [tooHot.ifLeft, tooHot.planned].map((at) => temperature(units, at));
    return why(
      `Heat on ${day(units, tooHot.date)}: ${left} at the crop if left, ${planned} with the plan.`,
      `Heat ${dayOfMonth(tooHot.date)}: ${left} if left, ${planned} planned.`,
    );
  }
  const peak = (key: string): Celsius | null =>
    plan.ledger
      .filter((entry) => entry.setting === key && walks.some(({ index }) => index === entry.walk))
      .reduce((a, { highest }) => (a !== null && a >= highest ? a : highest), null as Celsius | null);
  const [before, after] = [peak(settingKey(change.from)), peak(settingKey(change.to))];
  if (before === null || after === null || after >= before) return null;
  const [left, changed] = [before, after].map((at) => temperature(units, at));
  if (left === changed) return null;
  return why(
    `Heat: ${left} at the crop if left, ${changed} with this change.`,
    `Heat: ${left} if left, ${changed} changed.`,
  );
}

/** The pick at which a succession earns what it earns, else the one it misses, else the first. */
function earningPick({ fate, miss, atPicks }: SuccessionOutlook): AtPick | null {
  const pick = fate.kind === "none" ? (miss?.pick ?? null) : fate.pick;
  const same = pick === null ? undefined : atPicks.find((at) => samePick(at.pick, pick));
  return same ?? atPicks.find((at) => at.pick.planned) ?? atPicks[0] ?? null;
}

const middle = (size: Range<Centimetre>): number => size.middle;

/** A range as wide as another around a value of its own. */
const around = (value: Centimetre, { low, high, middle }: Range<Centimetre>): Range<Centimetre> => ({
  low: (value + low - middle) as Centimetre,
  middle: value,
  high: (value + high - middle) as Centimetre,
});

/** Its sizes with and without the plan when it is cut: at the pick, or earlier when it is kept cold for it. */
function whenCut(
  outlook: SuccessionOutlook,
  outcome: Outcome,
): (AtPick & { readonly date: LocalDate }) | null {
  const at = earningPick(outlook);
  const { fate } = outlook;
  if (at === null) return null;
  if (fate.kind !== "hold") return { ...at, date: at.pick.date };
  const then = course(outcome, outlook).find((point) => point.at === fate.cut);
  if (then === undefined || then.planned === null || then.unchanged === null)
    return { ...at, date: at.pick.date };
  return {
    ...at,
    date: localDate(outcome.farm.place.zone, fate.cut),
    planned: around(then.planned, at.planned),
    unchanged: around(then.unchanged, at.unchanged),
  };
}

/** What the plan does to the size of one succession; null when nothing that can be seen. */
function sizeReason(outlook: SuccessionOutlook, outcome: Outcome, names: Names): Why | null {
  const at = whenCut(outlook, outcome);
  if (at === null) return null;
  const { units } = outcome.farm;
  const who = names.succession(outlook.succession.id);
  const when = day(units, at.date);
  const [left, planned] = leaves(units, at.unchanged, at.planned);
  const about = mark(outlook);
  const short = dayOfMonth(at.date);
  if (left !== planned) {
    const brief = `${about}${planned}, not ${about}${left}, ${short}.`;
    return middle(at.planned) < middle(at.unchanged)
      ? why(
          `Holds the ${who}: ${about}${planned} instead of ${about}${left} on ${when}.`,
          `Holds ${who}: ${brief}`,
        )
      : why(
          `Brings on the ${who}: ${about}${planned} instead of ${about}${left} on ${when}.`,
          `Brings on ${who}: ${brief}`,
        );
  }
  const [before, after] = [odds(at.oddsUnchanged), odds(at.odds)];
  if (outlook.fate.kind !== "hold" && before !== after && at.odds > at.oddsUnchanged)
    return why(
      `Betters the odds of the ${who} on ${when}: ${after} instead of ${before}.`,
      `Odds of ${who}: ${after}, not ${before}, ${short}.`,
    );
  return null;
}

function timingReason(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why | null {
  const here = outcome.successions.filter(({ succession }) => succession.tunnel === plan.tunnel.id);
  const soon = here.filter(({ fate }) => fate.kind !== "none" && fate.pick.planned);
  for (const told of [soon, here]) {
    const sentences = told.flatMap((outlook) => sizeReason(outlook, outcome, names) ?? []);
    if (sentences.length > 0) return joined(sentences);
  }
  return change.gain.timing > 0 ? slightReason(change, plan, here, outcome, names) : null;
}

/** What a change does to growth too little to show in the sizes: for the bed that gains most by the plan. */
function slightReason(
  change: Change,
  plan: TunnelPlan,
  here: readonly SuccessionOutlook[],
  outcome: Outcome,
  names: Names,
): Why | null {
  const most = here.reduce(
    (a, b) => (a !== null && a.worth - a.worthUnchanged >= b.worth - b.worthUnchanged ? a : b),
    null as SuccessionOutlook | null,
  );
  if (most === null) return null;
  const { first, end } = stretch(change, plan, outcome);
  const pace = (setting: TunnelPlan["now"]): number =>
    plan.ledger
      .filter(({ walk, setting: key }) => walk >= first && walk < end && key === settingKey(setting))
      .flatMap(({ successions }) => successions.filter(({ id }) => id === most.succession.id))
      .reduce((sum, each) => sum + each.pace, 0);
  const [before, after] = [pace(change.from), pace(change.to)];
  const does = after > before ? "Speeds" : after < before ? "Slows" : "Helps";
  const who = names.succession(most.succession.id);
  const gained = value(outcome.farm, change.gain.timing);
  return why(
    `${does} the ${who} a little: worth ${gained} in size and weight.`,
    `${does} ${who} a little: ${gained}.`,
  );
}

/** Is a change made to cool: a warm cloth less, or a shade more? */
function cools(change: Change, outcome: Outcome): boolean {
  const kinds = (layers: TunnelPlan["now"]) =>
    layers.map(({ cover }) => outcome.farm.covers.get(cover)?.kind);
  const warm = (layers: TunnelPlan["now"]) =>
    kinds(layers).filter((kind) => kind === "rowCover" || kind === "film").length;
  const shaded = (layers: TunnelPlan["now"]) => kinds(layers).filter((kind) => kind === "shade").length;
  return warm(change.to) < warm(change.from) || shaded(change.to) > shaded(change.from);
}

/** Why a change is in the plan, from what decided it. */
export function reason(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why {
  const { farm } = outcome;
  const warmer = () => frostReason(change, plan, outcome);
  const cooler = () => heatReason(change, plan, outcome);
  const bySize = () => timingReason(change, plan, outcome, names);
  switch (change.decidedBy) {
    case "limit": {
      const limit = change.limit === null ? null : FORBIDS[change.limit];
      const shown = change.limit === "rowCoverInHeat" ? cooler() : null;
      const both = [shown, limit].filter((each) => each !== null);
      return both.length === 0 ? why("A limit leaves no other choice.") : joined(both);
    }
    case "damage":
      return (
        (cools(change, outcome) ? (cooler() ?? warmer()) : (warmer() ?? cooler())) ??
        why(`Lowers the damage to be feared by ${value(farm, change.gain.damage)}.`)
      );
    case "stress":
      return cooler() ?? why(`Spares the leaves heat worth ${value(farm, change.gain.stress)}.`);
    case "timing": {
      const cold = cools(change, outcome) ? null : warmer();
      const both = [cold, bySize()].filter((each) => each !== null);
      return both.length === 0 ? why("Brings more of it into size for the picks.") : joined(both);
    }
    case "orders": {
      const size = bySize();
      const gained = value(farm, change.gain.orders);
      const told = why(`Fills orders and stalls better: worth ${gained}.`, `Orders and stalls: ${gained}.`);
      return size === null ? told : joined([size, told]);
    }
    case "calm": {
      const sheet =
        outcome.since === null ? "the last sheet" : sheetCalled(farm, outcome.since.on, outcome.on);
      return why(`So it stands on ${sheet}; to change that would not be worth it.`, `As on ${sheet}.`);
    }
    case "labour":
      return why(`Saves work worth ${value(farm, change.gain.labour)}.`);
  }
}

/** What lies on a tunnel through one night, or by day, of a date. */
export function lyingOn(
  plan: TunnelPlan,
  outcome: Outcome,
  date: string,
  part: "morning" | "evening",
): TunnelPlan["now"] {
  const walk = outcome.walks.findIndex((each) => each.date === date && each.part === part);
  const chosen = walk < 0 ? plan.now : (plan.settings[plan.choice[walk] ?? -1] ?? plan.now);
  return chosen.filter(({ state }) => state !== "nights" || part === "evening");
}
