import { coldFor, type Outcome, type Pick, type SuccessionOutlook } from "../decide/index.ts";
import type { Farm, Product } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { type LocalDate, localDate, localHour } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { SECOND_USE_SHORT, todo } from "./fate.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { samePick } from "./samePick.ts";
import {
  capital,
  clock,
  day,
  dayOfMonth,
  lacking,
  leaf,
  leafSpread,
  marketDay,
  odds,
  weight,
  weightStated,
} from "./words.ts";

/** One pick: what is cut for one selling day. */
export interface PickBlock {
  readonly date: LocalDate;
  readonly market: string;
  readonly heading: string;
  /** Whole sentences: expected and ordered. */
  readonly products: readonly PickProduct[];
  readonly rows: readonly PickRow[];
}

export interface PickProduct {
  readonly product: string;
  readonly name: string;
  /** null: nothing. */
  readonly expected: string | null;
  /** null: nothing is ordered. */
  readonly ordered: string | null;
  /** What the order lacks; null: nothing. */
  readonly short: string | null;
  readonly sentence: string;
}

export interface PickRow {
  readonly succession: string;
  readonly who: string;
  readonly tunnel: string;
  /** When it is cut. */
  readonly size: string | null;
  /** The range four of five leaves lie in, without unit; null where one number says it. */
  readonly range: string | null;
  readonly odds: string | null;
  readonly weight: string | null;
  /** Day it is cut, "Thu 23". */
  readonly cut: string | null;
  readonly todo: string;
  /** The same for a narrow column. */
  readonly todoShort: string;
  /** Is it more than plainly picking it in salad size? */
  readonly special: boolean;
  /** The same as whole sentences, where there is no room for columns. */
  readonly sentence: string;
}

export const pickHeading = (farm: Farm, pick: Pick): string => {
  return `${day(farm.units, pick.date)}, ${clock(farm.units, localHour(farm.place.zone, pick.at))}, for ${marketDay(farm.units, clean(pick.market.name), pick.date, pick.marketDate)}`;
};

function row(outlook: SuccessionOutlook, outcome: Outcome, names: Names): PickRow {
  const { farm } = outcome;
  const { succession, fate, atFate } = outlook;
  const last = outcome.walks.at(-1)?.date ?? null;
  const common = {
    succession: succession.id,
    who: names.succession(succession.id),
    tunnel: names.tunnel(succession.tunnel),
    cut:
      fate.kind === "none"
        ? null
        : dayOfMonth(fate.kind === "pick" ? fate.pick.date : localDate(farm.place.zone, fate.cut)),
    todo: todo(farm, outlook, last),
    todoShort: todo(farm, outlook, last, SECOND_USE_SHORT),
  };
  const head = `${capital(common.who)}, ${common.tunnel}`;
  if (atFate === null)
    return {
      ...common,
      size: null,
      range: null,
      odds: null,
      weight: null,
      special: true,
      sentence: `${head}. ${common.todo}`,
    };
  const size = mark(outlook) + leaf(farm.units, atFate.size);
  const range = leafSpread(farm.units, atFate.size);
  const heavy = mark(outlook) + weight(farm.units, atFate.weight);
  const chance = fate.kind !== "none" && fate.as === "braising" ? null : odds(atFate.odds);
  const figures = [
    range === null ? size : `${size} (${range})`,
    ...(chance === null ? [] : [`odds ${chance}`]),
    heavy,
  ].join(", ");
  const special = fate.kind !== "pick" || fate.as !== "salad";
  return {
    ...common,
    size,
    range,
    odds: chance,
    weight: heavy,
    special,
    sentence: special ? `${head}: ${figures}. ${common.todo}` : `${head}: ${figures}.`,
  };
}

/** Picks of the days planned, and later ones for which something is cut and kept cold in these days. */
function picksTold(outcome: Outcome): readonly Pick[] {
  const last = outcome.walks.at(-1)?.date ?? "";
  const later = outcome.successions.flatMap(({ fate }) =>
    fate.kind === "hold" && localDate(outcome.farm.place.zone, fate.cut) <= last ? [fate.pick] : [],
  );
  return [...outcome.picks.filter(({ planned }) => planned), ...later]
    .filter((pick, i, all) => all.findIndex((other) => samePick(other, pick)) === i)
    .sort((a, b) => a.at - b.at);
}

