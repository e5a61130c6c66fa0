import { type ParsedQuantity, parseQuantity, type QuantityOf } from "../quantity/index.ts";
import type { Units } from "./faults.ts";

/** A word, a number or a sign of a line. */
export interface Token {
  readonly kind: "number" | "word" | "sign";
  readonly text: string;
}

const TOKEN =
  /(?<number>\d+(?:\s+|-)\d\/\d{1,2}(?!\d)|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)|(?<word>\p{L}[\p{L}\p{N}'_]*)|(?<sign>[^\s,:&+~])/gu;

/** @example tokensOf("4in 3 1/2").map(({ text }) => text) // => ["4", "in", "3 1/2"] */
export const tokensOf = (text: string): readonly Token[] =>
  [...text.matchAll(TOKEN)].map(({ 0: match, groups }) => ({
    kind: groups!.number !== undefined ? "number" : groups!.word !== undefined ? "word" : "sign",
    text: match,
  }));

/**
 * Commas between digits told apart: a decimal comma where a farm counts in metres, else one between two numbers.
 * null when it could be either.
 *
 * @example plainCommas("10,5", "metric") // => "10.5"
 */
export function plainCommas(text: string, units: Units): string | null {
  const tight = text.match(/\d,\d/gu);
  if (tight === null) return text;
  const points = /\d\.\d/u.test(text);
  if (points) return text.replace(/(?<=\d),(?=\d)/gu, ", ");
  const runs = text.match(/\d+(?:,\d+)+/gu)!;
  if (units === "metric" && runs.every((run) => /^\d+,\d+$/u.test(run)))
    return text.replace(/(?<=\d),(?=\d)/gu, ".");
  return units === "US" && runs.every((run) => run.split(",").length > 2)
    ? text.replace(/(?<=\d),(?=\d)/gu, ", ")
    : null;
}

type Kind = "leaf" | "mass";

const USUAL: Readonly<Record<Kind, Readonly<Record<Units, string>>>> = {
  leaf: { US: "in", metric: "cm" },
  mass: { US: "lb", metric: "kg" },
};

/** Amounts with their units, or the words that are none. */
export type Amounts<Value> =
  | { readonly values: readonly Value[] }
  | { readonly unknown: readonly string[] }
  | { readonly unclear: string };

/** Halves to sixteenths: what a ruler or a scale shows; anything else behind a slash may be a date. */
const isFraction = (text: string): boolean => {
  const [, over, under] = /(\d+)\/(\d+)$/u.exec(text) ?? [];
  return over === undefined || ([2, 3, 4, 8, 16].includes(Number(under)) && Number(over) < Number(under));
};

/**
 * Reads the amounts of a line. A unit named once counts for all; none at all is the farm's usual one.
 *
 * @example amountsOf(tokensOf("4 in 3.5"), "leaf", "US").values // => [10.16, 8.89]
 */
export function amountsOf<K extends Kind>(
  tokens: readonly Token[],
  kind: K,
  units: Units,
): Amounts<QuantityOf[K]> {
  const found: { number: string; unit: string | null }[] = [];
  const unknown: string[] = [];
  for (const { kind: what, text } of tokens) {
    const last = found.at(-1);
    if (what === "number") found.push({ number: text.replace("-", " "), unit: null });
    else if (
      last !== undefined &&
      last.unit === null &&
      parseQuantity(`1 ${text}`, kind, null).fault === null
    )
      last.unit = text;
    else unknown.push(text);
  }
  if (unknown.length > 0) return { unknown };
  const odd = found.find(({ number }) => !isFraction(number));
  if (odd !== undefined)
    return { unclear: `"${odd.number}" is no fraction of a ruler; write a day like Apr 21.` };
  const named = [...new Set(found.flatMap(({ unit }) => unit ?? []))];
  if (named.length > 1 && found.some(({ unit }) => unit === null))
    return { unclear: "Write the unit behind each number, since there are several." };
  const read = found.map(
    ({ number, unit }): ParsedQuantity<QuantityOf[K]> =>
      parseQuantity(`${number} ${unit ?? named[0] ?? USUAL[kind][units]}`, kind, null),
  );
  const values = read.flatMap(({ value }) => (value === null ? [] : [value]));
  return values.length === read.length ? { values } : { unclear: "Write numbers like 4, 3.5 or 3 1/2." };
}
