import type { DateOrder, Dialect } from "./dialect.ts";

/** A wall-clock time without its zone, in milliseconds as if it were universal time; `fixed` when the text itself says universal time or an offset. */
export interface Wall {
  readonly ms: number;
  readonly fixed: boolean;
}

const DAY = 86_400_000;

const CLOCK =
  /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*(?:([ap])\.?\s?m\.?)?\s*(z|utc|gmt|[+-]\d{2}:?\d{2})?$/iu;

/** Milliseconds since midnight, and minutes ahead of universal time when the text says so. */
function clockOf(text: string): { readonly ms: number; readonly offset: number | null } | null {
  if (text === "") return { ms: 0, offset: null };
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const [, hours, minutes, seconds = "0", half, zone] = match;
  let hour = Number(hours);
  if (Number(minutes) > 59 || Number(seconds) > 59) return null;
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  } else if (hour > 24 || (hour === 24 && Number(minutes) > 0)) return null;
  const ms = ((hour * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000;
  return { ms, offset: zone === undefined ? null : zoneOffset(zone) };
}

/** Minutes ahead of universal time. @example zoneOffset("-05:00") // => -300 */
export function zoneOffset(text: string): number {
  const match = /^([+-])(\d{2}):?(\d{2})$/u.exec(text);
  if (match === null) return 0;
  return (match[1] === "-" ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3]));
}

function dayOf(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || day < 1 || day > 31) return null;
  const ms = Date.UTC(year, month - 1, day);
  return new Date(ms).getUTCDate() === day ? ms : null;
}

const fullYear = (text: string): number => (text.length <= 2 ? 2000 + Number(text) : Number(text));

/** The date in a text under one order of its parts; null when it is none in that order. [ms] */
export function dateOf(text: string, order: DateOrder, { months }: Dialect): number | null {
  const [a, b, c] = text.split(/[-/.,\s]+/u).filter((part) => part !== "") as [string?, string?, string?];
  if (a === undefined || b === undefined || c === undefined) return null;
  const named = (part: string): number =>
    months.findIndex((month) => part.toLowerCase().startsWith(month)) + 1;
  if (/[a-z]/iu.test(a + b)) {
    // A month by its name settles the order by itself.
    const month = named(/[a-z]/iu.test(a) ? a : b);
    const [year, day] = /[a-z]/iu.test(a) ? [c, b] : a.length === 4 ? [a, c] : [c, a];
    return dayOf(fullYear(year), month, Number(day));
  }
  if (!/^\d+$/u.test(a + b + c)) return null;
  if (a.length === 4) return order === "ymd" ? dayOf(Number(a), Number(b), Number(c)) : null;
  if (c.length === 4 && order === "ymd") return null;
  if (order === "ymd") return dayOf(fullYear(a), Number(b), Number(c));
  const [month, day] = order === "mdy" ? [a, b] : [b, a];
  return dayOf(fullYear(c), Number(month), Number(day));
}

/** True when a date reads the same in every order: year first, or the month by name. */
export const settledByItself = (date: string): boolean =>
  /^\s*\d{4}[-/.]/u.test(date) || /[a-z]{3}/iu.test(date.replace(/[T\s]\d.*$/u, ""));

/** Splits a cell with date and time into the two. */
export function splitMoment(text: string): readonly [date: string, time: string] {
  const match = /^(.+?)(?:T(?=\d)|,?\s+)(\d{1,2}[:.h]\d{2}.*)$/iu.exec(text.trim());
  return match === null ? [text.trim(), ""] : [match[1]!, match[2]!];
}

/** A reader of moments that reads each new date only once: a log has many readings on one. */
export function wallReader(order: DateOrder, dialect: Dialect): (date: string, time: string) => Wall | null {
  let lastDate = "";
  let lastDay: number | null = null;
  return (date, time) => {
    if (date !== lastDate) {
      lastDate = date;
      lastDay = dateOf(date, settledByItself(date) && /^\s*\d{4}/u.test(date) ? "ymd" : order, dialect);
    }
    const clock = lastDay === null ? null : clockOf(time.trim());
    if (lastDay === null || clock === null) return null;
    const ms = lastDay + clock.ms;
    return clock.offset === null ? { ms, fixed: false } : { ms: ms - clock.offset * 60_000, fixed: true };
  };
}

/** Whole days between two wall times. */
export const daysApart = (a: number, b: number): number =>
  Math.abs(Math.floor(a / DAY) - Math.floor(b / DAY));
