import type { Farm } from "../../farm/index.ts";
import { type Instant, localMinute } from "../../quantity/index.ts";

/** What may stand in the answer: no undefined, no number that is not one. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Version of the answer's form. Additions keep it; a changed meaning or a key taken away raises it. */
export const VERSION = 1;

/** Ends of keys and what they stand for; numbers without such an end are counts, shares or odds from 0 to 1. */
const UNITS = {
  C: "°C",
  Cd: "°C·d",
  CdPerDay: "°C·d/d",
  ratePerCd: "1/(°C·d)",
  Ch: "°C·h",
  cm: "cm",
  m: "m",
  kg: "kg",
  kgPerM: "kg/m",
  PerKg: "worth/kg",
  PerHour: "worth/h",
  mps: "m/s",
  mol: "mol/m²",
  min: "min",
  MinPerM: "min/m",
  h: "h",
  d: "d",
  MJPerM2PerCd: "MJ/m² per °C·d",
} as const;

export const time = (farm: Farm, at: Instant): Json => ({
  instant: new Date(at).toISOString(),
  clock: localMinute(farm.place.zone, at),
});

export const timeOrNull = (farm: Farm, at: Instant | null): Json => (at === null ? null : time(farm, at));

export const unitsOf = (farm: Farm): Json => ({
  keysEndWith: UNITS,
  worth: farm.currency ?? "kg",
  clock: farm.place.zone,
});

/** Throws on anything JSON would turn into null or leave out, naming where it stands. */
function checked(value: Json | undefined, path: string): void {
  if (value === undefined) throw new TypeError(`${path} is missing`);
  if (typeof value === "number" && !Number.isFinite(value)) throw new TypeError(`${path} is ${value}`);
  if (typeof value !== "object" || value === null) return;
  if (Array.isArray(value)) for (const [i, each] of value.entries()) checked(each, `${path}[${i}]`);
  else for (const [key, each] of Object.entries(value)) checked(each, `${path}.${key}`);
}

/** Characters a terminal obeys and JSON leaves as they are: written as escapes, so that printing the answer is safe. */
const OBEYED = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu;

export function written(name: string, value: Json): string {
  checked(value, name);
  return `${JSON.stringify(value, null, 1).replace(
    OBEYED,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  )}\n`;
}
