import type { Dialect } from "./dialect.ts";
import { standardOffset, summerOffset } from "./standardTime.ts";

/** A time of day as a cell says it. */
export interface ClockTime {
  /** Since midnight. [ms] */
  readonly ms: number;
  /** Ahead of universal time, where the cell says so. [min] */
  readonly offset: number | null;
  /** Does it say morning or evening? */
  readonly half: boolean;
}

/**
 * What a time may be besides a clock's: nothing, behind a date; in a column of its own a number like 930 or an hour
 * with both its ends; the hour alone; or hours and minutes as one number, 5 being five past midnight.
 */
export type Digits = "none" | "clock" | "hour" | "hourMinute";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** More different times than a day has seconds no log holds; the memory is begun anew. */
const REMEMBERED = 86_400;

const CORE =
  /^(\d{1,2})(?:[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?)?\s*(z|[+-]\d{2}(?::?\d{2})?|[a-z]{1,5}(?:\s?[+-]\d{1,2}(?::?\d{2})?)?)?$/u;
const RANGE = /^(\d{1,2})([:.h]\d{2})\s?[-–]\s?(\d{1,2})[:.h]\d{2}$/u;
/** Longest stretch with both its ends; what looks like a longer one is an offset behind a time. [h] judgement */
const LONGEST_RANGE = 6;

/** Minutes ahead of universal time. @example zoneOffset("-05:00") // => -300 */
export function zoneOffset(text: string): number {
  const match = /([+-])\s?(\d{1,2})(?::?(\d{2}))?$/u.exec(text);
  if (match === null) return 0;
  return (match[1] === "-" ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3] ?? 0));
}

/** The offset a zone's name stands for, if a clock in the farm's zone may show it; null for any other word. [min] */
export function namedOffset(word: string, zone: string, { offsets }: Dialect): number | null {
  if (/^(?:z|utc|gmt|ut)\b|^[+-]/u.test(word)) return zoneOffset(word);
  const year = 2026;
  const own = [standardOffset(zone, year), summerOffset(zone, year)];
  return offsets[word]?.find((minutes) => own.includes(minutes)) ?? null;
}

const quoted = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");

const anyOf = (words: readonly string[]): string =>
  [...words]
    .sort((a, b) => b.length - a.length)
    .map(quoted)
    .join("|");

/** Words for morning and evening, wherever they stand. */
const halfDays = ({ morning, evening }: Dialect): RegExp =>
  new RegExp(`(?<=^|[\\s\\d])(?:(${anyOf(morning)})|(${anyOf(evening)}))(?=$|[\\s\\d])`, "u");

/** The beginning of a stretch like 13:00-14:00; any other text as it is. */
function beginning(text: string): string {
  const match = RANGE.exec(text);
  if (match === null) return text;
  const [, from, minutes, to] = match;
  const length = (Number(to) - Number(from) + 24) % 24;
  return length <= LONGEST_RANGE ? `${from}${minutes}` : text;
}

function byDigits(text: string, digits: Digits): number | null {
  if (digits === "none") return null;
  if (digits === "hour") return /^\d{1,2}$/u.test(text) ? Number(text) * HOUR : null;
  const pattern = digits === "hourMinute" ? /^\d{1,4}$/u : /^(?:0|\d{3,4}|\d{6})$/u;
  if (!pattern.test(text)) return null;
  const number = Number(text.slice(0, text.length === 6 ? 4 : undefined));
  const minutes = number % 100;
  return minutes > 59 ? null : Math.floor(number / 100) * HOUR + minutes * MINUTE;
}

/** Reads times of day. Each spelling is read once: a log has the same times every day. */
export function clockReader(
  dialect: Dialect,
  zone: string,
  digits: Digits,
): (text: string) => ClockTime | null {
  const halves = halfDays(dialect);
  const oClock = new RegExp(`(?<=\\d)\\s?(?:${anyOf(dialect.oClock)})$`, "u");
  const whole = (ms: number): ClockTime | null => (ms <= DAY ? { ms, offset: null, half: false } : null);
  const read = (written: string): ClockTime | null => {
    const text = written.normalize("NFC").replace(/\s+/gu, " ").trim().toLowerCase();
    const number = byDigits(text, digits);
    if (number !== null) return whole(number);
    // The fraction of a day, as a spreadsheet counts.
    if (digits !== "none" && /^0?[.,]\d+$/u.test(text) && !/^\d[.,]\d\d$/u.test(text))
      return whole(Math.round(Number(text.replace(",", ".")) * 86_400) * 1000);
    const found = halves.exec(text);
    const rest = (found === null ? text : text.replace(halves, " ")).trim();
    const said = rest.replace(oClock, "");
    const core = CORE.exec(digits === "none" ? said : beginning(said));
    if (core === null) return null;
    const [, hours, minutes, seconds = "0", behind] = core;
    if (minutes === undefined && found === null && said === rest) return null;
    if (Number(minutes ?? 0) > 59 || Number(seconds) > 59) return null;
    let hour = Number(hours);
    if (found !== null) {
      if (hour > 12) return null;
      hour = (hour % 12) + (found[2] === undefined ? 0 : 12);
    }
    const ms = ((hour * 60 + Number(minutes ?? 0)) * 60 + Number(seconds)) * 1000;
    if (ms > DAY) return null;
    const offset = behind === undefined ? null : namedOffset(behind, zone, dialect);
    if (behind !== undefined && offset === null) return null;
    return { ms, offset, half: found !== null };
  };
  const known = new Map<string, ClockTime | null>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const time = read(text);
    if (known.size >= REMEMBERED) known.clear();
    known.set(text, time);
    return time;
  };
}
