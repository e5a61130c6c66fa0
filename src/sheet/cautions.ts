import type { SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { wind } from "./words.ts";

/** The usual cautions, and those this farm's covers and beds ask for. */
export function cautions(farm: Farm, outlooks: readonly SuccessionOutlook[]): readonly string[] {
  const owned = new Set(farm.pieces.map(({ cover }) => farm.covers.get(cover)?.kind));
  return [
    "Frost: no forecast and no cover guarantees against it. Hang a thermometer at crop height; light cloth on a clear, calm night may protect nothing.",
    "Heat: a cover left on in sun can spoil a bed within hours. Look at midday when the day turns out sunnier than forecast. Drink, rest and seek shade when you work under covers.",
    `Wind: a loose cloth is a danger to people, animals and roads. Put none on above ${wind(farm.units, farm.limits.wind)}, and weigh down what lies.`,
    "Greens cut early: wash, cool, store and sell them as your local food rules say. These and licensed practice come before this sheet.",
    ...(owned.has("film") ? ["Film sheds rain: water the beds under it."] : []),
    ...(outlooks.some(({ stage }) => stage === "emerging")
      ? ["A dry seedbed comes up later than shown: keep it moist."]
      : []),
  ];
}
