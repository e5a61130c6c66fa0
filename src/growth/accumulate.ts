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
 * Sums thermal time, pace, light and heat hour by hour, each when it is asked for. The light correction is made once for each
 * day from morning walk to morning walk, with that whole day's thermal time and radiation, and applies to each of its hours.
 *
 * @param mornings - Hours of the weather at which such days begin, in order; hours before the first belong to the first day.
 * @source scaifeCoxMorris1987, form from memory: 1/E = 1/D + f/R, summed daily
 */
export function accumulate(
  crop: Crop,
  climate: Climate,
  mornings: readonly number[],
  { lightPerMegajoule }: Settings,
): Sums {
  const { from } = climate;
  const length = climate.growing.length;
  const make = (): Float64Array => new Float64Array(length + 1);
  const sums: Sums = whenAsked({
    from: () => from,
    thermalTime: () => sumThermalTime(crop, climate.growing, make()),
    pace: () => sumPace(crop, climate, mornings, sums.thermalTime, make()),
    light: () => lightOf(climate.radiation, HOUR_OF_WATT * lightPerMegajoule),
    heat: () => heatOf(climate.heat, crop.qualityLimit),
  });
  return sums;
}

/** Thermal time alone. @param sums - One more than the hours, whose first is 0; it is filled and given back. [°C·d] */
export function sumThermalTime({ growth }: Crop, growing: Float64Array, sums: Float64Array): Float64Array {
  let sum = 0;
  for (let i = 0; i < growing.length; i++) {
    sum += response(growing[i]!, growth) / 24;
    sums[i + 1] = sum;
  }
  return sums;
}

/** Pace alone, of thermal time already summed. @param sums - As long as that, its first 0; it is filled and given back. [°C·d] */
export function sumPace(
  { lightOnPace }: Crop,
  { from, radiation }: Pick<Climate, "from" | "radiation">,
  mornings: readonly number[],
  thermalTime: Float64Array,
  sums: Float64Array,
): Float64Array {
  const length = thermalTime.length - 1;
  let next = mornings.findIndex((hour) => hour > from);
  for (let start = 0; start < length; ) {
    const end = next < 0 ? length : Math.min(length, (mornings[next++] ?? from + length) - from);
    let sun = 0;
    for (let i = start; i < end; i++) sun += radiation[i]!;
    const [ahead, begun] = [sums[start]!, thermalTime[start]!];
    const share = lightShare(thermalTime[end]! - begun, sun * HOUR_OF_WATT, lightOnPace);
    for (let i = start + 1; i <= end; i++) sums[i] = ahead + share * (thermalTime[i]! - begun);
    start = end;
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
