import type { Crop } from "../farm/index.ts";

/** Base, optimum and ceiling of a smooth response. [°C] */
export interface Cardinal {
  readonly base: number;
  readonly optimum: number;
  readonly ceiling: number;
}

/**
 * A beta response: 0 at base and ceiling, 1 at the optimum.
 *
 * @param steepness - c, the power of the whole; with base 0 and c = optimum/(ceiling − optimum) it is Yan and Hunt's form.
 * @returns 0 to 1
 * @source yin1995, equation read second hand
 * @example yin(22, { base: 4, optimum: 22, ceiling: 33 }, 1) // => 1
 */
export function yin(temperature: number, { base, optimum, ceiling }: Cardinal, steepness: number): number {
  if (temperature <= base || temperature >= ceiling) return 0;
  const rise = (temperature - base) / (optimum - base);
  const fall = (ceiling - temperature) / (ceiling - optimum);
  return (rise * fall ** ((ceiling - optimum) / (optimum - base))) ** steepness;
}

/**
 * Wang and Engel's response: 0 at base and ceiling, 1 at the optimum.
 *
 * @returns 0 to 1
 * @source wangEngel1998, equation read second hand
 * @example wangEngel(22, { base: 4, optimum: 22, ceiling: 33 }) // => 1
 */
export function wangEngel(temperature: number, { base, optimum, ceiling }: Cardinal): number {
  if (temperature <= base || temperature >= ceiling) return 0;
  const power = Math.LN2 / Math.log((ceiling - base) / (optimum - base));
  const rise = ((temperature - base) / (optimum - base)) ** power;
  return Math.max(0, rise * (2 - rise));
}

/**
 * Thermal time a leaf earns per day at a temperature: nothing up to the base, rising to the optimum, falling to nothing at
 * the ceiling. The trapezoid is flat over the optimum's range; the smooth forms reach the same most midway of it.
 *
 * @param temperature - At the growing point. [°C]
 * @returns Never negative. [°C·d/d]
 * @source trapezoid with four cardinal temperatures: memory
 * @example response(10, { base: 4, optimumLow: 18, optimumHigh: 24, ceiling: 33 }) // => 6
 */
export function response(
  temperature: number,
  { base, optimumLow, optimumHigh, ceiling, form = "trapezoid" }: Crop["growth"],
): number {
  if (temperature <= base || temperature >= ceiling) return 0;
  const most = optimumLow - base;
  if (form !== "trapezoid") {
    const cardinal = { base, optimum: (optimumLow + optimumHigh) / 2, ceiling };
    return most * (form === "yin" ? yin(temperature, cardinal, 1) : wangEngel(temperature, cardinal));
  }
  if (temperature < optimumLow) return temperature - base;
  if (temperature <= optimumHigh) return most;
  return (most * (ceiling - temperature)) / (ceiling - optimumHigh);
}
