import { didYouMean, type Problem } from "../problem/index.ts";
import type { QuantityFault, QuantityKind } from "../quantity/index.ts";

/** Where a value stands in the grower's files. */
export interface Spot {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | number | null;
}

/** A value as it is shown back: in quotes, shortened when long. */
export const shown = (text: string): string =>
  text.trim() === "" ? "nothing" : `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;

const QUANTITY: Readonly<Record<QuantityKind, { readonly name: string; readonly like: string }>> = {
  temperature: { name: "a temperature", like: "85 F or 29 C" },
  temperatureDifference: { name: "a difference of temperatures", like: "4 F or 2 C" },
  thermalTime: { name: "thermal time", like: "300 C d or 540 F d" },
  length: { name: "a length", like: "50 ft or 15 m" },
  leaf: { name: "a leaf length", like: "3 in or 8 cm" },
  mass: { name: "a weight", like: "30 lb or 14 kg" },
  yield: { name: "a weight per length of bed", like: "0.5 lb/ft or 0.7 kg/m" },
  speed: { name: "a wind speed", like: "15 mph or 7 m/s" },
  minutes: { name: "a time", like: "30 min" },
  share: { name: "a share", like: "60 % or 0.6" },
  price: { name: "a price", like: "12 per lb or 26 per kg" },
};

/** @example quantityWords("length") // => "a length like 50 ft or 15 m" */
export const quantityWords = (kind: QuantityKind): string =>
  `${QUANTITY[kind].name} like ${QUANTITY[kind].like}`;

const CODE: Readonly<Record<QuantityFault, string>> = {
  notNumber: "quantity-unreadable",
  ambiguous: "number-ambiguous",
  noUnit: "unit-missing",
  unknownUnit: "unit-unknown",
  wrongKind: "unit-of-another-kind",
};

/** A text that is no quantity, as a problem. `header`: a column's name to show how a header states a unit. */
export function quantityProblem(
  spot: Spot,
  text: string,
  kind: QuantityKind,
  fault: QuantityFault,
  header: string | null,
): Problem {
  const like = QUANTITY[kind].like.split(" or ")[0]!;
  const inHeader =
    header === null ? "" : `, or once in the column's header, like ${header} (${like.split(" ")[1]})`;
  const hints: Readonly<Record<QuantityFault, string>> = {
    notNumber: "Write a number and its unit.",
    ambiguous:
      kind === "share"
        ? "Write the % sign behind it, or a number from 0 to 1."
        : "Leave the comma out, or use a point for decimals.",
    noUnit: `Write the unit behind the number${inHeader}.`,
    unknownUnit: "Use one of the usual units.",
    wrongKind: `This unit measures something else; the field holds ${QUANTITY[kind].name}.`,
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

/** A name nobody knows, with the nearest known one. `kind`: what it should be, with its article, as "a crop". */
export function unknownName(
  spot: Spot,
  name: string,
  kind: string,
  known: readonly string[],
  code: string,
): Problem {
  const near = didYouMean(name, known);
  const list =
    known.length > 12 ? `${known.slice(0, 12).join(", ")} and ${known.length - 12} more` : known.join(", ");
  const hint =
    near !== null ? `Did you mean "${near}"?` : known.length > 0 ? `Known: ${list}.` : "None is named yet.";
  return { ...spot, code, weight: "stops", expected: kind, received: shown(name), hint };
}
