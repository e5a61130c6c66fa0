import { climate } from "../cover/index.ts";
import { type Farm, type Kept, type Settings, withStandingSowings } from "../farm/index.ts";
import type { IssuedSheet } from "../folder/index.ts";
import { followed, type LearnedError, learnedError, unbiased } from "../learn/index.ts";
import type { Problem } from "../problem/index.ts";
import {
  addDays,
  type Instant,
  instantAt,
  type LocalDate,
  localDate,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import {
  type DailyRecord,
  type Forecast,
  loggedDays,
  type Members,
  members,
  outside,
  ownDays,
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
import { type KeptCold, keptColdOf } from "./keptCold.ts";
import { type Learned, learnedOf } from "./learned.ts";
import { coversLearned } from "./learnedCovers.ts";
import { sensorsAt, type TunnelLog, tunnelLogs } from "./logs.ts";
import { missing } from "./missing.ts";
import type { MadeFrom, Pick } from "./outcome.ts";
import { ownRequirements } from "./ownRequirements.ts";
import { picksOf } from "./picks.ts";
import { type Frost, frostAt } from "./thaw.ts";
import { usualWeather } from "./usualWeather.ts";
import { type Weathers, weathersOf } from "./weathers.ts";

/** What the main job is given. */
export interface WeekInput {
  readonly farm: Farm;
  readonly settings: Settings;
  readonly sensors: readonly SensorRecords[];
  readonly forecast: Forecast | null;
  /** Earlier forecasts: days the log leaves open are as they said, and from what followed the error of this one is learned. */
  readonly earlier?: readonly Forecast[];
  /** Days of earlier years measured near the farm, beside those of its own log; left out: none. */
  readonly past?: readonly DailyRecord[];
  /** Moment planned from. */
  readonly on: Instant;
  /** Days planned, 1 to 21. [d] */
  readonly days: number;
  /** What is settled already and planned around; left out: nothing. */
  readonly keep?: readonly Kept[];
  /** The newest sheet given out before; left out: none was. */
  readonly issued?: IssuedSheet;
  /** Also what one thing more would be worth: it takes several plans. Left out: no. */
  readonly whatIf?: boolean;
  /** What reading the folder left for the grower to see to. */
  readonly problems: readonly Problem[];
}

/** The stage on which a plan is made. */
export interface Scene {
  readonly farm: Farm;
  readonly weather: Weather;
  /** The weather ahead as many weathers. */
  readonly members: Members;
  readonly weathers: Weathers;
  readonly keep: readonly Kept[];
  /** The newest sheet given out before; null: none was. */
  readonly issued: IssuedSheet | null;
  /** By tunnel, where one has its own logger. */
  readonly logs: ReadonlyMap<string, TunnelLog>;
  readonly horizon: Horizon;
  /** Bare ground at crop height in calm air, hour by hour from the weather's beginning. [°C] */
  readonly frost: Float64Array;
  readonly picks: readonly Pick[];
  /** Greens already cut that wait for one of them. */
  readonly keptCold: readonly KeptCold[];
  readonly store: Ahead;
  readonly settings: Settings;
  readonly learned: Learned;
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
  const sensors = sensorsAt(input.farm, input.sensors, "outside");
  const since = instantAt(zone, from, 0);
  const { hours, doubtful } = outside(sensors, input.farm.place, settings, input.farm.keepFlagged, since);
  const daily = sensors.flatMap(({ days: own = [] }) => own).filter(({ date }) => date < today);
  const { farm, brought, problems: unreachable } = ownRequirements(input.farm, hours, on, settings);
  const { place } = farm;
  const known = hours.filter(({ hour }) => startOf(hour) < on);
  const own = ownDays(zone, known, daily);
  const { usual, by } = usualWeather(farm, own, from, until);
  const earlier = (input.earlier ?? []).filter(({ issued }) => issued <= on);
  const error = learnedError(followed(earlier, loggedDays(known, zone), zone), settings);
  const past = pastYears([...(asked.past ?? []), ...own]);
  const foretold = forecast === null ? null : unbiased(forecast, error, zone);
  const result = weatherOf({
    place,
    settings,
    hours,
    daily,
    forecast: foretold,
    earlier,
    usual,
    on,
    from,
    until,
  });
  const logs: Scene["logs"] =
    result === null ? new Map() : tunnelLogs(farm, input.sensors, result.weather, on);
  const scene = result === null ? null : stage({ ...input, farm }, result, logs, error, past);
  const dates = daily.map(({ date }) => date);
  const ends = [
    ...known.slice(-1).map(({ hour }) => startOf((hour + 1) as UtcHour)),
    ...dates.map((date) => instantAt(zone, addDays(date, 1), 0)),
  ];
  const begins = [...known.slice(0, 1).map(({ hour }) => localDate(zone, startOf(hour))), ...dates].sort();
  const madeFrom: MadeFrom = {
    sensors: sensors.map(({ sensor }) => sensor),
    latest: ends.length === 0 ? null : (Math.max(...ends) as Instant),
    tunnels: farm.tunnels.flatMap((tunnel) => {
      const log = logs.get(tunnel.id);
      return log === undefined ? [] : [{ tunnel, latest: log.latest }];
    }),
    gaps: result?.gaps ?? [],
    doubtful,
    forecastIssued: forecast?.issued ?? null,
    ...(forecast?.source === undefined ? {} : { forecastSource: forecast.source }),
    forecastEnds: forecast === null ? null : endOf(forecast, result),
    unforeseenFrom:
      result?.weather.days.find(
        ({ lead, origin }) => lead >= 0 && (origin === "carried" || origin === "usual"),
      )?.date ?? null,
    carriedFrom: result?.carriedFrom ?? null,
    usualFrom: result?.usualFrom ?? null,
    usualBehind: result?.usualBehind ?? false,
    ...(by === null ? {} : { usualBy: by }),
    learnedFrom: error.forecasts,
    members: result === null ? 0 : settings.members,
    broughtOver: brought,
    shortDays: shortDays(latitude, today, until),
    ...(scene === null ? {} : { learned: scene.learned }),
  };
  const [first] = begins;
  const logBegins = first === undefined ? null : instantAt(zone, first, 0);
  const gone = missing({ farm, on, days, madeFrom, logBegins, picks: scene?.picks ?? null });
  return { scene, madeFrom, problems: [...input.problems, ...unreachable, ...gone] };
}

/** The last date a forecast reaches: of the days it states, and of those its hours make. */
function endOf({ days }: Forecast, result: WeatherResult | null): LocalDate | null {
  const foretold = (result?.weather.days ?? []).filter(({ origin }) => origin === "forecast");
  return [...days, ...foretold].reduce<LocalDate | null>(
    (last, { date }) => (last === null || date > last ? date : last),
    null,
  );
}

function stage(
  { farm: known, settings, forecast, keep = [], issued: sheet, on, days }: WeekInput,
  { weather }: WeatherResult,
  logs: Scene["logs"],
  error: LearnedError,
  past: PastYears,
): Scene {
  const length = weather.temperature.length;
  const open = climate(weather, [{ from: 0, to: length, lying: [] }], settings);
  const horizon = horizonOf(known, weather, open.frost, on, days, settings);
  const { farm, covers } = coversLearned({ farm: known, weather, logs, horizon, settings });
  const lookout = startOf((weather.first + horizon.lookout) as UtcHour);
  const end = startOf((weather.first + horizon.end) as UtcHour);
  const dates = weather.calendar.dates.filter((date) => instantAt(farm.place.zone, date, 23) >= on);
  const frozenAt = (at: Instant): Frost => frostAt(farm.place.zone, open.frost, weather.first, at);
  const picks = picksOf(farm, on, dates, end, lookout, frozenAt);
  const store = ahead(farm, weather, horizon, settings);
  const issued = forecast?.issued ?? null;
  const { place } = farm;
  const many = members({ weather, place, settings, on, issued, error: error.at, past });
  const weathers = weathersOf(many, horizon.end - horizon.now);
  const set = {
    farm,
    weather,
    members: many,
    weathers,
    keep,
    issued: sheet ?? null,
    logs,
    horizon,
    frost: open.frost,
    picks,
    keptCold: keptColdOf(farm, sheet ?? null, picks, on),
    store,
    settings,
  };
  return { ...set, learned: learnedOf(set, covers) };
}
