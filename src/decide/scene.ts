import { climate } from "../cover/index.ts";
import type { Farm, Settings } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { addDays, type Instant, instantAt, localDate, startOf, type UtcHour } from "../quantity/index.ts";
import {
  type Forecast,
  type SensorRecords,
  type Weather,
  type WeatherResult,
  weatherOf,
} from "../weather/index.ts";
import { type Ahead, ahead } from "./ahead.ts";
import { type Horizon, horizonOf } from "./horizon.ts";
import type { MadeFrom, Pick } from "./outcome.ts";
import { picksOf } from "./picks.ts";

/** What the main job is given. */
export interface WeekInput {
  readonly farm: Farm;
  readonly settings: Settings;
  readonly sensors: readonly SensorRecords[];
  readonly forecast: Forecast | null;
  /** Moment planned from. */
  readonly on: Instant;
  /** Days planned, 1 to 21. [d] */
  readonly days: number;
  /** What reading the folder left for the grower to see to. */
  readonly problems: readonly Problem[];
}

/** The stage on which a plan is made. */
export interface Scene {
  readonly farm: Farm;
  readonly weather: Weather;
  readonly horizon: Horizon;
  readonly picks: readonly Pick[];
  readonly store: Ahead;
  readonly settings: Settings;
}

/** Days looked at beyond the plan, so that a bed not ready in it is still worth keeping. [d] judgement */
const LOOKOUT = 14;

/** The stage on which a plan is made, what it was made from, and what is missing; the stage is null without any weather. */
export function sceneOf(input: WeekInput): {
  readonly scene: Scene | null;
  readonly madeFrom: MadeFrom;
  readonly problems: readonly Problem[];
} {
  const { farm, settings, forecast, on } = input;
  const { zone } = farm.place;
  const today = localDate(zone, on);
  const sown = farm.successions.map((succession) => succession.sown).sort();
  const from = addDays(sown[0] !== undefined && sown[0] < today ? sown[0] : today, -2);
  const until = addDays(today, input.days + LOOKOUT);
  const outside = input.sensors.filter(({ sensor }) => (farm.sensors.get(sensor) ?? "outside") === "outside");
  const hours = outside[0]?.hours ?? [];
  const result = weatherOf({ place: farm.place, settings, hours, forecast, on, from, until });
  const known = hours.filter(({ hour }) => startOf(hour) < on);
  const latest = known[known.length - 1];
  const madeFrom: MadeFrom = {
    sensors: outside.slice(0, 1).map(({ sensor }) => sensor),
    latest: latest === undefined ? null : startOf((latest.hour + 1) as UtcHour),
    gaps: result?.gaps ?? [],
    forecastIssued: forecast?.issued ?? null,
    forecastEnds:
      forecast?.days.reduce<MadeFrom["forecastEnds"]>(
        (last, { date }) => (last === null || date > last ? date : last),
        null,
      ) ?? null,
    carriedFrom: result?.carriedFrom ?? null,
  };
  const problems = [...input.problems, ...missing(input, madeFrom)];
  return { scene: result === null ? null : stage(input, result), madeFrom, problems };
}

function stage({ farm, settings, on, days }: WeekInput, { weather }: WeatherResult): Scene {
  const length = weather.temperature.length;
  const open = climate(weather, [{ from: 0, to: length, lying: [] }], settings);
  const horizon = horizonOf(farm, weather, open.frost, on, days);
  const lookout = startOf((weather.first + horizon.lookout) as UtcHour);
  const end = startOf((weather.first + horizon.end) as UtcHour);
  const dates = weather.calendar.dates.filter((date) => instantAt(farm.place.zone, date, 23) >= on);
  const picks = picksOf(farm, on, dates, end, lookout);
  return { farm, weather, horizon, picks, store: ahead(farm, weather, horizon, settings), settings };
}

/** What the grower should know is missing; the sheet is made all the same. */
function missing({ farm, forecast, on, days }: WeekInput, madeFrom: MadeFrom): readonly Problem[] {
  const need = (code: string, file: string, expected: string, received: string, hint: string): Problem => ({
    code,
    weight: "needsYou",
    file,
    line: null,
    column: null,
    expected,
    received,
    hint,
  });
  const last = addDays(localDate(farm.place.zone, on), days - 1);
  const problems: Problem[] = [];
  if (madeFrom.latest === null) {
    problems.push(
      need(
        "log-missing",
        "temperature",
        "an outside temperature log",
        "none",
        "Import one with: leafpace import FILE.",
      ),
    );
  }
  if (forecast === null) {
    problems.push(
      need(
        "forecast-missing",
        "forecasts",
        "a forecast",
        "none",
        "Import one with: leafpace import FILE. Until then the last two weeks are carried on.",
      ),
    );
  } else if (madeFrom.forecastEnds !== null && madeFrom.forecastEnds < last) {
    problems.push(
      need(
        "forecast-short",
        "forecasts",
        `a forecast to ${last}`,
        `one to ${madeFrom.forecastEnds}`,
        "Import a newer one; the days after it carry on the last known ones.",
      ),
    );
  }
  for (const { id, cuts } of farm.successions) {
    const dated = farm.notes.some((note) => note.kind === "cut" && note.succession === id && note.at <= on);
    if (cuts > 0 && !dated) {
      problems.push(
        need(
          "cut-undated",
          "notes.csv",
          `a note of when ${id} was cut`,
          "none",
          `Add a line: when,cut,${id},weight.`,
        ),
      );
    }
  }
  return problems;
}
