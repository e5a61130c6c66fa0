import { fahrenheit, type Instant } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import type { Step } from "./foretoldSteps.ts";
import type { Json } from "./jsonFile.ts";
import { ON_A_FARM } from "./onAFarm.ts";

/** A service's page as it was read, before steps become hours and days. */
export interface ServicePage {
  readonly issued: Instant | null;
  readonly steps: readonly Step[];
  /** Days the page states as such; they count before those the steps come to. */
  readonly days: readonly DailyRecord[];
  /** What of the page was read, for people. */
  readonly form: string;
}

/** More than any wind measured near the ground but in tornadoes. [m/s] judgement */
const STRONGEST = 80;

/** More than ever fell in six hours. [mm] judgement */
const WETTEST = 1000;

/** Air temperature of a number in °C or °F. [°C] */
export function airOf(json: Json, unit: "C" | "F"): number | null {
  const { coldest, warmest } = ON_A_FARM;
  return unit === "C"
    ? json.number("a temperature in °C", coldest, warmest)
    : fahrenheitOrNull(json.number("a temperature in °F", -76, 140));
}

const fahrenheitOrNull = (value: number | null): number | null => (value === null ? null : fahrenheit(value));

/** A value that may be left out. */
const optional = (json: Json, read: (json: Json) => number | null): number | null =>
  json.given ? read(json) : null;

/** Share of a number in percent; null when it is not given. [1] */
export const cloudOf = (json: Json): number | null =>
  optional(json, () => {
    const percent = json.number("a percentage", 0, 100);
    return percent === null ? null : percent / 100;
  });

export type WindUnit = "m/s" | "km/h";

const METRES_PER_SECOND: Readonly<Record<WindUnit, number>> = { "m/s": 1, "km/h": 1 / 3.6 };

/** null when it is not given. [m/s] */
export const windOf = (json: Json, unit: WindUnit): number | null =>
  optional(json, () => {
    const speed = json.number(`a wind speed in ${unit}`, 0, Math.round(STRONGEST / METRES_PER_SECOND[unit]));
    return speed === null ? null : speed * METRES_PER_SECOND[unit];
  });

/** null when it is not given. [mm] */
export const rainOf = (json: Json): number | null =>
  optional(json, () => json.number("an amount of rain in mm", 0, WETTEST));
