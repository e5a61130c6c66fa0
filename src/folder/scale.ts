import { type Celsius, celsius, fahrenheit } from "../quantity/index.ts";
import { type Dialect, plainWords } from "./dialect.ts";

/** What a number of a log counts: degrees of one unit, or tenths of them. */
export interface Scale {
  readonly unit: "C" | "F" | "K";
  readonly step: 1 | 0.1;
}

/** Kelvin at 0 °C. By definition. [K] */
const ICE = 273.15;

export function toCelsius(value: number, { unit, step }: Scale): Celsius {
  const degrees = value * step;
  return unit === "F" ? fahrenheit(degrees) : celsius(unit === "K" ? degrees - ICE : degrees);
}

/** @example scaleText({ unit: "C", step: 0.1 }) // => "tenths of °C" */
export const scaleText = ({ unit, step }: Scale): string =>
  `${step === 0.1 ? "tenths of " : ""}${unit === "K" ? "K" : `°${unit}`}`;

/** A degree sign as it is, as a sign like it, or damaged on its way through the wrong encoding. */
const DEGREE = /[°º˚?\uFFFDø¡´~^*]+\s?(?=[cfk]\b)/gu;

/**
 * The unit of temperature a text names, or null when it names none or two.
 *
 * @param prose - A line of prose, in which a single letter is an initial and no unit.
 * @example scaleNamed("Temp (°F)", PLAIN) // => { unit: "F", step: 1 }
 */
export function scaleNamed(text: string, dialect: Dialect, prose = false): Scale | null {
  const plain = plainWords(text).replace("℃", " °c ").replace("℉", " °f ").replace("â°", "°");
  const words = ` ${plain
    .replace(DEGREE, " °")
    .replace(/[()[\],:;#{}]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim()} `;
  const has = (spellings: readonly string[]): boolean =>
    spellings.some((spelling) => !(prose && spelling.length === 1) && words.includes(` ${spelling} `));
  // A bare K in a header is as likely a thousand; between brackets it is Kelvin.
  const kelvin = has(dialect.kelvin.filter((word) => word !== "k")) || /^k$|[([]\s*k\s*[)\]]/u.test(plain);
  const units = [
    ...(has(dialect.celsius) ? (["C"] as const) : []),
    ...(has(dialect.fahrenheit) ? (["F"] as const) : []),
    ...(kelvin ? (["K"] as const) : []),
  ];
  if (units.length !== 1) return null;
  const tenths =
    dialect.tenths.some((word) => words.includes(` ${word} `)) || /(?:^|[^±\d.,])0[.,]1 °/u.test(words);
  return { unit: units[0]!, step: tenths ? 0.1 : 1 };
}
