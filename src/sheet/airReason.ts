import type { Change, Outcome, TunnelPlan } from "../decide/index.ts";
import { settingKey } from "../farm/index.ts";
import { type Celsius, localDate } from "../quantity/index.ts";
import { cause, type Why } from "./why.ts";
import { day, dayOfMonth, nightAhead, temperature } from "./words.ts";

/** Indices of the walks a change holds for: from its own to the tunnel's next change. */
function stretch(change: Change, plan: TunnelPlan, outcome: Outcome): { first: number; end: number } {
  const first = outcome.walks.findIndex(({ index }) => index === change.walk.index);
  const next = outcome.walks.findIndex(
    (walk, i) => i > first && plan.changes.some((other) => other.walk.index === walk.index),
  );
  return { first, end: next < 0 ? outcome.walks.length : next };
}

/** The coldest night of the stretch at which the change warms the crop. What is promised then stands with the warnings, where there is something to lose. */
export function frostReason(change: Change, plan: TunnelPlan, outcome: Outcome): Why | null {
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
  const { units, place } = outcome.farm;
  const [bare, expected, promised] = [coldest.bare, coldest.expected, coldest.promised].map((at) =>
    temperature(units, at),
  );
  const frost = `Frost ${nightAhead(units, coldest.date, localDate(place.zone, outcome.on))}`;
  return cause(
    `${frost}: ${bare} at the crop if bare, ${expected} expected with it.`,
    `${frost}: ${bare} bare, ${expected} expected, ${promised} promised.`,
  );
}

/** The first day of the stretch that is too hot, as the warning gives it, or its hottest as the ledger does for the setting before and after. */
export function heatReason(change: Change, plan: TunnelPlan, outcome: Outcome): Why | null {
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
    return cause(
      `Heat on ${day(units, tooHot.date)}: ${left} at the crop if left as it is, ${planned} with the plan.`,
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
  return cause(
    `Heat: ${left} at the crop if left as it is, ${changed} with this change.`,
    `Heat: ${left} if left, ${changed} changed.`,
  );
}

/** Is a change made to cool: a warm cloth less, or a shade more? */
export function cools(change: Change, outcome: Outcome): boolean {
  const kinds = (layers: TunnelPlan["now"]) =>
    layers.map(({ cover }) => outcome.farm.covers.get(cover)?.kind);
  const warm = (layers: TunnelPlan["now"]) =>
    kinds(layers).filter((kind) => kind === "rowCover" || kind === "film").length;
  const shaded = (layers: TunnelPlan["now"]) => kinds(layers).filter((kind) => kind === "shade").length;
  return warm(change.to) < warm(change.from) || shaded(change.to) > shaded(change.from);
}
