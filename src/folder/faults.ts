import { didYouMean, type Problem } from "../problem/index.ts";
import {
  type Metre,
  parseQuantity,
  type QuantityFault,
  type QuantityKind,
  toFeet,
} from "../quantity/index.ts";

/** How a farm writes and is shown its quantities. */
export type Units = "US" | "metric";

/** Where a value stands in the grower's files. */
export interface Spot {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | number | null;
}

/** A length as the farm measures it. */
export const shownLength = (length: Metre, units: Units): string => {
  const value = units === "US" ? toFeet(length) : length;
  return `${Math.round(value * 100) / 100} ${units === "US" ? "ft" : "m"}`;
};

/** A value as it is shown back: in quotes, shortened when long. */
export function shown(text: string): string {
  const line = text.replace(/[\s\p{Cc}]+/gu, " ").trim();
  return line === "" ? "nothing" : `"${line.length > 60 ? `${line.slice(0, 57)}...` : line}"`;
}

const QUANTITY: Readonly<Record<QuantityKind, { readonly name: string; readonly like: string }>> = {
  temperature: { name: "a temperature", like: "85 F or 29 C" },
  temperatureDifference: { name: "a difference of temperatures", like: "4 F or 2 C" },
  thermalTime: { name: "thermal time", like: "300 C d or 540 F d" },
  length: { name: "a length", like: "50 ft or 15 m" },
  leaf: { name: "a leaf length", like: "3 in or 8 cm" },
  mass: { name: "a weight", like: "30 lb or 14 kg" },
  yield: { name: "a weight per length of bed", like: "0.5 lb/ft or 0.7 kg/m" },
  effort: { name: "a time per length of bed", like: "0.6 min/ft or 2 min/m" },
  speed: { name: "a wind speed", like: "15 mph or 7 m/s" },
  minutes: { name: "a time", like: "30 min" },
  share: { name: "a share", like: "60 % or 0.6" },
  price: { name: "a price", like: "12 per lb or 26 per kg" },
};

/** @example quantityWords("length") // => "a length like 50 ft or 15 m" */
export const quantityWords = (kind: QuantityKind): string =>
  `${QUANTITY[kind].name} like ${QUANTITY[kind].like}`;

/** As an example of the kind in the farm's units. @example likeIn("length", "US") // => "50 ft" */
function likeIn(kind: QuantityKind, units: Units): string {
  const [us, metric = us] = QUANTITY[kind].like.split(" or ") as [string, string?];
  return units === "US" ? us : metric;
}

/** The unit a header states. @example usualUnit("length", "US") // => "ft" */
export const usualUnit = (kind: QuantityKind, units: Units): string => likeIn(kind, units).split(" ")[1]!;

const CODE: Readonly<Record<QuantityFault, string>> = {
  notNumber: "quantity-unreadable",
  ambiguous: "number-ambiguous",
  noUnit: "unit-missing",
  unknownUnit: "unit-unknown",
  wrongKind: "unit-of-another-kind",
};

/** The one unit in a text; null when there is none or there are several. */
const unitIn = (text: string): string | null =>
  /^[-+−\d.,/\s]*([^\d\s][^\d]*)$/u.exec(text)?.[1]?.trim() ?? null;

/**
 * A text that is no quantity, as a problem.
 *
 * @param header - A column's name to show how a header states a unit, or null.
 * @param units - The farm's, for examples.
 */
export function quantityProblem(
  spot: Spot,
  text: string,
  kind: QuantityKind,
  found: QuantityFault,
  header: string | null,
  units: Units = "US",
): Problem {
  const unit = unitIn(text);
  // Kelvin measures differences here; as a temperature nobody on a farm reads it.
  const fault = kind === "temperature" && unit?.toLowerCase() === "k" ? "unknownUnit" : found;
  const apart = parseQuantity(text, "temperatureDifference", null).fault === null;
  const inHeader =
    header === null ? "" : `, or once in the column's header, like ${header} (${usualUnit(kind, units)})`;
  const hints: Readonly<Record<QuantityFault, string>> = {
    notNumber: "Write a number and its unit.",
    ambiguous:
      kind === "share"
        ? "Write the % sign behind it, or a number from 0 to 1."
        : "Leave the comma out, or use a point for decimals.",
    noUnit: `Write the unit behind the number${inHeader}.`,
    unknownUnit: `${unit === null ? "U" : `The unit ${unit} is not known; u`}se one of the usual units.`,
    wrongKind:
      kind === "temperature" && apart
        ? "That is a difference; write how warm it is, not how much warmer."
        : `This unit measures something else; the field holds ${QUANTITY[kind].name}.`,
  };
  return {
    ...spot,
    code: CODE[fault],
    weight: "stops",
    expected: quantityWords(kind),
    received: shown(text),
    hint: hints[fault],
  };
}

/** Names told when none is near: all crops and all covers of the catalogue, with some of the farm's own. */
const LISTED = 24;

/** Names one behind the other, a long list shortened. */
export const listed = (known: readonly string[]): string =>
  known.length > LISTED
    ? `${known.slice(0, LISTED).join(", ")} and ${known.length - LISTED} more`
    : known.join(", ");

/** A name nobody knows, with the nearest known one. `kind`: what it should be, with its article, as "a crop". */
export function unknownName(
  spot: Spot,
  name: string,
  kind: string,
  known: readonly string[],
  code: string,
): Problem {
  const near = didYouMean(name, known);
  const hint =
    near !== null
      ? `Did you mean "${near}"?`
      : known.length > 0
        ? `Known: ${listed(known)}.`
        : "None is named yet.";
  return { ...spot, code, weight: "stops", expected: kind, received: shown(name), hint };
}
