import { type DateOrder, type Dialect, plainWords } from "./dialect.ts";

function dayOf(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || day < 1 || day > 31) return null;
  const ms = Date.UTC(year, month - 1, day);
  return new Date(ms).getUTCDate() === day ? ms : null;
}

const fullYear = (text: string): number => (text.length <= 2 ? 2000 + Number(text) : Number(text));

const LETTERS = /\p{L}/u;

/** Parts of a date that say something: neither a weekday before it nor words like "de". */
function partsOf(
  text: string,
  { months, fillers }: Dialect,
): readonly (string | { readonly month: number })[] {
  const plain = LETTERS.test(text) ? plainWords(text) : text.trim();
  const parts: (string | { readonly month: number })[] = [];
  for (const part of plain.split(/[-/.,\s年月日]+/u)) {
    if (part === "" || fillers.includes(part)) continue;
    if (!LETTERS.test(part)) parts.push(part);
    else if (/^\d+(?:st|nd|rd|th)$/u.test(part)) parts.push(part.slice(0, -2));
    else {
      const month = months.findIndex((begins) => begins.some((begin) => part.startsWith(begin))) + 1;
      if (month > 0) parts.push({ month });
      else if (parts.length > 0) return [];
    }
  }
  return parts;
}

/** The date in a text under one order of its parts; null when it is none in that order. [ms] */
export function dateOf(text: string, order: DateOrder, dialect: Dialect): number | null {
  const compact = /^(\d{4})(\d{2})(\d{2})$/u.exec(text.trim());
  if (compact !== null) return dayOf(Number(compact[1]), Number(compact[2]), Number(compact[3]));
  const parts = partsOf(text, dialect);
  if (parts.length !== 3) return null;
  const named = parts.findIndex((part) => typeof part !== "string");
  if (named >= 0) {
    // A month by its name settles the order by itself.
    const [first, second] = parts.filter((part) => typeof part === "string");
    if (first === undefined || second === undefined || !/^\d+$/u.test(first + second)) return null;
    const [year, day] = first.length === 4 ? [first, second] : [second, first];
    return dayOf(fullYear(year), (parts[named] as { readonly month: number }).month, Number(day));
  }
  const [a, b, c] = parts as [string, string, string];
  if (!/^\d+$/u.test(a + b + c)) return null;
  if (a.length === 4) return order === "ymd" ? dayOf(Number(a), Number(b), Number(c)) : null;
  if (c.length === 4 && order === "ymd") return null;
  if (order === "ymd") return dayOf(fullYear(a), Number(b), Number(c));
  const [month, day] = order === "mdy" ? [a, b] : [b, a];
  return dayOf(fullYear(c), Number(month), Number(day));
}

/** True when a date reads the same in every order: year first, or the month by name. */
export const settledByItself = (date: string): boolean =>
  /^\s*\d{4}[-/.\s年]|^\s*\d{8}\s*$/u.test(date) ||
  /\p{L}{3}.*\d/u.test(date.replace(/^\p{L}+[.,]*\s+(?=\d+[-/.])/u, "").replace(/[T\s]\d+:.*$/u, ""));
