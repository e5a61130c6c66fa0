import { parseQuantity } from "../quantity/index.ts";
import { WET } from "./sky.ts";
import { snowAsWater } from "./snowAsWater.ts";

const WORD = `(${WET.join("|")})`;
const AMOUNT = String.raw`(\d*\.?\d+\s*(?:inch(?:es)?|in|mm|cm))\b`;
const FALLS = new RegExp(
  String.raw`\b${WORD}\s+${AMOUNT}|(?<![\w.-])${AMOUNT}\s+(?:of\s+)?(?:new\s+)?${WORD}\b|\b${WORD}\b`,
  "gu",
);

/** What a day's line says of rain and snow; null: nothing. `amount` as water, null: none is said. [mm] */
export interface Fall {
  readonly amount: number | null;
}

/** A named amount of rain, or of new snow as water. [mm] */
function waterOf(word: string, amount: string): number {
  const depth = parseQuantity(amount, "length", null).value!;
  return word === "snow" ? snowAsWater(depth) : depth * 1000;
}

/**
 * Takes what is said of rain and snow out of a line in small letters; amounts of several are added up.
 *
 * @example fallIn("34 30 cloud snow 4 in") // => [{ amount: 10.16 }, "34 30 cloud"]
 */
export function fallIn(text: string): readonly [Fall | null, string] {
  const found = [...text.matchAll(FALLS)];
  if (found.length === 0) return [null, text];
  const amounts = found.flatMap(([, before, after, first, word]) =>
    after !== undefined ? [waterOf(before!, after)] : first !== undefined ? [waterOf(word!, first)] : [],
  );
  const amount = amounts.length === 0 ? null : amounts.reduce((sum, each) => sum + each, 0);
  return [{ amount }, text.replace(FALLS, "").replace(/\s+/gu, " ").trim()];
}