/** Why nothing of a crop is cut for a pick: "no kale sown", "beet greens too small"; null: another reason than sowing or size. */
function lackOf(crop: string, pick: Pick, { farm, successions }: Outcome): string | null {
  const name = clean(farm.crops.get(crop)?.name ?? crop);
  const its = successions.filter((outlook) => outlook.crop.id === crop && outlook.stage !== "finished");
  if (its.length === 0) return `no ${name} sown`;
  const sides = its.map(({ atPicks, crop: { smallest, largest } }) => {
    const at = atPicks.find((each) => samePick(each.pick, pick));
    if (at === undefined || at.planned.middle < smallest) return "too small";
    return at.planned.middle > largest ? "too large" : null;
  });
  const [side] = sides;
  return side != null && sides.every((each) => each === side) ? `${name} ${side}` : null;
}

/**
 * What keeps a product from its order: crops of which nothing is cut for the pick in salad size, "no arugula or mustard", and why of
 * one that is sold alone; else the part that runs out first, "too little mizuna"; null when neither.
 */
function without(
  product: Product | undefined,
  scarcest: string | null,
  pick: Pick,
  outcome: Outcome,
): string | null {
  const { farm, successions, keptCold } = outcome;
  const wanted = (product?.parts ?? []).filter(({ share }) => share > 0);
  const cut = new Set(
    successions
      .filter(({ fate }) => fate.kind !== "none" && fate.as === "salad" && samePick(fate.pick, pick))
      .map(({ crop }) => crop.id),
  );
  for (const crop of coldFor(keptCold, pick).keys()) cut.add(crop);
  const lacks = wanted.filter(({ crop }) => !cut.has(crop));
  const [only] = lacks;
  if (lacks.length === 1 && only !== undefined) {
    const why = lackOf(only.crop, pick, outcome);
    if (why !== null) return why;
  }
  if (wanted.length < 2) return null;
  const names = lacks.map(({ crop }) => clean(farm.crops.get(crop)?.name ?? crop));
  if (names.length > 0) return `no ${list(names, "or")}`;
  return scarcest === null ? null : `too little ${clean(farm.crops.get(scarcest)?.name ?? scarcest)}`;
}

export function picks(outcome: Outcome, names: Names): readonly PickBlock[] {
  const { farm } = outcome;
  return picksTold(outcome).map((pick) => ({
    date: pick.date,
    market: clean(pick.market.name),
    heading: pickHeading(farm, pick),
    products: outcome.products
      .filter((each) => samePick(each.pick, pick) && (each.expected > 0 || each.ordered > 0))
      .map(({ product, expected, ordered, scarcest, cold }) => {
        const sold = farm.products.find(({ id }) => id === product);
        const name = clean(sold?.name ?? product);
        const lacks = without(sold, scarcest, pick, outcome);
        const had = weight(farm.units, expected);
        const wanted = weightStated(farm.units, ordered);
        const short = lacking(farm.units, ordered, expected);
        const because = lacks === null ? "" : ` (${lacks})`;
        return {
          product,
          name,
          expected: expected <= 0 ? null : had,
          ordered: ordered <= 0 ? null : wanted,
          short,
          sentence:
            (ordered <= 0
              ? `${name}: ${had} expected, none ordered.`
              : short === null
                ? `${name}: ${had} expected, ${wanted} ordered.`
                : expected <= 0
                  ? `${name}: nothing for the ${wanted} ordered${because}.`
                  : `${name}: ${had} expected, ${wanted} ordered: ${short} short${because}.`) +
            (cold <= 0 ? "" : ` ${weight(farm.units, cold)} of its greens is cut and kept cold.`),
        };
      }),
    rows: outcome.successions
      .filter(({ fate }) => fate.kind !== "none" && samePick(fate.pick, pick))
      .filter(({ fate }) => pick.planned || fate.kind === "hold")
      .map((outlook) => row(outlook, outcome, names)),
  }));
}
