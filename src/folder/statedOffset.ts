import { namedOffset, zoneOffset } from "./clockTime.ts";
import { type Dialect, names, plainWords } from "./dialect.ts";
import { standardOffset } from "./standardTime.ts";

/** A year as good as any to ask a zone for its standard time. */
const NOW = 2026;

const UNIVERSAL = /\b(?:utc|gmt)\b\s*(?:[+-]\s*\d{1,2}(?::?\d{2})?)?/u;

/** The offset from universal time a header states, as "GMT-05:00", "UTC" or "(EST)"; null when it states none. [min] */
export function headerOffset(header: string, zone: string, dialect: Dialect): number | null {
  const words = plainWords(header).replaceAll("−", "-");
  const universal = UNIVERSAL.exec(words);
  if (universal !== null) return zoneOffset(universal[0]);
  if (names(header, dialect.standardTime)) return standardOffset(zone, NOW);
  const named = words.split(/[^\p{L}]+/u).filter((word) => word in dialect.offsets);
  return named.length === 1 ? namedOffset(named[0]!, zone, dialect) : null;
}

/** The offset a line above the header states for all times. A line that holds a time of day speaks of something else. [min] */
export function titleOffset(title: string, zone: string, dialect: Dialect): number | null {
  const rest = plainWords(title).replace(UNIVERSAL, "");
  return names(rest, dialect.clockTalk) && !/\d{1,2}[:.h]\d{2}/u.test(rest)
    ? headerOffset(title, zone, dialect)
    : null;
}

/** @example offsetZone(-300) // => "-05:00" */
export function offsetZone(minutes: number): string {
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  const two = (value: number): string => String(value).padStart(2, "0");
  return minutes === 0 ? "UTC" : `${minutes < 0 ? "-" : "+"}${two(hours)}:${two(rest)}`;
}
