import type { Settings } from "../farm/index.ts";
import { celsius, daysBetween, type LocalDate, localDate, startOf } from "../quantity/index.ts";
import {
  type DailyRecord,
  type Forecast,
  type LeadError,
  type LowHigh,
  usualError,
} from "../weather/index.ts";

/** What followed a forecast: observed less forecast of one day, so many days after it was issued. [°C] */
export interface Followed {
  readonly issued: LocalDate;
  readonly lead: number;
  readonly error: LowHigh;
}

/** What is known of a forecast's error from those kept. */
export interface LearnedError {
  /** Forecasts that days followed. */
  readonly forecasts: number;
  /** @param lead - Days from the issue to the day foretold. [d] */
  at(lead: number): LeadError;
}

/** Every day a kept forecast foretold and that was observed. Of several issued on one day the last counts. */
export function followed(
  kept: readonly Forecast[],
  observed: readonly DailyRecord[],
  zone: string,
): readonly Followed[] {
  const seen = new Map(observed.map((day) => [day.date, day]));
  const byDay = new Map<LocalDate, Forecast>();
  for (const forecast of [...kept].sort((a, b) => a.issued - b.issued))
    byDay.set(localDate(zone, forecast.issued), forecast);
  return [...byDay].flatMap(([issued, { days }]) =>
    days.flatMap(({ date, low, high }): readonly Followed[] => {
      const day = seen.get(date);
      const lead = daysBetween(issued, date);
      if (day === undefined || lead < 0) return [];
      return [{ issued, lead, error: { low: day.low - low, high: day.high - high } }];
    }),
  );
}

/**
 * Bias and size of the error of each lead day, between what is usual and what followed: the more forecasts were kept, the more
 * those count. Errors of one lead on days that follow each other are much alike, so they count as fewer.
 *
 * @source normal prior with pseudo-observations; correlated errors count as n(1 − ρ)/(1 + ρ) for a mean, n(1 − ρ²)/(1 + ρ²)
 * for a variance: derived
 */
export function learnedError(past: readonly Followed[], settings: Settings): LearnedError {
  const { dayToDay, errorWeight } = settings;
  const byLead = new Map<number, Followed[]>();
  for (const each of past) byLead.set(each.lead, [...(byLead.get(each.lead) ?? []), each]);
  const alike = (kept: number): number => (1 - kept) / (1 + kept);

  const made = new Map<number, LeadError>();
  for (const [lead, all] of byLead) {
    const usual = usualError(lead, settings);
    const learn = (key: "low" | "high"): { bias: number; spread: number } => {
      const errors = all.map(({ error }) => error[key]);
      const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
      const [forMean, forSize] = [dayToDay, dayToDay ** 2].map((kept) => errors.length * alike(kept));
      const bias = (mean * forMean!) / (forMean! + errorWeight);
      const square = errors.reduce((sum, error) => sum + (error - bias) ** 2, 0) / errors.length;
      const spread = (errorWeight * usual.spread[key] ** 2 + forSize! * square) / (errorWeight + forSize!);
      return { bias, spread: Math.sqrt(spread) };
    };
    const [low, high] = [learn("low"), learn("high")];
    made.set(lead, {
      bias: { low: low.bias, high: high.bias },
      spread: { low: low.spread, high: high.spread },
    });
  }
  return {
    forecasts: new Set(past.map(({ issued }) => issued)).size,
    at: (lead) => made.get(lead) ?? usualError(lead, settings),
  };
}

/** A forecast with the bias taken out that those before it had. */
export function unbiased(forecast: Forecast, error: LearnedError, zone: string): Forecast {
  const issued = localDate(zone, forecast.issued);
  const days = forecast.days.map((day): DailyRecord => {
    const { bias } = error.at(daysBetween(issued, day.date));
    return { ...day, low: celsius(day.low + bias.low), high: celsius(day.high + bias.high) };
  });
  const hours = forecast.hours?.map((each) => {
    const { bias } = error.at(daysBetween(issued, localDate(zone, startOf(each.hour))));
    return { ...each, temperature: celsius(each.temperature + (bias.low + bias.high) / 2) };
  });
  return { ...forecast, days, ...(hours === undefined ? {} : { hours }) };
}
