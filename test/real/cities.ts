import { readFileSync } from "node:fs";
import { catalogue, type Farm, type Note, type Place } from "../../src/farm/index.ts";
import {
  addDays,
  celsius,
  daysBetween,
  type Instant,
  instant,
  instantAt,
  type LocalDate,
  metre,
  metrePerSecond,
  type UtcHour,
} from "../../src/quantity/index.ts";
import { type DailyRecord, type HourlyRecord, weatherOf } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";

export type City = "Seattle" | "New York";

/**
 * Daily weather of Seattle and New York 2012–2015, from the package vega-datasets (weather.csv, measured by the United
 * States' weather service): lowest, highest, mean wind.
 */
export const CITIES: Readonly<Record<City, Place>> = {
  Seattle: {
    latitude: 47.61,
    longitude: -122.33,
    elevation: metre(50),
    zone: "America/Los_Angeles",
    setting: "coast",
  },
  "New York": {
    latitude: 40.71,
    longitude: -74.01,
    elevation: metre(10),
    zone: "America/New_York",
    setting: "coast",
  },
};

const file = new URL("../../node_modules/vega-datasets/data/weather.csv", import.meta.url);

/** Every day of a city as it was measured. */
export function measuredDays(city: City): readonly DailyRecord[] {
  const [header, ...lines] = readFileSync(file, "utf8").trim().split(/\r?\n/);
  const names = header!.split(",");
  const cell = (line: readonly string[], name: string): string => line[names.indexOf(name)]!;
  return lines
    .map((line) => line.split(","))
    .filter((line) => cell(line, "location") === city)
    .map((line) => ({
      date: cell(line, "date") as LocalDate,
      low: celsius(Number(cell(line, "temp_min"))),
      high: celsius(Number(cell(line, "temp_max"))),
      wind: metrePerSecond(Number(cell(line, "wind"))),
      sky: null,
    }));
}

const hourly = new Map<string, readonly HourlyRecord[]>();

/** The days as a logger would have recorded them hour by hour, by the diurnal curve. */
function asLog(
  city: City,
  days: readonly DailyRecord[],
  from: LocalDate,
  until: LocalDate,
): readonly HourlyRecord[] {
  const key = `${city} ${from} ${until}`;
  const known = hourly.get(key);
  if (known !== undefined) return known;
  const { settings } = catalogue();
  const place = CITIES[city];
  const on = instantAt(place.zone, from, 0);
  const { weather } = weatherOf({
    place,
    settings,
    hours: [],
    daily: [],
    forecast: { issued: on, days },
    usual: [],
    on,
    from,
    until,
  })!;
  const log = [...weather.temperature].map((value, i): HourlyRecord => {
    const temperature = celsius(value);
    return {
      hour: (weather.first + i) as UtcHour,
      mean: temperature,
      lowest: temperature,
      highest: temperature,
      count: 1,
    };
  });
  hourly.set(key, log);
  return log;
}

/** The example's Monday. */
const EXAMPLE = "2026-04-20";

const moveNote = (note: Note, days: number): Note => ({ ...note, at: instant(note.at + days * 86_400_000) });

/** The example farm moved to a city and a Monday: same beds, same cloth, same covers so far; what was measured there is left behind. */
export function movedFarm(farm: Farm, city: City, monday: LocalDate): Farm {
  const days = daysBetween(EXAMPLE, monday);
  return {
    ...farm,
    place: CITIES[city],
    // Its hours are a curve through measured lows and highs: between two equal ones it is flat, as a stuck sensor is.
    keepFlagged: new Set(farm.sensors.keys()),
    successions: farm.successions.map((succession) => ({
      ...succession,
      sown: addDays(succession.sown, days),
    })),
    notes: farm.notes
      .filter(({ kind }) => kind === "cover" || kind === "cut")
      .map((note) => moveNote(note, days)),
  };
}

/** The input of the main job at a Monday morning: log up to it, the measured days after it as the forecast, `warmer` by some degrees. */
export function mondayInput(farm: Farm, city: City, monday: LocalDate, warmer = 0): WeekInput {
  const days = measuredDays(city);
  const ahead = days
    .filter(({ date }) => date >= monday && date < addDays(monday, 10))
    .map((day) => ({ ...day, low: celsius(day.low + warmer), high: celsius(day.high + warmer) }));
  const moved = movedFarm(farm, city, monday);
  const on = instant(instantAt(moved.place.zone, monday, moved.walks.morning) - 60_000) as Instant;
  const first = addDays(monday, -90);
  const from = [first, days[0]!.date].sort()[1]!;
  return {
    farm: moved,
    settings: catalogue().settings,
    sensors: [{ sensor: "outside", hours: asLog(city, days, from, monday) }],
    forecast: { issued: on, days: ahead },
    on,
    days: 7,
    problems: [],
  };
}
