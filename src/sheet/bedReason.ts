import type { Change, Outcome } from "../decide/index.ts";
import { type Kilogram, localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { joined, type Why, why } from "./why.ts";
import { chanceOf, day, leaves, monthAndDay, nightAhead, rain, value, weight } from "./words.ts";

/** A bed that a change makes a difference to. */
export type Bed = Change["without"]["beds"][number];

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
  const [after, before] = [chanceOf(cut.odds.plan), chanceOf(cut.odds.other)];
  const chance = after === before ? "" : `; odds of salad size ${after} instead of ${before}`;
  if (left !== planned) {
    const sizes = `${about}${planned} on ${when} instead of ${about}${left}${chance}.`;
    const brief = `${about}${planned}, not ${about}${left}, ${monthAndDay(units, date)}.`;
    if (cut.size.plan.middle < cut.size.other.middle)
      return why(`Holds back the ${who}: ${sizes}`, `Holds back ${who}: ${brief}`);
    // A larger leaf can be worth more by its weight though it is likelier to be too large.
    const does = chance !== "" && cut.odds.plan < cut.odds.other ? "More weight of" : "Brings on";
    return why(`${does} the ${who}: ${sizes}`, `${does} ${who}: ${brief}`);
  }
  if (chance !== "" && cut.odds.plan > cut.odds.other)
    return why(
      `Better odds of salad size for the ${who} on ${when}: ${after} instead of ${before}.`,
      `Odds of ${who}: ${after}, not ${before}, ${monthAndDay(units, date)}.`,
    );
  return null;
}

/** Beds told of one change, those it does most for; where there is no room, one. judgement */
const BEDS = 2;

export const soon = ({ cut }: Bed): boolean => cut?.pick.planned === true;

export function timingReason({ gain, without }: Change, outcome: Outcome, names: Names): Why | null {
  const beds = [...without.beds].sort((a, b) => b.gain.timing - a.gain.timing);
  for (const told of [beds.filter(soon), beds]) {
    const sentences = told.flatMap((bed) => sizeReason(bed, outcome, names) ?? []);
    const [first] = sentences;
    if (first !== undefined) return why(joined(sentences.slice(0, BEDS)).own.told, first.own.brief);
  }
  const [most] = beds;
  if (most === undefined || gain.timing <= 0) return null;
  const { size } = most.cut ?? { size: null };
  const grows = size === null ? 0 : Math.sign(size.plan.middle - size.other.middle);
  const does = grows > 0 ? "Brings on" : grows < 0 ? "Holds back" : "Helps";
  const who = names.succession(most.succession);
  return why(`${does} the ${who} a little.`, `${does} ${who} a little: ${value(outcome.farm, gain.timing)}.`);
}

/** How likely damage is in the worst part of a day, with and without one change; null where that reads alike. */
export function damageReason(
  said: Why | null,
  { without: { worst } }: Change,
  outcome: Outcome,
  names: Names,
): Why | null {
  if (worst === null) return null;
  const [after, before] = [chanceOf(worst.odds.plan), chanceOf(worst.odds.other)];
  if (after === before) return null;
  const { units, place } = outcome.farm;
  const { date, part } = worst.walk;
  const then =
    part === "evening" ? nightAhead(units, date, localDate(place.zone, outcome.on)) : day(units, date);
  const when = said?.cause.told.includes(then) ? "" : `, ${then}`;
  const who = names.succession(worst.succession);
  const odds = `${after} instead of ${before}`;
  return worst.of === "stubble"
    ? why(
        `Risk of losing the stubble of the ${who}${when}: ${odds}.`,
        `Risk to stubble of ${who}: ${after}, not ${before}.`,
      )
    : why(`Risk of damage to the ${who}${when}: ${odds}.`, `Risk to ${who}: ${after}, not ${before}.`);
}

/** The bed that a change lets dry before its cut and that gains most by it; null: none. */
export function dryReason({ without: { beds } }: Change, { farm }: Outcome, names: Names): Why | null {
  const [most] = beds
    .filter(({ cut }) => cut?.wet?.other === true && !cut.wet.plan)
    .sort((a, b) => b.gain.stress - a.gain.stress);
  if (most?.cut?.wet == null) return null;
  const { units, place } = farm;
  const date = localDate(place.zone, most.cut.at);
  const who = names.succession(most.succession);
  const fell = rain(units, most.cut.wet.rain);
  const gained = value(farm, most.gain.stress);
  return why(
    `Rain before the cut of ${day(units, date)}, ${fell}: under wet row cover the ${who} would be cut wet and keep worse; uncovered it dries sooner, worth ${gained} more.`,
    `Rain, ${fell}: ${who} dries sooner, ${monthAndDay(units, date)}, worth ${gained}.`,
  );
}

/** The order that is filled better by most. */
export function orderReason({ without: { filled } }: Change, { farm }: Outcome): Why | null {
  const [most] = filled;
  const product = farm.products.find(({ id }) => id === most?.product);
  if (most === undefined || product === undefined) return null;
  const more = weight(farm.units, (most.plan - most.other) as Kilogram);
  const { market, marketDate } = most.pick;
  const name = clean(product.name);
  return why(
    `Fills ${more} more of an order: ${name} for ${clean(market.name)} on ${day(farm.units, marketDate)}.`,
    `Fills ${more} more of ${name}, ${monthAndDay(farm.units, marketDate)}.`,
  );
}
