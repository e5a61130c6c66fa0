import type { Settings } from "../farm/index.ts";
import type { LowHigh } from "./pastYears.ts";

/** What is known of the error of a forecast so many days ahead of its issue: observed less forecast. */
export interface LeadError {
  /** Mean of low and high. [°C] */
  readonly bias: LowHigh;
  /** Standard deviation of low and high. [°C] */
  readonly spread: LowHigh;
}

const NONE: LowHigh = { low: 0, high: 0 };

/**
 * The error of a forecast nothing has been learned about.
 *
 * @param lead - Days from its issue to the day foretold. [d]
 * @source data/settings.json: forecastSpread, forecastSpreadPerDay, forecastSpreadMost, each with where it comes from
 */
export function usualError(
  lead: number,
  { forecastSpread, forecastSpreadPerDay, forecastSpreadMost }: Settings,
): LeadError {
  const spread = Math.min(forecastSpreadMost, forecastSpread + forecastSpreadPerDay * Math.max(0, lead));
  return { bias: NONE, spread: { low: spread, high: spread } };
}
