import type { Change, LimitName, Outcome, TunnelPlan } from "../decide/index.ts";
import { settingKey } from "../farm/index.ts";
import { type Celsius, type Kilogram, localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import {
  capital,
  day,
  dayOfMonth,
  leaves,
  night,
  odds,
  settingShort,
  temperature,
  value,
  weight,
} from "./words.ts";

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

type Bed = Change["without"]["beds"][number];

/** What one change does to the size of one succession at its cut; null when nothing that can be seen. */
function sizeReason({ succession, cut }: Bed, outcome: Outcome, names: Names): Why | null {
  if (cut === null) return null;
  const { units, place } = outcome.farm;
  const date = localDate(place.zone, cut.at);
  const who = names.succession(succession);
  const when = day(units, date);
  const outlook = outcome.successions.find((each) => each.succession.id === succession);
  const about = outlook === undefined ? "" : mark(outlook);
  const [planned, left] = leaves(units, cut.size.plan, cut.size.other);
  const [after, before] = [odds(cut.odds.plan), odds(cut.odds.other)];
  const chance = after === before ? "" : `, ${after} in size instead of ${before}`;
  if (left !== planned) {
    const sizes = `${about}${planned} instead of ${about}${left} on ${when}${chance}.`;
    const brief = `${about}${planned}, not ${about}${left}, ${dayOfMonth(date)}.`;
    return cut.size.plan.middle < cut.size.other.middle
      ? why(`Holds the ${who}: ${sizes}`, `Holds ${who}: ${brief}`)
      : why(`Brings on the ${who}: ${sizes}`, `Brings on ${who}: ${brief}`);
  }
  if (chance !== "" && cut.odds.plan > cut.odds.other)
    return why(
      `Betters the odds of the ${who} on ${when}: ${after} instead of ${before}.`,
      `Odds of ${who}: ${after}, not ${before}, ${dayOfMonth(date)}.`,
    );
  return null;
}

const soon = ({ cut }: Bed): boolean => cut?.pick.planned === true;

function timingReason({ gain, without }: Change, outcome: Outcome, names: Names): Why | null {
  const beds = [...without.beds].sort((a, b) => b.gain.timing - a.gain.timing);
  for (const told of [beds.filter(soon), beds]) {
    const sentences = told.flatMap((bed) => sizeReason(bed, outcome, names) ?? []);
    if (sentences.length > 0) return joined(sentences);
  }
  const [most] = beds;
  if (most === undefined || gain.timing <= 0) return null;
  const { size } = most.cut ?? { size: null };
  const grows = size === null ? 0 : Math.sign(size.plan.middle - size.other.middle);
  const does = grows > 0 ? "Speeds" : grows < 0 ? "Slows" : "Helps";
  const who = names.succession(most.succession);
  return why(`${does} the ${who} a little.`, `${does} ${who} a little: ${value(outcome.farm, gain.timing)}.`);
}

/** How likely damage is in the worst part of a day, with and without one change; null where that reads alike. */
function damageReason({ without: { worst } }: Change, outcome: Outcome, names: Names): Why | null {
  if (worst === null) return null;
  const [after, before] = [odds(worst.odds.plan), odds(worst.odds.other)];
  if (after === before) return null;
  const { units } = outcome.farm;
  const { date, part } = worst.walk;
  const when = part === "evening" ? `in ${night(units, date)}` : `on ${day(units, date)}`;
  const who = names.succession(worst.succession);
  const what = worst.of === "stubble" ? "Loss of the stubble of the" : "Damage to the";
  return why(
    `${what} ${who} ${when}: ${after}; without this change ${before}.`,
    `${what} ${who}: ${after}, not ${before}.`,
  );
}

/** The order that is filled better by most. */
function orderReason({ without: { filled } }: Change, { farm }: Outcome): Why | null {
  const [most] = filled;
  const product = farm.products.find(({ id }) => id === most?.product);
  if (most === undefined || product === undefined) return null;
  const more = weight(farm.units, (most.plan - most.other) as Kilogram);
  const { market, marketDate } = most.pick;
  const name = clean(product.name);
  return why(
    `Fills ${more} more of the order for ${clean(market.name)} on ${day(farm.units, marketDate)}: ${name}.`,
    `Fills ${more} more of ${name}, ${dayOfMonth(marketDate)}.`,
  );
}

/** Share of a change's own gain that another setting must bring for a grower to ask for it. [0–1] judgement */
const WORTH_ASKING = 0.5;

/** What the strongest other setting would do; null where it would do far less, or nobody could tell the two apart. */
function ratherReason({ gain, rather }: Change, outcome: Outcome, names: Names): string | null {
  if (rather === null) return null;
  const { farm } = outcome;
  const [gains, less] = [total(gain), total(rather.gain)];
  if (gains <= 0 || less < 0 || less > (1 - WORTH_ASKING) * gains) return null;
  const cut = rather.beds
    .filter(soon)
    .reduce<Bed["cut"]>(
      (top, { cut: each }) => (top === null || differs(each) > differs(top) ? each : top),
      null,
    );
  const [size, otherSize] = cut === null ? ["", ""] : leaves(farm.units, cut.size.plan, cut.size.other);
  const share = cut === null || !(cut.weight.plan > 0) ? 0 : cut.weight.other / cut.weight.plan - 1;
  const percent = Math.round(Math.abs(share) * 100);
  const nothing = Math.round(less) < 1 && farm.currency !== null;
  const effects = [
    ...(size === otherSize ? [] : [`${otherSize} instead of ${size}`]),
    ...(percent === 0 ? [] : [`${percent} % ${share < 0 ? "less" : "more"} weight`]),
    ...(nothing ? [] : [`worth ${value(farm, less)} less`]),
  ];
  const other = capital(settingShort(rather.setting, names.shortCover));
  return effects.length === 0
    ? `${other} would do nearly as well.`
    : `${other} instead: ${effects.join(", ")}.`;
}

const total = ({ timing, stress, damage, labour, orders }: Change["gain"]): number =>
  timing + stress + damage + labour + orders;

const differs = (cut: Bed["cut"]): number =>
  cut === null ? -1 : Math.abs(cut.size.plan.middle - cut.size.other.middle);

/** Is a change made to cool: a warm cloth less, or a shade more? */
function cools(change: Change, outcome: Outcome): boolean {
  const kinds = (layers: TunnelPlan["now"]) =>
    layers.map(({ cover }) => outcome.farm.covers.get(cover)?.kind);
  const warm = (layers: TunnelPlan["now"]) =>
    kinds(layers).filter((kind) => kind === "rowCover" || kind === "film").length;
  const shaded = (layers: TunnelPlan["now"]) => kinds(layers).filter((kind) => kind === "shade").length;
  return warm(change.to) < warm(change.from) || shaded(change.to) > shaded(change.from);
}

/** What decided a change, from the plan with it beside the plan without. */
function decided(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why {
  const { farm } = outcome;
  const warmer = () => frostReason(change, plan, outcome);
  const cooler = () => heatReason(change, plan, outcome);
  const bySize = () => timingReason(change, outcome, names);
  const all = (...whys: readonly (Why | null)[]): Why | null => {
    const told = whys.filter((each) => each !== null);
    return told.length === 0 ? null : joined(told);
  };
  switch (change.decidedBy) {
    case "limit": {
      const limit = change.limit === null ? null : FORBIDS[change.limit];
      const shown = change.limit === "rowCoverInHeat" ? cooler() : null;
      return all(shown, limit, bySize()) ?? why("A limit leaves no other choice.");
    }
    case "damage":
      return (
        all(
          cools(change, outcome) ? (cooler() ?? warmer()) : (warmer() ?? cooler()),
          damageReason(change, outcome, names),
        ) ?? why(`Lowers the damage to be feared by ${value(farm, change.gain.damage)}.`)
      );
    case "stress":
      return cooler() ?? why(`Spares the leaves heat worth ${value(farm, change.gain.stress)}.`);
    case "timing":
      return (
        all(cools(change, outcome) ? null : warmer(), bySize()) ??
        why("Brings more of it into size for the picks.")
      );
    case "orders": {
      const gained = value(farm, change.gain.orders);
      const better = why(`Fills orders and stalls better: worth ${gained}.`, `Orders and stalls: ${gained}.`);
      return all(bySize(), orderReason(change, outcome) ?? better)!;
    }
    case "labour":
      return why(`Saves work worth ${value(farm, change.gain.labour)}.`);
  }
}

/** Reasons that a worth of the whole change belongs to. */
const BY_WORTH: readonly Change["decidedBy"][] = ["timing", "orders", "damage"];

/** Why a change is in the plan, what it is worth, and what another cover would do in its place. */
export function reason(change: Change, plan: TunnelPlan, outcome: Outcome, names: Names): Why {
  const { told, brief } = decided(change, plan, outcome, names);
  const gained = total(change.gain);
  const worth =
    BY_WORTH.includes(change.decidedBy) && gained > 0
      ? [`This change is worth ${value(outcome.farm, gained)}.`]
      : [];
  return why([told, ...worth, ratherReason(change, outcome, names) ?? []].flat().join(" "), brief);
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
