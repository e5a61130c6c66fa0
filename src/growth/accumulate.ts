import type { Climate } from "../cover/index.ts";
import type { Crop, Settings } from "../farm/index.ts";
import { whenAsked } from "../quantity/index.ts";
import { lightShare } from "./pace.ts";
import { response } from "./response.ts";

/** Running sums of one crop in one climate; the sum over hours a to b of the weather is `at[b − from] − at[a − from]`. */
export interface Sums {
  /** Index of the weather's hour at which all sums are 0. */
  readonly from: number;
  /** [°C·d] */
  readonly thermalTime: Float64Array;
  /** Thermal time corrected for light. [°C·d] */
  readonly pace: Float64Array;
  /** [mol/m²] */
  readonly light: Float64Array;
  /** Above the quality limit, leaf in calm air. [°C·h] */
  readonly heat: Float64Array;
}

/** [MJ/m²] in an hour of 1 W/m² */
const HOUR_OF_WATT = 0.0036;

/**
 * Sums thermal time, pace, light and heat hour by hour; light and heat when they are asked for. The light correction is made
 * once for each day from morning walk to morning walk, with that whole day's thermal time and radiation, and applies to each of
 * its hours.
 *
 * @param mornings - Hours of the weather at which such days begin, in order; hours before the first belong to the first day.
 * @source scaifeCoxMorris1987, form from memory: 1/E = 1/D + f/R, summed daily
 */
export function accumulate(
  { growth, lightOnPace, qualityLimit }: Crop,
  climate: Climate,
  mornings: readonly number[],
  { lightPerMegajoule }: Settings,
): Sums {
  const { from } = climate;
  const end = from + climate.growing.length;
  const days = [from, ...mornings.filter((hour) => hour > from && hour < end), end].map(
    (hour) => hour - from,
  );
  const sums: Sums = whenAsked({
    from: () => from,
    thermalTime: () => thermalTimeOf(climate.growing, growth),
    pace: () => paceOf(sums.thermalTime, climate.radiation, days, lightOnPace),
    light: () => lightOf(climate.radiation, HOUR_OF_WATT * lightPerMegajoule),
    heat: () => heatOf(climate.heat, qualityLimit),
  });
  return sums;
}

function thermalTimeOf(growing: Float64Array, growth: Crop["growth"]): Float64Array {
  const sums = new Float64Array(growing.length + 1);
  let sum = 0;
  for (let i = 0; i < growing.length; i++) {
    sum += response(growing[i]!, growth) / 24;
    sums[i + 1] = sum;
  }
  return sums;
}

function paceOf(
  thermalTime: Float64Array,
  radiation: Float64Array,
  days: readonly number[],
  lightOnPace: number,
): Float64Array {
  const sums = new Float64Array(thermalTime.length);
  for (let d = 0; d + 1 < days.length; d++) {
    const [start, end] = [days[d]!, days[d + 1]!];
    let sun = 0;
    for (let i = start; i < end; i++) sun += radiation[i]!;
    const [ahead, begun] = [sums[start]!, thermalTime[start]!];
    const share = lightShare(thermalTime[end]! - begun, sun * HOUR_OF_WATT, lightOnPace);
    for (let i = start + 1; i <= end; i++) sums[i] = ahead + share * (thermalTime[i]! - begun);
  }
  return sums;
}

function lightOf(radiation: Float64Array, lightPerWatt: number): Float64Array {
  const sums = new Float64Array(radiation.length + 1);
  for (let i = 0; i < radiation.length; i++) sums[i + 1] = sums[i]! + radiation[i]! * lightPerWatt;
  return sums;
}

function heatOf(leaf: Float64Array, limit: number): Float64Array {
  const sums = new Float64Array(leaf.length + 1);
  for (let i = 0; i < leaf.length; i++) sums[i + 1] = sums[i]! + Math.max(0, leaf[i]! - limit);
  return sums;
}

/** The part of a running sum between two hours of the weather; hours outside it add nothing. */
export function between(sum: Float64Array, from: number, a: number, b: number): number {
  const last = sum.length - 1;
  const low = Math.min(last, Math.max(0, a - from));
  const high = Math.min(last, Math.max(low, b - from));
  return sum[high]! - sum[low]!;
}
