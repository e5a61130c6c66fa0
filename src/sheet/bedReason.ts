import type { Change, Outcome } from "../decide/index.ts";
import { type Kilogram, localDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { joined, type Why, why } from "./why.ts";
import { day, dayOfMonth, leaves, night, odds, value, weight } from "./words.ts";

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

/** Beds told of one change: those it does most for. judgement */
const BEDS = 2;

export const soon = ({ cut }: Bed): boolean => cut?.pick.planned === true;

export function timingReason({ gain, without }: Change, outcome: Outcome, names: Names): Why | null {
  const beds = [...without.beds].sort((a, b) => b.gain.timing - a.gain.timing);
  for (const told of [beds.filter(soon), beds]) {
    const sentences = told.flatMap((bed) => sizeReason(bed, outcome, names) ?? []);
    if (sentences.length > 0) return joined(sentences.slice(0, BEDS));
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
export function damageReason(
  said: Why | null,
  { without: { worst } }: Change,
  outcome: Outcome,
  names: Names,
): Why | null {
  if (worst === null) return null;
  const [after, before] = [odds(worst.odds.plan), odds(worst.odds.other)];
  if (after === before) return null;
  const { units } = outcome.farm;
  const { date, part } = worst.walk;
  const when = part === "evening" ? `in ${night(units, date)}` : `on ${day(units, date)}`;
  const then = said?.told.includes(when) ? "then" : when;
  const who = names.succession(worst.succession);
  const what = worst.of === "stubble" ? "Loss of the stubble of the" : "Damage to the";
  return why(
    `${what} ${who} ${then}: ${after}; without this change ${before}.`,
    `${what} ${who}: ${after}, not ${before}.`,
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
    `Fills ${more} more of the order for ${clean(market.name)} on ${day(farm.units, marketDate)}: ${name}.`,
    `Fills ${more} more of ${name}, ${dayOfMonth(marketDate)}.`,
  );
}
