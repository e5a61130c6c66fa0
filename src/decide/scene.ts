import { climate } from "../cover/index.ts";
import { type Farm, type Settings, withStandingSowings } from "../farm/index.ts";
import { followed, type LearnedError, learnedError, unbiased } from "../learn/index.ts";
import type { Problem } from "../problem/index.ts";
import { addDays, type Instant, instantAt, localDate, startOf, type UtcHour } from "../quantity/index.ts";
import {
  type DailyRecord,
  type Forecast,
  loggedDays,
  type Members,
  members,
  type PastYears,
  pastYears,
  type SensorRecords,
  shortDays,
  type Weather,
  type WeatherResult,
  weatherOf,
} from "../weather/index.ts";
import { type Ahead, ahead } from "./ahead.ts";
import { type Horizon, horizonOf } from "./horizon.ts";
import { merged, sensorsAt, type TunnelLog, tunnelLogs } from "./logs.ts";
import { missing } from "./missing.ts";
import type { MadeFrom, Pick } from "./outcome.ts";
import { ownRequirements } from "./ownRequirements.ts";
import { picksOf } from "./picks.ts";

/** What the main job is given. */
export interface WeekInput {
  readonly farm: Farm;
  readonly settings: Settings;
  readonly sensors: readonly SensorRecords[];
  readonly forecast: Forecast | null;
  /** Earlier forecasts, from which the error of this one is learned; left out: none are kept. */
  readonly kept?: readonly Forecast[];
  /** Days of earlier years measured near the farm, beside those of its own log; left out: none. */
  readonly past?: readonly DailyRecord[];
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
  /** The weather ahead as many weathers. */
  readonly members: Members;
  /** By tunnel, where one has its own logger. */
  readonly logs: ReadonlyMap<string, TunnelLog>;
  readonly horizon: Horizon;
  readonly picks: readonly Pick[];
  readonly store: Ahead;
  readonly settings: Settings;
}

/** The stage on which a plan is made, what it was made from, and what is missing; the stage is null without any weather. */
export function sceneOf(asked: WeekInput): {
  readonly scene: Scene | null;
  readonly madeFrom: MadeFrom;
  readonly problems: readonly Problem[];
} {
  const input = { ...asked, farm: withStandingSowings(asked.farm, asked.on) };
  const { settings, forecast, on, days } = input;
  const { zone, latitude } = input.farm.place;
  const today = localDate(zone, on);
  const sown = input.farm.successions.map((succession) => succession.sown).sort();
  const from = addDays(sown[0] !== undefined && sown[0] < today ? sown[0] : today, -2);
  const until = addDays(today, input.days + settings.lookout);
  const outside = sensorsAt(input.farm, input.sensors, "outside");
  const hours = merged(outside);
  const { farm, brought, problems: unreachable } = ownRequirements(input.farm, hours, on, settings);
  const { place, usual } = farm;
  const known = hours.filter(({ hour }) => startOf(hour) < on);
  const measured = loggedDays(known, zone);
  const kept = (asked.kept ?? []).filter(({ issued }) => issued <= on);
  const error = learnedError(followed(kept, measured, zone), settings);
  const past = pastYears([...(asked.past ?? []), ...measured]);
  const foretold = forecast === null ? null : unbiased(forecast, error, zone);
  const result = weatherOf({ place, settings, hours, forecast: foretold, usual, past, on, from, until });
  const logs: Scene["logs"] =
    result === null ? new Map() : tunnelLogs(farm, input.sensors, result.weather, on);
  const latest = known[known.length - 1];
  const madeFrom: MadeFrom = {
    sensors: outside.map(({ sensor }) => sensor),
    latest: latest === undefined ? null : startOf((latest.hour + 1) as UtcHour),
    tunnels: farm.tunnels.flatMap((tunnel) => {
      const log = logs.get(tunnel.id);
      return log === undefined ? [] : [{ tunnel, latest: log.latest }];
    }),
    gaps: result?.gaps ?? [],
    forecastIssued: forecast?.issued ?? null,
    forecastEnds:
      forecast?.days.reduce<MadeFrom["forecastEnds"]>(
        (last, { date }) => (last === null || date > last ? date : last),
        null,
      ) ?? null,
    unforeseenFrom:
      result?.weather.days.find(
        ({ lead, origin }) => lead >= 0 && (origin === "carried" || origin === "usual"),
      )?.date ?? null,
    carriedFrom: result?.carriedFrom ?? null,
    usualFrom: result?.usualFrom ?? null,
    usualBehind: result?.usualBehind ?? false,
    learnedFrom: error.forecasts,
    members: result === null ? 0 : settings.members,
    broughtOver: brought,
    shortDays: shortDays(latitude, today, until),
  };
  const scene = result === null ? null : stage({ ...input, farm }, result, logs, error, past);
  const first = known[0];
  const logBegins = first === undefined ? null : startOf(first.hour);
  const gone = missing({ farm, on, days, madeFrom, logBegins, picks: scene?.picks ?? null });
  return { scene, madeFrom, problems: [...input.problems, ...unreachable, ...gone] };
}

function stage(
  { farm, settings, forecast, on, days }: WeekInput,
  { weather }: WeatherResult,
  logs: Scene["logs"],
  error: LearnedError,
  past: PastYears,
): Scene {
  const length = weather.temperature.length;
  const open = climate(weather, [{ from: 0, to: length, lying: [] }], settings);
  const horizon = horizonOf(farm, weather, open.frost, on, days);
  const lookout = startOf((weather.first + horizon.lookout) as UtcHour);
  const end = startOf((weather.first + horizon.end) as UtcHour);
  const dates = weather.calendar.dates.filter((date) => instantAt(farm.place.zone, date, 23) >= on);
  const picks = picksOf(farm, on, dates, end, lookout);
  const store = ahead(farm, weather, horizon, settings);
  const issued = forecast?.issued ?? null;
  const { place } = farm;
  const many = members({ weather, place, settings, on, issued, error: error.at, past });
  return { farm, weather, members: many, logs, horizon, picks, store, settings };
}
