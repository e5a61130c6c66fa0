import type { Dialect } from "./dialect.ts";
import { type Scale, scaleNamed } from "./scale.ts";

/** A number as a cell holds it, with the unit behind it if there is one; or why there is none. */
export type Reading =
  | number
  | { readonly number: number; readonly scale: Scale }
  | "noReading"
  | "unreadable";

const MINUS = /^[-−–]\s*/u;
const NUMBER = /^([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-+]?\d+)?)(?:\s*(\S.*))?$/iu;

/** A plain number, the common case, without looking at it letter by letter. NaN for all else. */
function plainNumber(text: string): number {
  const first = text.charCodeAt(0);
  // Digits, and the minus; a second letter x would make it hexadecimal.
  if (!(first >= 48 && first <= 57) && first !== 45) return Number.NaN;
  return text.length < 12 && text.charCodeAt(1) !== 120 ? +text : Number.NaN;
}

/** A reader of single cells. */
export function readingReader(dialect: Dialect): (cell: string) => Reading {
  const missing = new Set(dialect.missing);
  const cut = (text: string): Reading => {
    if (!/\d/u.test(text)) return "noReading";
    const match = NUMBER.exec(text.replace(MINUS, "-"));
    if (match === null) return "unreadable";
    const number = Number(match[1]!.replace(",", "."));
    if (missing.has(number)) return "noReading";
    const behind = match[2];
    if (behind === undefined) return number;
    const scale = /\d/u.test(behind) ? null : scaleNamed(behind, dialect);
    if (scale !== null) return { number, scale };
    // A letter or a mark behind the number is a flag.
    return /^[\p{L}*#!]$/u.test(behind) ? number : "unreadable";
  };
  return (cell) => {
    const plain = plainNumber(cell);
    if (!Number.isNaN(plain)) return missing.has(plain) ? "noReading" : plain;
    return cut(cell.trim());
  };
}
