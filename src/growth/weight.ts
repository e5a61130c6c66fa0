import type { Crop, Settings } from "../farm/index.ts";
import { type Centimetre, type Kilogram, kilogram, type Metre } from "../quantity/index.ts";

/**
 * Share of full weight that light allows.
 *
 * @param light - Mean daily light integral at the crop since emergence. [mol/m²/d]
 * @returns 0 to 1
 * @source gagneMattson2019: weight about DLI^0.9 up to 30, derived; exponent per crop in data/crops.json
 */
export function lightOnWeight(light: number, crop: Crop, settings: Settings): number {
  return Math.min(1, Math.max(0, light) / settings.fullLight) ** crop.lightOnWeight;
}

/**
 * Weight that sells, relative to the middle of the window: a power of length up to the largest salad size. What has grown
 * beyond it is sorted and trimmed, and sells no more than a bed at the middle of its window.
 *
 * @returns [1]
 * @source exponent and what is left after trimming: judgement
 * @example relativeWeight(10, { smallest: 8, largest: 12 }, { weightExponent: 2.2 }) // => 1
 */
export function relativeWeight(
  length: number,
  { smallest, largest }: Pick<Crop, "smallest" | "largest">,
  { weightExponent }: Pick<Settings, "weightExponent">,
): number {
  return length > largest ? 1 : Math.exp(weightExponent * Math.log(length / ((smallest + largest) / 2)));
}

/** Fresh weight of a stretch of bed. [kg] */
export function weight(
  length: Centimetre,
  bed: Metre,
  light: number,
  crop: Crop,
  settings: Settings,
): Kilogram {
  return kilogram(
    crop.yield * bed * relativeWeight(length, crop, settings) * lightOnWeight(light, crop, settings),
  );
}
