import type { Crop } from "../farm/index.ts";

/**
 * Thermal time a leaf earns per day at a temperature: nothing up to the base, rising to the optimum, flat over its range,
 * falling to nothing at the ceiling.
 *
 * @param temperature - At the growing point. [°C]
 * @returns Never negative. [°C·d/d]
 * @source trapezoid with four cardinal temperatures, degree-days.md section 3: memory
 * @example response(10, { base: 4, optimumLow: 18, optimumHigh: 24, ceiling: 33 }) // => 6
 */
export function response(
  temperature: number,
  { base, optimumLow, optimumHigh, ceiling }: Crop["growth"],
): number {
  if (temperature <= base || temperature >= ceiling) return 0;
  if (temperature < optimumLow) return temperature - base;
  if (temperature <= optimumHigh) return optimumLow - base;
  return ((optimumLow - base) * (ceiling - temperature)) / (ceiling - optimumHigh);
}
