import { tzOffset } from "@date-fns/tz";
import type { StoredHour } from "../../src/folder/index.ts";
import { HOUR, hourOf, type Instant, instant, type UtcHour } from "../../src/quantity/index.ts";
import { random } from "./random.ts";

/** What a thermometer measured, before anybody wrote it down. */
export interface Series {
  readonly zone: string;
  readonly unit: "C" | "F";
  /** Minutes ahead of universal time, the same for all readings. */
  readonly offset: number;
  /** Oldest first. Values in tenths of a degree of the unit, so that they are written without loss. */
  readonly readings: readonly { readonly at: Instant; readonly tenths: number }[];
}

export const ZONES = [
  "America/New_York",
  "America/Los_Angeles",
  "Europe/Berlin",
  "Europe/London",
  "Asia/Kolkata",
  "Australia/Adelaide",
  "UTC",
] as const;

const INTERVALS = [5, 10, 15, 20, 30, 60] as const;

const celsiusOf = (unit: "C" | "F", tenths: number): number =>
  unit === "C" ? tenths / 10 : (tenths / 10 - 32) / 1.8;

/** Readings around a midnight, two dates at least, while the clock stands still; no jump, and nothing near a number loggers write for none. */
export function seriesOf(seed: number): Series {
  const chosen = random(seed);
  const zone = chosen.pick(ZONES);
  const unit = chosen.pick(["C", "F"] as const);
  const interval = chosen.pick(INTERVALS);
  const count = 14 + chosen.below(19);
  const offsetAt = (ms: number): number => tzOffset(zone, new Date(ms));
  const begin = (): number => {
    const midnight = Date.UTC(2015 + chosen.below(11), chosen.below(12), 1 + chosen.below(28));
    const before = interval * (1 + chosen.below(count - 2));
    const local = midnight - before * 60_000 + (interval < 60 ? 0 : chosen.below(4) * 15 * 60_000);
    return local - offsetAt(local) * 60_000;
  };
  let first = begin();
  while (offsetAt(first - HOUR * 3) !== offsetAt(first + (count * interval + 180) * 60_000)) first = begin();
  const [low, high] = unit === "C" ? [-150, 330] : [50, 910];
  let tenths = low + chosen.below(high - low);
  const readings = Array.from({ length: count }, (_, i) => {
    tenths = Math.min(high, Math.max(low, tenths + chosen.below(15) - 7));
    return { at: instant(first + i * interval * 60_000), tenths };
  });
  return { zone, unit, offset: offsetAt(first), readings };
}

export type Hour = Pick<StoredHour, "hour" | "sum" | "count" | "lowest" | "highest">;

/** Hours of a series by plain arithmetic. */
export function hoursOf({ unit, readings }: Pick<Series, "unit" | "readings">): readonly Hour[] {
  const hours = new Map<UtcHour, number[]>();
  for (const { at, tenths } of readings) {
    const values = hours.get(hourOf(at)) ?? [];
    values.push(celsiusOf(unit, tenths));
    hours.set(hourOf(at), values);
  }
  return [...hours]
    .map(([hour, values]) => ({
      hour,
      sum: values.reduce((a, b) => a + b, 0),
      count: values.length,
      lowest: Math.min(...values),
      highest: Math.max(...values),
    }))
    .sort((a, b) => a.hour - b.hour);
}
