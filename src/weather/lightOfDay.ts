import type { Place, Settings } from "../farm/index.ts";
import {
  type Celsius,
  dayOfYear,
  daysBetween,
  HOUR,
  type Instant,
  instant,
  type LocalDate,
  localDate,
  type Megajoule,
  type MetrePerSecond,
  type Mol,
  megajoule,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import type { DailyRecord } from "./record.ts";
import {
  clearSky,
  cloudiness,
  dayLength,
  extraterrestrial,
  fromRange,
  fromSunshine,
  solarNoon,
  sunHeight,
  sunshineHours,
  throughCloud,
} from "./sun.ts";
import type { DayWeather, Origin } from "./weather.ts";

/** What is known of one day. */
export interface Day extends Pick<DailyRecord, "sky" | "cloud" | "sunshine" | "radiation"> {
  readonly low: number;
  readonly high: number;
  readonly wind: number | null;
  readonly origin: Origin;
}

/** A day of which nobody has seen the sky or felt the wind. */
export const UNSEEN = { wind: null, sky: null } as const;

/** [MJ/m²] in an hour of 1 W/m² */
const HOUR_OF_WATT = 0.0036;

/**
 * A day's radiation from the best that is known of it: measured, from hours of sunshine, from the share of cloud, from a
 * word for the sky, or from its range of temperature.
 *
 * @returns Never above a clear sky, save for what was measured. [MJ/m²]
 */
export function radiationOf(
  day: Pick<Day, "low" | "high" | "sky" | "cloud" | "sunshine" | "radiation">,
  { latitude, elevation, setting }: Pick<Place, "latitude" | "elevation" | "setting">,
  number: number,
  { skySun, skyMixed, skyCloud }: Pick<Settings, "skySun" | "skyMixed" | "skyCloud">,
): Megajoule {
  if (day.radiation !== undefined) return day.radiation;
  const extra = extraterrestrial(latitude, number);
  if (day.sunshine === undefined && day.cloud !== undefined)
    return megajoule(clearSky(extra, elevation) * throughCloud(day.cloud));
  const possible = sunshineHours(latitude, number);
  const words = { sun: skySun, mixed: skyMixed, cloud: skyCloud };
  const share =
    day.sunshine !== undefined && possible > 0
      ? day.sunshine / possible
      : day.sky === null
        ? null
        : words[day.sky];
  return share === null
    ? fromRange(extra, day.high - day.low, setting, elevation)
    : megajoule(Math.min(clearSky(extra, elevation), fromSunshine(extra, share)));
}

/**
 * One day's radiation spread over its hours by the sun's height, with its cloud and wind. Hours keep what was measured or
 * foretold of them; the light of an hour whose cloud is known comes through that cloud.
 *
 * @param hours - Of the day, as indices into the arrays.
 * @param into - `seen` radiation is read, NaN where none is; the others are filled where they are NaN.
 */
export function lightOfDay(
  { place, settings, on }: { readonly place: Place; readonly settings: Settings; readonly on: Instant },
  date: LocalDate,
  day: Day,
  hours: readonly number[],
  first: UtcHour,
  into: {
    readonly seen: Float64Array;
    readonly radiation: Float64Array;
    readonly cloud: Float64Array;
    readonly wind: Float64Array;
  },
): Omit<DayWeather, "rain" | "snowfall"> {
  const number = dayOfYear(date);
  const estimate = radiationOf(day, place, number, settings);
  const noon = solarNoon(place.longitude, date);
  const long = dayLength(place.latitude, number);
  const wind = day.wind ?? settings.wind;

  const clear = clearSky(extraterrestrial(place.latitude, number), place.elevation);
  const heights = hours.map((i) =>
    Math.max(
      0,
      sunHeight(place.latitude, number, (startOf((first + i) as UtcHour) + HOUR / 2 - noon) / HOUR),
    ),
  );
  const total = heights.reduce((a, b) => a + b, 0);
  let sum: number = estimate;
  hours.forEach((i, k) => {
    const under = (day: number): number => (total > 0 ? (((day * heights[k]!) / total) * 1e6) / 3600 : 0);
    const [seen, cloud] = [into.seen[i]!, into.cloud[i]!];
    const light = !Number.isNaN(seen)
      ? seen
      : under(Number.isNaN(cloud) ? estimate : clear * throughCloud(cloud));
    into.radiation[i] = light;
    sum += (light - under(estimate)) * HOUR_OF_WATT;
  });
  sum = Math.max(0, sum);
  const overhead = day.cloud ?? cloudiness(megajoule(sum), clear);
  for (const i of hours) {
    if (Number.isNaN(into.cloud[i]!)) into.cloud[i] = overhead;
    if (Number.isNaN(into.wind[i]!)) into.wind[i] = wind * settings.windAtCrop;
  }
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
    cloud: overhead,
    origin: day.origin,
    lead: daysBetween(localDate(place.zone, on), date),
  };
}
