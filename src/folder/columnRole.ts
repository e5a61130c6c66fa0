import { type Dialect, names, plainWords } from "./dialect.ts";
import { scaleNamed } from "./scale.ts";
import type { Words } from "./words.ts";

/** A header without its unit and what else stands in brackets or behind a comma. */
export const baseOf = (header: string): string =>
  plainWords(header)
    .replace(/[([{].*$/u, "")
    .replace(/,.*$/u, "")
    .replace(/\s*[-:]?\s*(?:utc|gmt)\s*(?:[+-]\d.*)?$/u, (found) =>
      found.length < header.trim().length ? "" : found,
    )
    .trim();

/** Is a header, as a whole, one of the dialect's words of a kind? */
export const isCalled = (header: string, kind: keyof Words, dialect: Dialect): boolean =>
  (dialect[kind] as readonly string[]).includes(baseOf(header));

const TIMES = [
  "dateTime",
  "date",
  "time",
  "year",
  "month",
  "day",
  "dayOfYear",
  "hour",
  "minute",
  "hourMinute",
] as const;

export const isTimeHeader = (header: string, dialect: Dialect): boolean =>
  TIMES.some((kind) => isCalled(header, kind, dialect));

/**
 * A header as sensors are compared: without unit, without the word temperature, without signs and case.
 *
 * @example sensorKey("Tunnel 1 (°C)", PLAIN) // => "tunnel1"
 */
export function sensorKey(header: string, { temperature, fahrenheit, celsius }: Dialect): string {
  const units = [...fahrenheit, ...celsius].filter((unit) => unit.startsWith("°"));
  const words = plainWords(header)
    .replace(/[([{].*?[)\]}]/gu, " ")
    .split(/[^\p{L}\p{N}°.]+/u)
    .filter((word) => word !== "" && !units.includes(word) && !temperature.includes(word));
  const last = words.at(-1) ?? "";
  if (words.length > 1 && (last === "c" || last === "f")) words.pop();
  return words.join("");
}

export const isLow = (header: string, dialect: Dialect): boolean =>
  names(header, dialect.low) && !names(header, dialect.notAir);

export const isHigh = (header: string, dialect: Dialect): boolean =>
  names(header, dialect.high) && !names(header, dialect.notAir);

/** How surely a header means the temperature of outside air: 0 not at all, 1 a bare unit or value, 2 a temperature, 3 air. */
export function airRank(header: string, dialect: Dialect): 0 | 1 | 2 | 3 {
  if (names(header, dialect.notAir) || names(header, dialect.low) || names(header, dialect.high)) return 0;
  if (names(header, dialect.air)) return 3;
  if (names(header, dialect.temperature)) return 2;
  return scaleNamed(header, dialect) !== null || isCalled(header, "value", dialect) ? 1 : 0;
}

/** Does a header speak of a temperature at all, whichever it is? */
export const speaksOfTemperature = (header: string, dialect: Dialect): boolean =>
  airRank(header, dialect) > 0 ||
  scaleNamed(header, dialect) !== null ||
  names(header, dialect.temperature) ||
  isLow(header, dialect) ||
  isHigh(header, dialect) ||
  isCalled(header, "element", dialect);
