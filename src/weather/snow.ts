import type { Settings } from "../farm/index.ts";
import type { Weather } from "./weather.ts";

/**
 * Parts what falls into rain and snow, and lets the snow lie and melt. A day's melt goes by its mean above 0 °C and is shared out
 * over its hours by how far each lies above it.
 *
 * @param temperature - Air by the hour. [°C]
 * @param fallen - Rain or snow as water. [mm]
 * @param day - Calendar day of each hour, ascending.
 * @source jennings2018; melt: nehSnowmelt2004, from memory
 */
export function snowOf(
  temperature: Float64Array,
  fallen: Float64Array,
  day: ArrayLike<number>,
  { rainSnow, snowMelt }: Pick<Settings, "rainSnow" | "snowMelt">,
): Pick<Weather, "rain" | "snowfall" | "snow"> {
  const snowfall = fallen.map((amount, i) => (temperature[i]! <= rainSnow ? amount : 0));
  const rain = fallen.map((amount, i) => amount - snowfall[i]!);
  const snow = new Float64Array(fallen.length);
  let lies = 0;
  for (let from = 0; from < fallen.length; ) {
    let to = from;
    while (to < fallen.length && day[to] === day[from]) to++;
    const air = temperature.subarray(from, to);
    const mean = air.reduce((sum, each) => sum + each, 0) / (to - from);
    const above = air.reduce((sum, each) => sum + Math.max(0, each), 0);
    const perDegree = above > 0 ? (((to - from) / 24) * (snowMelt * Math.max(0, mean))) / above : 0;
    for (let i = from; i < to; i++) {
      snow[i] = lies;
      lies = Math.max(0, lies + snowfall[i]! - perDegree * Math.max(0, temperature[i]!));
    }
    from = to;
  }
  return { rain, snowfall, snow };
}
