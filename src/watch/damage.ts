import type { Crop, Settings } from "../farm/index.ts";

/** Scale of a logistic with a given standard deviation. */
const SCALE = Math.sqrt(3) / Math.PI;

/**
 * Odds that leaves are damaged by an interval's lowest and highest temperature.
 * The passage from sound to damaged is a logistic as wide as the injury and the forecast error together.
 *
 * @param lead - Days ahead. [d]
 * @source form and widths: judgement
 */
export function damageOdds(
  crop: Crop,
  lowest: number,
  highest: number,
  lead: number,
  settings: Settings,
): number {
  const error = Math.min(
    settings.forecastSpreadMost,
    settings.forecastSpread + settings.forecastSpreadPerDay * Math.max(0, lead),
  );
  return damageOddsWithin(crop, lowest, highest, error, settings);
}

/**
 * The same where the error of the temperatures is known: none in a weather drawn.
 *
 * @param error - Standard deviation. [°C]
 */
export function damageOddsWithin(
  crop: Crop,
  lowest: number,
  highest: number,
  error: number,
  { damageWidth }: Settings,
): number {
  const scale = SCALE * Math.hypot(damageWidth, error);
  return Math.exp((crop.unfit - lowest) / scale) + Math.exp((highest - crop.growth.ceiling) / scale);
}

/** A night or day on which damage is more likely than not. */
export const predicted = (odds: number): boolean => odds >= 1;
