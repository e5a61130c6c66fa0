import {
  dayOfYear,
  HOUR,
  type Instant,
  instant,
  type LocalDate,
  type Megajoule,
  megajoule,
} from "../quantity/index.ts";

const RADIAN = Math.PI / 180;
const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Solar constant. [MJ/m²/min] @source faoIrrigation56, eq. 21 */
const SOLAR_CONSTANT = 0.082;

/** Inverse relative distance Earth–Sun. [1] @source faoIrrigation56, eq. 23 @example inverseDistance(246).toFixed(3) // => "0.985" */
export const inverseDistance = (day: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);

/** Solar declination. [rad] @source faoIrrigation56, eq. 24 @example declination(246).toFixed(3) // => "0.120" */
export const declination = (day: number): number => 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);

/** Sunset hour angle; 0 in polar night, π in polar day. [rad] @source faoIrrigation56, eq. 25 @example sunsetAngle(-20, 246).toFixed(3) // => "1.527" */
export const sunsetAngle = (latitude: number, day: number): number =>
  Math.acos(clamp(-Math.tan(latitude * RADIAN) * Math.tan(declination(day)), -1, 1));

/**
 * Radiation of one day above the atmosphere.
 *
 * @param latitude - North positive. [°]
 * @param day - Day of the year, 1 to 366.
 * @returns [MJ/m²]
 * @source faoIrrigation56, eq. 21
 * @example extraterrestrial(-20, 246).toFixed(1) // => "32.2"
 */
export function extraterrestrial(latitude: number, day: number): Megajoule {
  const phi = latitude * RADIAN;
  const delta = declination(day);
  const angle = sunsetAngle(latitude, day);
  const sum = angle * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(angle);
  return megajoule(((24 * 60) / Math.PI) * SOLAR_CONSTANT * inverseDistance(day) * Math.max(0, sum));
}

/** Possible hours of sunshine, flat horizon, no refraction: for eq. 35 only. [h] @source faoIrrigation56, eq. 34 @example sunshineHours(-20, 246).toFixed(1) // => "11.7" */
export const sunshineHours = (latitude: number, day: number): number =>
  (24 / Math.PI) * sunsetAngle(latitude, day);

/** Radiation under a clear sky. [MJ/m²] @param elevation - [m] @source faoIrrigation56, eq. 37 */
export const clearSky = (extra: Megajoule, elevation: number): Megajoule =>
  megajoule((0.75 + 2e-5 * elevation) * extra);

/** Radiation from hours of bright sunshine. [MJ/m²] @source faoIrrigation56, eq. 35 @example fromSunshine(megajoule(25.1), 7.1 / 10.9).toFixed(1) // => "14.4" */
export const fromSunshine = (extra: Megajoule, share: number): Megajoule =>
  megajoule((0.25 + 0.5 * clamp(share, 0, 1)) * extra);

/** k of eq. 50. [°C^-0.5] @source faoIrrigation56, eq. 50 */
const RANGE = { inland: 0.16, coast: 0.19 } as const;

/**
 * Radiation from the day's range of temperature, never above a clear sky.
 *
 * @param range - Highest less lowest; crossed values count as none. [°C]
 * @returns [MJ/m²]
 * @source faoIrrigation56, eq. 50 with the limit of eq. 37
 */
export function fromRange(
  extra: Megajoule,
  range: number,
  setting: "inland" | "coast",
  elevation: number,
): Megajoule {
  const estimate = RANGE[setting] * Math.sqrt(Math.max(0, range)) * extra;
  return megajoule(Math.min(estimate, clearSky(extra, elevation)));
}

/** The day's range at which `fromRange` comes to a clear sky: 22 °C inland, 15.6 °C at a coast at sea level. [°C] @source faoIrrigation56, eq. 50 set equal to eq. 37 @example clearRange("inland", 0).toFixed(1) // => "22.0" */
export const clearRange = (setting: "inland" | "coast", elevation: number): number =>
  (clearSky(megajoule(1), elevation) / RANGE[setting]) ** 2;

/**
 * Share of a clear sky's radiation that comes through a cloud cover, whatever the sun's height.
 *
 * @param cloud - 0 clear to 1 overcast. [1]
 * @source kastenCzeplak1980, with their coefficients for Hamburg
 * @example throughCloud(1) // => 0.25
 */
export const throughCloud = (cloud: number): number => 1 - 0.75 * cloud ** 3.4;

/**
 * Share of the sky under cloud, from how far radiation falls short of a clear sky.
 * One less the cloudiness factor of the net long-wave radiation, kept between 0 and 1.
 *
 * @source faoIrrigation56, eq. 39
 * @example cloudiness(megajoule(20), megajoule(20)) // => 0
 */
export function cloudiness(radiation: Megajoule, clear: Megajoule): number {
  return clear > 0 ? clamp(1 - (1.35 * radiation) / clear + 0.35, 0, 1) : 0.5;
}

/**
 * Sunrise to sunset with refraction and the sun's disc.
 *
 * @param latitude - [°]
 * @returns 0 in polar night, 24 in polar day. [h]
 * @source forsytheCbm1995, CBM model, p = 0.8333°
 */
export function dayLength(latitude: number, day: number): number {
  const theta = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (day - 186)));
  const phi = Math.asin(0.39795 * Math.cos(theta));
  const lat = clamp(latitude, -89.9, 89.9) * RADIAN;
  const cosine =
    (Math.sin(0.8333 * RADIAN) + Math.sin(lat) * Math.sin(phi)) / (Math.cos(lat) * Math.cos(phi));
  return 24 - (24 / Math.PI) * Math.acos(clamp(cosine, -1, 1));
}

/**
 * The instant the sun stands highest on a date.
 * Equation of time by the usual two-term series, good to about a minute.
 *
 * @param longitude - East positive. [°]
 * @source equation of time: memory
 */
export function solarNoon(longitude: number, date: LocalDate): Instant {
  const b = (2 * Math.PI * (dayOfYear(date) - 81)) / 364;
  const equation = 9.87 * Math.sin(2 * b) - 7.53 * Math.cos(b) - 1.5 * Math.sin(b);
  const utcNoon = Date.parse(`${date}T12:00:00Z`);
  return instant(utcNoon - (longitude / 15) * HOUR - equation * 60_000);
}

/** Sine of the sun's height at a number of hours from solar noon; negative below the horizon. [1] */
export function sunHeight(latitude: number, day: number, hoursFromNoon: number): number {
  const phi = latitude * RADIAN;
  const delta = declination(day);
  return (
    Math.sin(phi) * Math.sin(delta) +
    Math.cos(phi) * Math.cos(delta) * Math.cos((hoursFromNoon * Math.PI) / 12)
  );
}
