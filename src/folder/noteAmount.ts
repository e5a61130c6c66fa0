import { type ParsedQuantity, parseQuantity, type QuantityOf } from "../quantity/index.ts";
import type { Units } from "./faults.ts";

/** A word, a number, a sign, or what joins two amounts. */
export interface Token {
  readonly kind: "number" | "word" | "sign" | "join";
  readonly text: string;
}

const TOKEN =
  /(?<number>\d+(?:\s+|-)\d\/\d{1,2}(?!\d)|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+)|(?<join>[&+]|and(?![\p{L}\p{N}'_]))|(?<word>\p{L}[\p{L}\p{N}'_]*)|(?<sign>[^\s,:;~])/gu;

const NAMED = ["number", "join", "word"] as const;

/**
 * The words, numbers and signs of a text. A dash is one of them where it could belong to a number, and what joins where
 * a number follows.
 *
 * @example tokensOf("4in - 3 1/2").map(({ text }) => text) // => ["4", "in", "3 1/2"]
 * @example tokensOf("10-12 lb").map(({ text }) => text) // => ["10", "-", "12", "lb"]
 */
export function tokensOf(text: string): readonly Token[] {
  const found = [...text.matchAll(TOKEN)].map(({ 0: match, groups, index }) => ({
    kind: NAMED.find((kind) => groups![kind] !== undefined) ?? ("sign" as const),
    text: match,
    begins: index,
    ends: index + match.length,
  }));
  return found
    .filter(({ kind, text: own, begins, ends }, index) => {
      const numberOf = (token: (typeof found)[number] | undefined) =>
        token?.kind === "number" ? token : null;
      const [before, behind] = [numberOf(found[index - 1]), numberOf(found[index + 1])];
      if (kind === "join") return behind !== null;
      if (own !== "-" || (before !== null && behind !== null)) return true;
      return before?.ends === begins || behind?.begins === ends;
    })
    .map(({ kind, text: own }) => ({ kind, text: own }));
}

/** Numbers with nothing but commas and points between them. */
const RUN = /\d+(?:[.,]\d+)+/gu;

/**
 * Commas between digits told apart: a decimal comma where a farm counts in metres, else one between two numbers.
 * null when it could be either: beside a point a comma may be a second way to write decimals.
 *
 * @example plainCommas("10,5", "metric") // => "10.5"
 * @example plainCommas("4,3.5", "US") // => "4, 3.5"
 */
export function plainCommas(text: string, units: Units): string | null {
  const runs = (text.match(RUN) ?? []).filter((run) => run.includes(","));
  if (runs.length === 0) return text;
  if (units === "metric")
    return /\d\.\d/u.test(text) || runs.some((run) => run.split(",").length > 2)
      ? null
      : text.replace(/(?<=\d),(?=\d)/gu, ".");
  return runs.every((run) => run.includes(".") || run.split(",").length > 2)
    ? text.replace(/(?<=\d),(?=\d)/gu, ", ")
    : null;
}

type Kind = "leaf" | "mass";

const USUAL: Readonly<Record<Kind, Readonly<Record<Units, string>>>> = {
  leaf: { US: "in", metric: "cm" },
  mass: { US: "lb", metric: "kg" },
};

/** One value with its unit. */
export interface Amount<Value> {
  readonly value: Value;
  /** What one of its unit is: alike for units that are. */
  readonly unit: number;
  /** "and" or + stands before it. */
  readonly joined: boolean;
}

/** Amounts of a line; the words that are none; a range, which is neither of its ends; or what else is unclear. */
export type Amounts<Value> =
  | { readonly amounts: readonly Amount<Value>[] }
  | { readonly unknown: readonly string[] }
  | { readonly range: true }
  | { readonly unclear: string };

/** Halves to sixteenths: what a ruler or a scale shows; anything else behind a slash may be a date. */
const isFraction = (text: string): boolean => {
  const [, over, under] = /(\d+)\/(\d+)$/u.exec(text) ?? [];
  return over === undefined || ([2, 3, 4, 8, 16].includes(Number(under)) && Number(over) < Number(under));
};

/**
 * Reads the amounts of a line. A unit named once counts for all; none at all is the farm's usual one.
 *
 * @example amountsOf(tokensOf("4 in 3.5"), "leaf", "US").amounts.map(({ value }) => value) // => [10.16, 8.89]
 */
export function amountsOf<K extends Kind>(
  tokens: readonly Token[],
  kind: K,
  units: Units,
): Amounts<QuantityOf[K]> {
  const found: { number: string; unit: string | null; joined: boolean }[] = [];
  const unknown: string[] = [];
  const oneOf = (unit: string): ParsedQuantity<QuantityOf[K]> => parseQuantity(`1 ${unit}`, kind, null);
  tokens.forEach(({ kind: what, text }, index) => {
    const last = found.at(-1);
    if (what === "number")
      found.push({
        number: text.replace("-", " "),
        unit: null,
        joined: tokens[index - 1]?.kind === "join",
      });
    else if (last !== undefined && last.unit === null && oneOf(text).fault === null) last.unit = text;
    else if (what !== "join" && text !== "-") unknown.push(text);
  });
  if (unknown.length > 0) return { unknown };
  if (tokens.some(({ text }) => text === "-")) return { range: true };
  const odd = found.find(({ number }) => !isFraction(number));
  if (odd !== undefined)
    return { unclear: `"${odd.number}" is no fraction of a ruler; write a day like Apr 21.` };
  const named = [...new Set(found.flatMap(({ unit }) => unit ?? []))];
  if (named.length > 1 && found.some(({ unit }) => unit === null))
    return { unclear: "Write the unit behind each number, since there are several." };
  const amounts = found.flatMap(({ number, unit, joined }): readonly Amount<QuantityOf[K]>[] => {
    const meant = unit ?? named[0] ?? USUAL[kind][units];
    const [one, { value }] = [oneOf(meant).value, parseQuantity(`${number} ${meant}`, kind, null)];
    return one === null || value === null ? [] : [{ value, unit: one, joined }];
  });
  return amounts.length === found.length ? { amounts } : { unclear: "Write numbers like 4, 3.5 or 3 1/2." };
}

/** Amounts as one: parts of it in units of their own, as 14 lb 8 oz, or joined in words; null where they are several. */
export function sumOf(amounts: readonly Amount<number>[]): number | null {
  const parts = new Set<number>();
  for (const { unit, joined } of amounts) {
    if (joined) parts.clear();
    if (parts.has(unit)) return null;
    parts.add(unit);
  }
  return amounts.reduce((sum, { value }) => sum + value, 0);
}
