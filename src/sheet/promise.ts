import type { Outcome, Promised } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { groupBy, type Instant, type Kilogram, localDate, toPounds } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { page, type TextOptions } from "./page.ts";
import { day, dayAndYear, quarters, statedShown, type Units, weightStated } from "./words.ts";
import { TIED } from "./wrap.ts";

/** A list that was given out before. */
export interface Issued {
  readonly on: Instant;
  readonly promises: readonly Pick<Promised, "product" | "market" | "marketDate" | "safe">[];
}

/** Columns of a message that a phone shows without breaking it anew. */
const WIDTH = 60;

const inUnit = (units: Units, value: Kilogram): number => (units === "US" ? toPounds(value) : value);

/** Half pounds, quarter kilograms: finer would be invented. */
const stepOf = (units: Units): number => (units === "US" ? 0.5 : 0.25);

/** So that six pounds kept as kilograms stay six pounds. */
const HAIR = 1e-9;

/** What is safe, rounded down: half a pound too much would be a promise broken. In the farm's unit. */
const safeShown = (units: Units, value: Kilogram): number =>
  Math.floor(inUnit(units, value) / stepOf(units) + HAIR) * stepOf(units);

const mayShown = (units: Units, value: Kilogram): number =>
  Math.round(inUnit(units, value) / stepOf(units)) * stepOf(units);

const told = (units: Units, value: number): string =>
  units === "US" ? `${quarters(value)}${TIED}lb` : `${Math.round(value * 100) / 100}${TIED}kg`;

/** What is safe beside what is ordered, taken from the two as shown so that the printed sum is right; "" when nothing is ordered. */
function besideOrder(units: Units, ordered: Kilogram, safe: number): string {
  if (ordered <= 0) return "";
  const lacks = statedShown(units, inUnit(units, ordered)) - safe;
  const rest = Math.abs(lacks) < HAIR ? null : told(units, Math.abs(lacks));
  return `, ${weightStated(units, ordered)} ordered${rest === null ? "" : lacks > 0 ? `: ${rest} short` : `: ${rest} to spare`}`;
}

/** A product on one selling day in one or two sentences; null where there is nothing to tell of it. */
function sentence({ units, products }: Farm, { product, safe, mayCome, ordered }: Promised): string | null {
  const name = clean(products.find(({ id }) => id === product)?.name ?? product);
  const [sure, most] = [safeShown(units, safe), mayShown(units, mayCome)];
  if (most === 0 && ordered <= 0) return null;
  if (most === 0 && sure === 0) return `${name}: none for the ${weightStated(units, ordered)} ordered.`;
  if (sure === 0) {
    const wanted = ordered <= 0 ? "" : ` of ${weightStated(units, ordered)} ordered`;
    return `${name}: nothing safe yet${wanted}. Up to ${told(units, most)} may come.`;
  }
  const more = most > sure ? ` Up to ${told(units, most)} may come.` : "";
  return `${name}: ${told(units, sure)} safe${besideOrder(units, ordered, sure)}.${more}`;
}

/**
 * What has changed of a list given out before, a line each: "Fri Apr 24, arugula: 6 lb safe, was 8 lb." Told as both were shown, so
 * that nothing is said of what reads the same; selling days that only one of them has are no change.
 */
export function promiseChanges(
  { units, products, markets }: Farm,
  before: Issued["promises"],
  now: readonly Promised[],
): readonly string[] {
  const key = ({ product, market, marketDate }: Issued["promises"][number]): string =>
    JSON.stringify([product, market, marketDate]);
  const earlier = new Map(before.map((each) => [key(each), safeShown(units, each.safe)]));
  return now.flatMap((each) => {
    const [was, is] = [earlier.get(key(each)), safeShown(units, each.safe)];
    if (was === undefined || was === is) return [];
    const shared = now.some(
      ({ market, marketDate }) => marketDate === each.marketDate && market !== each.market,
    );
    const where = shared
      ? ` (${clean(markets.find(({ id }) => id === each.market)?.name ?? each.market)})`
      : "";
    const name = clean(products.find(({ id }) => id === each.product)?.name ?? each.product);
    const [here, there] = [
      is === 0 ? "nothing safe now" : `${told(units, is)} safe`,
      was === 0 ? "nothing was" : `was ${told(units, was)}`,
    ];
    return [`${day(units, each.marketDate)}${where}, ${name}: ${here}, ${there}.`];
  });
}

/** What a reader must know to trust the list no further than it goes. */
const NOTES: readonly string[] = [
  "Safe: there in 4 of 5 cases. May come: only in 1 of 5.",
  "With what is cut already, where its weight is noted.",
  "No contract: weather and pests may still take some.",
  "Greens cut early are kept cold, as local food rules say.",
];

/**
 * What can be offered on each selling day, as a short message for a chef or for members.
 *
 * @param issued - The list given out before, to tell what has changed; null: none was.
 */
export function promiseText(
  { farm, on, walks, promises }: Outcome,
  issued: Issued | null,
  { unicode }: Pick<TextOptions, "unicode">,
): string {
  const { units, place, markets } = farm;
  const out = page({ width: WIDTH, unicode, color: false });
  out.say(clean(farm.name));
  out.say(`Greens to offer, as of ${dayAndYear(units, localDate(place.zone, on))}`);
  const days = groupBy(promises, ({ market, marketDate }) => `${marketDate} ${market}`);
  if (days.size === 0) {
    out.gap();
    out.say(
      walks.length === 0
        ? "No weather is known, so nothing can be promised."
        : farm.products.length === 0
          ? "No products are listed in farm.yaml, so nothing can be promised."
          : "Nothing is picked for a selling day in these days.",
    );
  }
  for (const all of days.values()) {
    const { market, marketDate } = all[0]!;
    out.gap();
    out.say(`${clean(markets.find(({ id }) => id === market)?.name ?? market)}, ${day(units, marketDate)}`);
    const sentences = all.flatMap((each) => sentence(farm, each) ?? []);
    for (const each of sentences) out.say(each, { mark: "- " });
    if (sentences.length === 0) out.say("Nothing safe yet.", { mark: "- " });
  }
  const changed = issued === null ? [] : promiseChanges(farm, issued.promises, promises);
  if (issued !== null && changed.length > 0) {
    out.gap();
    out.say(`Changed since ${day(units, localDate(place.zone, issued.on))}`);
    for (const each of changed) out.say(each, { mark: "- " });
  }
  if (days.size > 0) {
    out.gap();
    for (const note of NOTES) out.say(note);
  }
  return out.text();
}
