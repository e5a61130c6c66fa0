import type { Crop, Settings } from "../farm/index.ts";
import { type Centimetre, type Kilogram, kilogram, type Metre } from "../quantity/index.ts";

/**
 * Share of full weight that light allows.
 *
 * @param light - Mean daily light integral at the crop since emergence. [mol/m²/d]
 * @returns 0 to 1
 * @source covers.md section 4, weight about DLI^0.9 up to 30, from gagneMattson2019; exponent per crop in data/crops.json
 */
export function lightOnWeight(light: number, crop: Crop, settings: Settings): number {
  return Math.min(1, Math.max(0, light) / settings.fullLight) ** crop.lightOnWeight;
}

/**
 * Weight relative to the middle of the window; what grows beyond the largest salad size is stem and old leaf, and adds nothing
 * that sells. [1]
 *
 * @source exponent and end: judgement
 */
export function relativeWeight(length: number, crop: Crop, settings: Settings): number {
  const middle = (crop.smallest + crop.largest) / 2;
  return Math.exp(settings.weightExponent * Math.log(Math.min(length, crop.largest) / middle));
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
