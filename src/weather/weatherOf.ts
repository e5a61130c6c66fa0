import type { Place, Settings } from "../farm/index.ts";
import {
  type Celsius,
  calendar,
  dayOfYear,
  daysBetween,
  HOUR,
  hourOf,
  type Instant,
  instant,
  type LocalDate,
  localDate,
  type MetrePerSecond,
  type Mol,
  megajoule,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import { diurnal, type Turning } from "./diurnal.ts";
import type { DailyRecord, Forecast, HourlyRecord } from "./record.ts";
import {
  clearSky,
  cloudiness,
  dayLength,
  extraterrestrial,
  fromRange,
  fromSunshine,
  solarNoon,
  sunHeight,
} from "./sun.ts";
import { type DayWeather, type Gap, ORIGINS, type Origin, type Weather } from "./weather.ts";

/** Longest gap bridged by a straight line. [h] common practice, no source */
const SHORT_GAP = 3;
/** Days whose mean stands in for unknown ones. [d] */
const USUAL_DAYS = 14;
/** Readings of at least this many hours make a day's low and high its own. [h] */
const WHOLE_DAY = 20;

export interface WeatherInput {
  readonly place: Place;
  readonly settings: Settings;
  /** Outside sensor, in order of time. */
  readonly hours: readonly HourlyRecord[];
  /** Lows and highs of days on which it has no hours. */
  readonly daily: readonly DailyRecord[];
  readonly forecast: Forecast | null;
  /** Nothing logged at or after this moment is used. */
  readonly on: Instant;
  readonly from: LocalDate;
  /** Last date, whole. */
  readonly until: LocalDate;
}

export interface WeatherResult {
  readonly weather: Weather;
  readonly gaps: readonly Gap[];
  /** First date beyond log and forecast, carried on from the last known days. */
  readonly carriedFrom: LocalDate | null;
}

interface Day {
  readonly low: number;
  readonly high: number;
  readonly wind: number | null;
  readonly sky: DailyRecord["sky"];
  readonly origin: Origin;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The mean of the known days nearest to a date: two inside the log, else two weeks of them. */
function usual(date: LocalDate, known: ReadonlyMap<LocalDate, Day>, inside: boolean): Day | null {
  const nearest = [...known]
    .map(([at, day]) => ({ day, away: Math.abs(daysBetween(date, at)) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, inside ? 2 : USUAL_DAYS)
    .map(({ day }) => day);
  if (nearest.length === 0) return null;
  const low = mean(nearest.map((day) => day.low));
  const high = mean(nearest.map((day) => day.high));
  return { low, high, wind: null, sky: null, origin: inside ? "estimated" : "carried" };
}

/**
 * Every hour from the first date to the last: logged where there is a log, bridged over short gaps, forecast ahead,
 * and the last known days carried on beyond it. Radiation, cloud and wind come with it.
 * Without a log and without a forecast there is nothing to go by, and the answer is null.
 */
export function weatherOf(input: WeatherInput): WeatherResult | null {
  const { place, on, from, until } = input;
  const first = (hourOf(solarNoon(place.longitude, from)) - 12) as UtcHour;
  const end = hourOf(solarNoon(place.longitude, until)) + 13;
  const length = end - first;
  const days = calendar(place.zone, first, length);
  const now = Math.min(length, Math.max(0, Math.floor(on / HOUR) - first));

  const temperature = new Float64Array(length).fill(Number.NaN);
  const lowest = new Float64Array(days.dates.length).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(days.dates.length).fill(Number.NEGATIVE_INFINITY);
  const logged = new Int32Array(days.dates.length);
  const origin = new Uint8Array(length);
  for (const record of input.hours) {
    const i = record.hour - first;
    if (i < 0 || i >= now) continue;
    const day = days.day[i]!;
    temperature[i] = record.mean;
    lowest[day] = Math.min(lowest[day]!, record.lowest);
    highest[day] = Math.max(highest[day]!, record.highest);
    logged[day]!++;
  }

  const today = localDate(place.zone, on);
  const known = new Map<LocalDate, Day>();
  days.dates.forEach((date, day) => {
    if (logged[day]! >= WHOLE_DAY) {
      known.set(date, { low: lowest[day]!, high: highest[day]!, wind: null, sky: null, origin: "logger" });
    }
  });
  for (const { date, low, high, wind, sky } of input.daily) {
    if (date < today && !known.has(date)) known.set(date, { low, high, wind, sky, origin: "logger" });
  }
  for (const { date, low, high, wind, sky } of input.forecast?.days ?? []) {
    if (date < today) continue;
    known.set(date, { low: Math.min(low, high), high: Math.max(low, high), wind, sky, origin: "forecast" });
  }
  const loggedDates = [...known].filter(([, day]) => day.origin === "logger").map(([date]) => date);
  const firstLogged = loggedDates[0];
  const lastLogged = loggedDates[loggedDates.length - 1];

  const filled = days.dates.map((date): Day | null => {
    const own = known.get(date);
    if (own !== undefined) return own;
    const inside =
      firstLogged !== undefined && lastLogged !== undefined && date > firstLogged && date < lastLogged;
    const standIn = usual(date, known, inside);
    return standIn !== null && date < today ? { ...standIn, origin: "estimated" } : standIn;
  });
  if (filled.some((day) => day === null)) return null;
  const all = filled as readonly Day[];
  const carriedDay = all.findIndex(
    (day, i) => day.origin === "carried" && days.dates[i]! > today && days.dates[i]! <= until,
  );

  bridge(temperature, origin, now);
  curve(input, first, days.day, days.dates, all, temperature, origin);

  const radiation = new Float64Array(length);
  const cloud = new Float64Array(length);
  const wind = new Float64Array(length);
  const dayWeather = days.dates.map((date, index) =>
    lightOfDay(input, date, all[index]!, index, days.day, first, { radiation, cloud, wind }),
  );
  return {
    weather: { calendar: days, first, temperature, radiation, wind, cloud, origin, days: dayWeather },
    gaps: gapsOf(first, origin, input.hours, now),
    carriedFrom: carriedDay < 0 ? null : days.dates[carriedDay]!,
  };
}

/** Straight lines over short gaps between two logged hours. */
function bridge(temperature: Float64Array, origin: Uint8Array, now: number): void {
  let last = -1;
  for (let i = 0; i < now; i++) {
    if (Number.isNaN(temperature[i]!)) continue;
    const missing = i - last - 1;
    if (last >= 0 && missing > 0 && missing <= SHORT_GAP) {
      for (let k = last + 1; k < i; k++) {
        const share = (k - last) / (i - last);
        temperature[k] = temperature[last]! * (1 - share) + temperature[i]! * share;
        origin[k] = ORIGINS.indexOf("filled");
      }
    }
    last = i;
  }
}

/** The diurnal curve through the days' lows and highs for every hour that has no temperature yet. */
function curve(
  { place }: WeatherInput,
  first: UtcHour,
  dayOfHour: Int32Array,
  dates: readonly LocalDate[],
  days: readonly Day[],
  temperature: Float64Array,
  origin: Uint8Array,
): void {
  const turnings = dates.map((date, i): Turning => {
    const long = Math.min(23, Math.max(1, dayLength(place.latitude, dayOfYear(date))));
    const rise = solarNoon(place.longitude, date) / HOUR - first - long / 2;
    return { rise, length: long, low: days[i]!.low, high: days[i]!.high };
  });
  const before = { ...turnings[0]!, rise: turnings[0]!.rise - 24 };
  const after = { ...turnings[turnings.length - 1]!, rise: turnings[turnings.length - 1]!.rise + 24 };
  for (let i = 0; i < temperature.length; i++) {
    if (!Number.isNaN(temperature[i]!)) continue;
    const middle = i + 0.5;
    const day = dayOfHour[i]!;
    const own = turnings[day]!;
    temperature[i] =
      middle < own.rise
        ? diurnal(turnings[day - 1] ?? before, own, middle)
        : diurnal(own, turnings[day + 1] ?? after, middle);
    origin[i] = ORIGINS.indexOf(days[day]!.origin === "logger" ? "estimated" : days[day]!.origin);
  }
}

/** One day's radiation spread over its hours by the sun's height, with its cloud and wind. */
function lightOfDay(
  { place, settings, on }: WeatherInput,
  date: LocalDate,
  day: Day,
  index: number,
  dayOfHour: Int32Array,
  first: UtcHour,
  into: { readonly radiation: Float64Array; readonly cloud: Float64Array; readonly wind: Float64Array },
): DayWeather {
  const number = dayOfYear(date);
  const extra = extraterrestrial(place.latitude, number);
  const clear = clearSky(extra, place.elevation);
  const sunshine = { sun: settings.skySun, mixed: settings.skyMixed, cloud: settings.skyCloud };
  const sum =
    day.sky === null
      ? fromRange(extra, day.high - day.low, place.setting, place.elevation)
      : megajoule(Math.min(clear, fromSunshine(extra, sunshine[day.sky])));
  const cover = cloudiness(sum, clear);
  const noon = solarNoon(place.longitude, date);
  const long = dayLength(place.latitude, number);
  const wind = day.wind ?? settings.wind;

  const hours: number[] = [];
  for (let i = dayOfHour.indexOf(index); i >= 0 && i < dayOfHour.length && dayOfHour[i] === index; i++)
    hours.push(i);
  const heights = hours.map((i) =>
    Math.max(
      0,
      sunHeight(place.latitude, number, (startOf((first + i) as UtcHour) + HOUR / 2 - noon) / HOUR),
    ),
  );
  const total = heights.reduce((a, b) => a + b, 0);
  hours.forEach((i, k) => {
    into.radiation[i] = total > 0 ? (((sum * heights[k]!) / total) * 1e6) / 3600 : 0;
    into.cloud[i] = cover;
    into.wind[i] = wind;
  });
  return {
    date,
    low: day.low as Celsius,
    high: day.high as Celsius,
    wind: wind as MetrePerSecond,
    windKnown: day.wind !== null,
    light: (sum * settings.lightPerMegajoule) as Mol,
    dayLength: long,
    sunrise: instant(noon - (long / 2) * HOUR),
    sunset: instant(noon + (long / 2) * HOUR),
    cloud: cover,
    origin: day.origin,
    lead: daysBetween(localDate(place.zone, on), date),
  };
}

/** Stretches inside the log that it did not cover. */
function gapsOf(
  first: UtcHour,
  origin: Uint8Array,
  hours: readonly HourlyRecord[],
  now: number,
): readonly Gap[] {
  const began = hours.find((record) => record.hour >= first);
  if (began === undefined) return [];
  const gaps: Gap[] = [];
  for (let i = began.hour - first; i < now; i++) {
    const kind = ORIGINS[origin[i]!]!;
    if (kind !== "filled" && kind !== "estimated") continue;
    let end = i;
    while (end < now && ORIGINS[origin[end]!] === kind) end++;
    gaps.push({ from: startOf((first + i) as UtcHour), to: startOf((first + end) as UtcHour), origin: kind });
    i = end;
  }
  return gaps;
}
