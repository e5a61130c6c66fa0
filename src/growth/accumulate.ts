import type { Climate } from "../cover/index.ts";
import type { Crop, Settings } from "../farm/index.ts";
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

/**
 * Sums thermal time, pace, light and heat hour by hour. The light correction is made once for each day from morning walk
 * to morning walk, with that whole day's thermal time and radiation, and applies to each of its hours.
 *
 * @param mornings - Hours of the weather at which such days begin, in order; hours before the first belong to the first day.
 * @source 1/E = 1/D + f/R, degree-days.md section 5, summed daily
 */
export function accumulate(
  crop: Crop,
  climate: Climate,
  mornings: readonly number[],
  settings: Settings,
): Sums {
  const { from } = climate;
  const length = climate.growing.length;
  const make = (): Float64Array => new Float64Array(length + 1);
  const [thermalTime, pace, light, heat] = [make(), make(), make(), make()];
  const rate = new Float64Array(length);
  for (let i = 0; i < length; i++) rate[i] = response(climate.growing[i]!, crop.growth) / 24;

  const starts = [from, ...mornings.filter((hour) => hour > from && hour < from + length), from + length];
  for (let d = 0; d + 1 < starts.length; d++) {
    const [start, end] = [starts[d]! - from, starts[d + 1]! - from];
    let warmth = 0;
    let radiation = 0;
    for (let i = start; i < end; i++) {
      warmth += rate[i]!;
      radiation += climate.radiation[i]! * 0.0036;
    }
    const share = lightShare(warmth, radiation, crop.lightOnPace);
    for (let i = start; i < end; i++) {
      thermalTime[i + 1] = thermalTime[i]! + rate[i]!;
      pace[i + 1] = pace[i]! + rate[i]! * share;
      light[i + 1] = light[i]! + climate.radiation[i]! * 0.0036 * settings.lightPerMegajoule;
      heat[i + 1] = heat[i]! + Math.max(0, climate.heat[i]! - crop.qualityLimit);
    }
  }
  return { from, thermalTime, pace, light, heat };
}

/** The part of a running sum between two hours of the weather; hours outside it add nothing. */
export function between(sum: Float64Array, from: number, a: number, b: number): number {
  const last = sum.length - 1;
  const low = Math.min(last, Math.max(0, a - from));
  const high = Math.min(last, Math.max(low, b - from));
  return sum[high]! - sum[low]!;
}
