import { climate } from "../cover/index.ts";
import { coverHistory, type Farm, lyingAt, type Settings } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import {
  addDays,
  HOUR,
  type Instant,
  instantAt,
  type LocalDate,
  localDate,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import {
  type Forecast,
  outside,
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
  const sensors = input.sensors.filter(({ sensor }) => farm.sensors.get(sensor) === "outside");
  const since = instantAt(zone, from, 0);
  const { hours, doubtful } = outside(sensors, farm.place, settings, farm.keepFlagged, since);
  const daily = sensors.flatMap(({ days }) => days ?? []);
  const result = weatherOf({ place: farm.place, settings, hours, daily, forecast, on, from, until });
  const known = hours.filter(({ hour }) => startOf(hour) < on);
  const dates = daily.map(({ date }) => date).filter((date) => date < today);
  const ends = [
    ...known.slice(-1).map(({ hour }) => startOf((hour + 1) as UtcHour)),
    ...dates.map((date) => instantAt(zone, addDays(date, 1), 0)),
  ];
  const begins = [...known.slice(0, 1).map(({ hour }) => localDate(zone, startOf(hour))), ...dates].sort();
  const madeFrom: MadeFrom = {
    sensors: sensors.map(({ sensor }) => sensor),
    latest: ends.length === 0 ? null : (Math.max(...ends) as Instant),
    gaps: result?.gaps ?? [],
    doubtful,
    forecastIssued: forecast?.issued ?? null,
    forecastEnds:
      forecast?.days.reduce<MadeFrom["forecastEnds"]>(
        (last, { date }) => (last === null || date > last ? date : last),
        null,
      ) ?? null,
    carriedFrom: result?.carriedFrom ?? null,
  };
  const problems = [...input.problems, ...missing(input, madeFrom, begins[0] ?? null)];
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

/** Age of the log's end from which sizes are no longer to be trusted without a word. [d] judgement */
const OLD_LOG = 2;

/** Tunnels on which each cover lies at a moment. */
function coversLying(farm: Farm, on: Instant): ReadonlyMap<string, readonly string[]> {
  const lying = new Map<string, string[]>();
  for (const tunnel of farm.tunnels) {
    for (const { cover } of lyingAt(coverHistory(farm, tunnel), on)) {
      lying.set(cover, [...(lying.get(cover) ?? []), tunnel.name]);
    }
  }
  return lying;
}

/** What the grower should know is missing; the sheet is made all the same. */
function missing(
  { farm, forecast, on, days }: WeekInput,
  madeFrom: MadeFrom,
  began: LocalDate | null,
): readonly Problem[] {
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
        madeFrom.latest === null
          ? "Import one with: leafpace import FILE. With neither log nor forecast there is nothing to plan by."
          : "Import one with: leafpace import FILE. Until then the last known days are carried on.",
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
  const earliest = farm.successions.map(({ sown }) => sown).sort()[0];
  if (began !== null && earliest !== undefined && earliest < began) {
    problems.push(
      need(
        "log-starts-late",
        "temperature",
        `a log from ${earliest}, the first sowing`,
        `one from ${began}`,
        "The days before it stand on the mean of the first two weeks; measure a leaf of the older beds.",
      ),
    );
  }
  if (madeFrom.latest !== null && on - madeFrom.latest > OLD_LOG * 24 * HOUR) {
    problems.push(
      need(
        "log-old",
        "temperature",
        "a log up to the last two days",
        `one up to ${localDate(farm.place.zone, madeFrom.latest)}`,
        "Import what the logger has; sizes since then are estimated.",
      ),
    );
  }
  for (const [cover, lying] of coversLying(farm, on)) {
    const owned = farm.pieces
      .filter((piece) => piece.cover === cover)
      .reduce((sum, { count }) => sum + count, 0);
    if (lying.length <= owned) continue;
    problems.push(
      need(
        "cloth-too-few",
        "pieces.csv",
        `at least ${lying.length} of ${cover}, which lies on ${lying.join(", ")}`,
        `${owned}`,
        "Add the cloth to pieces.csv, or note which tunnel it was taken off.",
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
