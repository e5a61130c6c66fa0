import type { Calendar, UtcHour } from "../quantity/index.ts";
import type { ForetoldHour } from "./record.ts";

/** Arrays by the hour and by the day that foretold hours are laid into. */
export interface LaidHours {
  /** Filled where it is NaN and nothing was logged. [°C] */
  readonly temperature: Float64Array;
  /** Radiation in the open. [W/m²] */
  readonly seen: Float64Array;
  /** [1] */
  readonly cloud: Float64Array;
  /** At 2 m. [m/s] */
  readonly wind: Float64Array;
  /** Of each day. [°C] */
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** What the hours foretold of a day come to. */
export interface ForetoldDay {
  readonly hours: number;
  /** Mean at 10 m, where foretold. [m/s] */
  readonly wind: number | null;
}

/**
 * Lays the hours of a forecast from now on over what was logged, which stays.
 *
 * @param now - Index of the hour that is running.
 * @param atCrop - Part of the wind at 10 m that blows at 2 m. [1]
 * @returns For each hour whether it was laid, and for each day what was laid of it.
 */
export function layForetold(
  hours: readonly ForetoldHour[],
  first: UtcHour,
  now: number,
  { day, dates }: Calendar,
  atCrop: number,
  into: LaidHours,
): { readonly laid: readonly number[]; readonly days: readonly ForetoldDay[] } {
  const laid: number[] = [];
  const counts = dates.map(() => ({ hours: 0, wind: 0, windy: 0 }));
  for (const { hour, temperature, wind, cloud, radiation } of hours) {
    const i = hour - first;
    if (i < now || i >= into.temperature.length || !Number.isNaN(into.temperature[i]!)) continue;
    laid.push(i);
    into.temperature[i] = temperature;
    if (radiation !== null) into.seen[i] = radiation;
    if (cloud !== null) into.cloud[i] = cloud;
    if (wind !== null) into.wind[i] = wind * atCrop;
    const at = day[i]!;
    into.lowest[at] = Math.min(into.lowest[at]!, temperature);
    into.highest[at] = Math.max(into.highest[at]!, temperature);
    const count = counts[at]!;
    count.hours++;
    if (wind !== null) {
      count.wind += wind;
      count.windy++;
    }
  }
  const days = counts.map(({ hours: some, wind, windy }) => ({
    hours: some,
    wind: windy === 0 ? null : wind / windy,
  }));
  return { laid, days };
}
