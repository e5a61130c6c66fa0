import { groupBy } from "../quantity/index.ts";
import type { Followed } from "./forecastError.ts";

/** How forecasts erred so many days ahead. Errors are observed less foretold: above 0 it came warmer than said. [°C] */
export interface LeadErrors {
  readonly lead: number;
  readonly forecasts: number;
  /** Mean error, and mean of its size. */
  readonly mean: { readonly low: number; readonly high: number };
  readonly usual: { readonly low: number; readonly high: number };
}

/** The errors of kept forecasts by days from the issue, as they were: nothing is taken together with what is usual. */
export function leadErrors(past: readonly Followed[]): readonly LeadErrors[] {
  return [...groupBy(past, ({ lead }) => lead)]
    .sort(([a], [b]) => a - b)
    .map(([lead, all]) => {
      const mean = (of: (error: Followed["error"]) => number): number =>
        all.reduce((sum, { error }) => sum + of(error), 0) / all.length;
      return {
        lead,
        forecasts: all.length,
        mean: { low: mean(({ low }) => low), high: mean(({ high }) => high) },
        usual: { low: mean(({ low }) => Math.abs(low)), high: mean(({ high }) => Math.abs(high)) },
      };
    });
}
