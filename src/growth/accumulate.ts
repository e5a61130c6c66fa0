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

/** [MJ/m²] in an hour of 1 W/m² */
const HOUR_OF_WATT = 0.0036;

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
  const { from, radiation, heat: leaf } = climate;
  const length = radiation.length;
  const make = (): Float64Array => new Float64Array(length + 1);
  const [thermalTime, pace, light, heat] = [make(), make(), make(), make()];
  sumPace(crop, climate, mornings, { thermalTime, pace });
  const toLight = HOUR_OF_WATT * settings.lightPerMegajoule;
  for (let i = 0; i < length; i++) {
    light[i + 1] = light[i]! + radiation[i]! * toLight;
    heat[i + 1] = heat[i]! + Math.max(0, leaf[i]! - crop.qualityLimit);
  }
  return { from, thermalTime, pace, light, heat };
}

/** Thermal time and pace alone, laid into arrays of one more than the hours whose first value is 0. */
export function sumPace(
  { growth, lightOnPace }: Crop,
  { from, growing, radiation }: Pick<Climate, "from" | "growing" | "radiation">,
  mornings: readonly number[],
  { thermalTime, pace }: Pick<Sums, "thermalTime" | "pace">,
): void {
  const length = growing.length;
  let next = mornings.findIndex((hour) => hour > from);
  for (let start = 0; start < length; ) {
    const end = next < 0 ? length : Math.min(length, (mornings[next++] ?? from + length) - from);
    let sun = 0;
    for (let i = start; i < end; i++) {
      sun += radiation[i]!;
      thermalTime[i + 1] = thermalTime[i]! + response(growing[i]!, growth) / 24;
    }
    const warmth = thermalTime[end]! - thermalTime[start]!;
    const share = lightShare(warmth, sun * HOUR_OF_WATT, lightOnPace);
    const [ahead, begun] = [pace[start]!, thermalTime[start]!];
    for (let i = start + 1; i <= end; i++) pace[i] = ahead + share * (thermalTime[i]! - begun);
    start = end;
  }
}

/** The part of a running sum between two hours of the weather; hours outside it add nothing. */
export function between(sum: Float64Array, from: number, a: number, b: number): number {
  const last = sum.length - 1;
  const low = Math.min(last, Math.max(0, a - from));
  const high = Math.min(last, Math.max(low, b - from));
  return sum[high]! - sum[low]!;
}
