import { sensorsAt } from "./decide/index.ts";
import type { Farm, Settings } from "./farm/index.ts";
import { type IssuedSheet, OUTSIDE } from "./folder/index.ts";
import {
  byLead,
  cards,
  daysOffOf,
  followed,
  leadErrors,
  outcomesOf,
  pickOutcomes,
  reliabilityOf,
  verdictOf,
} from "./learn/index.ts";
import type { Problem } from "./problem/index.ts";
import { HOUR, type Instant, instant, startOf } from "./quantity/index.ts";
import type { Score } from "./sheet/index.ts";
import { type DailyRecord, type Forecast, loggedDays, outside, type SensorRecords } from "./weather/index.ts";

export type { Score } from "./sheet/index.ts";

/** What past projections are judged by. */
export interface ScoreInput {
  readonly farm: Farm;
  readonly settings: Settings;
  readonly sensors: readonly SensorRecords[];
  /** Every forecast kept. */
  readonly forecasts: readonly Forecast[];
  /** Every sheet issued, in the order they were given out. */
  readonly sheets: readonly IssuedSheet[];
  /** Moment looked from: what came later is not looked at. */
  readonly on: Instant;
  readonly problems: readonly Problem[];
}

/** How earlier sheets and forecasts did: what they said beside what was noted and measured. */
export function score(input: ScoreInput): Score {
  const { farm, on } = input;
  const sheets = input.sheets.filter((sheet) => sheet.on <= on);
  const outcomes = outcomesOf(farm, sheets, on);
  return {
    farm,
    on,
    sheets: sheets.length,
    outcomes,
    cards: cards(outcomes),
    emerged: daysOffOf(outcomes.emergences),
    cut: daysOffOf(outcomes.cuts),
    reliability: reliabilityOf(outcomes.sizes),
    byLead: byLead(outcomes.everySize),
    picks: pickOutcomes(farm.notes, sheets, on),
    forecasts: leadErrors(followed(input.forecasts, daysMeasured(input), farm.place.zone)),
    forecastsKept: input.forecasts.length,
    verdict: verdictOf(outcomes),
    problems: input.problems,
  };
}

/** Days a log outside tells of, from the first forecast on. */
function daysMeasured({ farm, settings, sensors, forecasts, on }: ScoreInput): readonly DailyRecord[] {
  const { place, keepFlagged } = farm;
  const from = instant(Math.min(on, ...forecasts.map(({ issued }) => issued)) - 24 * HOUR);
  const { hours } = outside(sensorsAt(farm, sensors, OUTSIDE), place, settings, keepFlagged, from);
  return loggedDays(
    hours.filter(({ hour }) => startOf(hour) < on),
    place.zone,
  );
}
