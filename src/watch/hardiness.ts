import type { Crop, Settings } from "../farm/index.ts";
import type { Celsius } from "../quantity/index.ts";

/** What a plant has lived through under its cover. [°C] */
export interface Lived {
  /** Mean of the lowest temperatures of the last seven days. */
  readonly lows: number;
  /** Mean of the last 24 hours. */
  readonly lastDay: number;
}

/** Hours of a day, and days of the week that hardens. */
const DAY = 24;
const WEEK = 7;

/**
 * What plants have lived through in the week before an hour.
 *
 * @param temperature - At the growing point, hour by hour. [°C]
 * @param hour - At least 1; with less than a week before it, what there is.
 */
export function livedBefore(temperature: Float64Array, hour: number): Lived {
  const days: Float64Array[] = [];
  for (let end = hour; end > 0 && days.length < WEEK; end -= DAY)
    days.push(temperature.subarray(Math.max(0, end - DAY), end));
  const lows = days.map((day) => day.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY));
  return { lows: mean(lows), lastDay: mean([...(days[0] ?? [])]) };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * How far plants have hardened: not at all after a mild week, a little after a cool one, wholly after a cold one; a warm day loses
 * it again.
 *
 * @returns 0 to 1
 * @source tamura2002 (slight from 8 down to 2 °C, strong below 2), rapidColdAcclimation (lost within a day at 20/17 °C); the
 * straight lines between are judgement
 */
export function hardening({ lows, lastDay }: Lived, settings: Settings): number {
  const { hardeningBegins, hardeningSlight, hardenedSlightly, hardeningWhole } = settings;
  const slight = between(lows, hardeningBegins, hardeningSlight);
  const strong = between(lows, hardeningSlight, hardeningWhole);
  const lost = between(lastDay, settings.softeningBegins, settings.softeningWhole);
  return (slight * hardenedSlightly + strong * (1 - hardenedSlightly)) * (1 - lost);
}

/** Where a value lies on the way from one to another, kept to 0 and 1. */
const between = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

/** Crop-height temperature at which plants die after what they have lived through. [°C] */
export const killingTemperature = ({ kill, killSoft }: Crop, lived: Lived, settings: Settings): Celsius =>
  (killSoft - (killSoft - kill) * hardening(lived, settings)) as Celsius;

/** A crop as it stands: where its plants would die, its leaves are unfit too. */
export function asHardened(crop: Crop, lived: Lived, settings: Settings): Crop {
  const kill = killingTemperature(crop, lived, settings);
  return kill > crop.unfit ? { ...crop, unfit: kill } : crop;
}
