import type { Crop, Settings } from "../farm/index.ts";
import { type Centimetre, centimetre, type DegreeDays, degreeDays } from "../quantity/index.ts";
import { response } from "./response.ts";

/** Length of the longest leaf as a function of thermal time since emergence (or the last cut). */
export interface LeafCurve {
  /** Length at emergence and in the end. [cm] */
  readonly start: number;
  readonly end: number;
  /** [1/(°C·d)] */
  readonly rate: number;
  /** Thermal time at which half of the way is grown. [°C·d] */
  readonly middle: number;
}

const logit = (share: number): number => Math.log(share / (1 - share));

/**
 * A logistic above the cotyledons' length, ending at twice the largest salad size. Its place is set by the requirement
 * (smallest salad size) and its rate by how long the window lasts.
 *
 * @param requirement - Thermal time to the smallest salad size. [°C·d]
 * @source the form: Ding et al. 2022 for pak choi (leaf length logistic, R² > 0.98); end and rate: judgement
 */
export function leafCurve(crop: Crop, requirement: DegreeDays, settings: Settings): LeafCurve {
  const start = settings.leafAtEmergence;
  const end = settings.leafMostOverLargest * crop.largest;
  const smallest = logit((crop.smallest - start) / (end - start));
  const largest = logit((crop.largest - start) / (end - start));
  const window = settings.windowDays * response(settings.windowTemperature, crop.growth);
  const rate = (largest - smallest) / window;
  return { start, end, rate, middle: requirement - smallest / rate };
}

/** Leaf length at a thermal time. [cm] */
export function leafLength({ start, end, rate, middle }: LeafCurve, thermalTime: number): Centimetre {
  return centimetre(start + (end - start) / (1 + Math.exp(-rate * (thermalTime - middle))));
}

/** Thermal time at a leaf length, kept to lengths the curve can have; never negative. [°C·d] */
export function thermalTimeAt({ start, end, rate, middle }: LeafCurve, length: Centimetre): DegreeDays {
  const share = Math.min(0.999, Math.max(1e-6, (length - start) / (end - start)));
  return degreeDays(Math.max(0, middle + logit(share) / rate));
}
