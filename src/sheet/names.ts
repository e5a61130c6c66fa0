import type { SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { clean } from "./clean.ts";
import { TIED } from "./wrap.ts";

/** A cover's name whose numbers stay with their units when a line is broken. */
const tie = (name: string): string => name.replace(/(\d) (?=[a-z%])/gu, `$1${TIED}`);

/** A weight in ounces that follows the one in grams. */
const OUNCES = / \(\d+(?:\.\d+)? oz\)/gu;

const TIGHT: readonly (readonly [long: string, tight: string])[] = [
  ["row cover", "cover"],
  ["shade cloth", "shade"],
  ["plastic film closed", "film"],
  ["plastic film", "film"],
  ["insect net", "net"],
];

/** Names as they are printed, cleaned, by id. An id nothing is known about stands for itself. */
export interface Names {
  readonly tunnel: (id: string) => string;
  readonly cover: (id: string) => string;
  /** The same without brackets and commas, for narrow places. */
  readonly shortCover: (id: string) => string;
  /** The same without what the numbers say already: "cover 19 g", for the narrowest places. */
  readonly tightCover: (id: string) => string;
  /** Crop and id, e.g. "arugula (A12)". */
  readonly succession: (id: string) => string;
}

export function namesOf(
  farm: Farm,
  outlooks: readonly Pick<SuccessionOutlook, "succession" | "crop">[],
): Names {
  const shown = (name: string): string => (farm.units === "metric" ? name.replace(OUNCES, "") : name);
  const tunnels = new Map(farm.tunnels.map(({ id, name }) => [id, clean(name)]));
  const covers = new Map([...farm.covers].map(([id, { name }]) => [id, tie(shown(clean(name)))]));
  const successions = new Map(
    outlooks.map(({ succession, crop }) => [succession.id, `${clean(crop.name)} (${clean(succession.id)})`]),
  );
  const shortCover = (id: string): string =>
    (covers.get(id) ?? clean(id)).replace(/(?<=.) \([^()]*\)|,(?= )/gu, "");
  return {
    tunnel: (id) => tunnels.get(id) ?? clean(id),
    cover: (id) => covers.get(id) ?? clean(id),
    shortCover,
    tightCover: (id) => TIGHT.reduce((name, [long, tight]) => name.replaceAll(long, tight), shortCover(id)),
    succession: (id) => successions.get(id) ?? clean(id),
  };
}
