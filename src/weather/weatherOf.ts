import { CURVES, type Place, type Settings, type Usual } from "../farm/index.ts";
import {
  type Calendar,
  calendar,
  daysBetween,
  HOUR,
  hourOf,
  type Instant,
  type LocalDate,
  localDate,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import { DIURNALS } from "./diurnal.ts";
import { foretoldBehind } from "./foretoldBehind.ts";
import { layForetold } from "./foretoldHours.ts";
import { type Day, lightOfDay, UNSEEN } from "./lightOfDay.ts";
import { WHOLE_DAY } from "./loggedDays.ts";
import type { LowHigh } from "./pastYears.ts";
import { precipitationOf } from "./precipitation.ts";
import type { DailyRecord, Forecast, HourlyRecord } from "./record.ts";
import { SHORT_GAP } from "./shortGap.ts";
import { snowOf } from "./snow.ts";
import { solarNoon } from "./sun.ts";
import { turnings } from "./turnings.ts";
import { usualOn } from "./usualOn.ts";
import { type Gap, ORIGINS, type Origin, type Weather } from "./weather.ts";

/** Days whose mean stands in for unknown ones. [d] */
const NEAREST_DAYS = 14;
/** Hours foretold of today that make its low and high where nothing was logged. [h] judgement */
const HALF_DAY = 12;

export interface WeatherInput {
  readonly place: Place;
  readonly settings: Settings;
  /** Outside sensor, in order of time. */
  readonly hours: readonly HourlyRecord[];
  /** Lows and highs of days on which it has no hours. */
  readonly daily: readonly DailyRecord[];
  readonly forecast: Forecast | null;
  /** Forecasts of the time behind: where nothing was logged, what they said comes before what days beside it were like. */
  readonly earlier?: readonly Forecast[];
  /** Stands in before and after the log and beyond the forecast; where it says nothing, the nearest known days do. */
  readonly usual: readonly Usual[];
  /** Nothing logged at or after this moment is used. */
  readonly on: Instant;
  readonly from: LocalDate;
  /** Last date, whole. */
  readonly until: LocalDate;
}

export interface WeatherResult {
  readonly weather: Weather;
  readonly gaps: readonly Gap[];
  /** First date ahead that carries on the last known days, and the first that stands on the usual weather. */
  readonly carriedFrom: LocalDate | null;
  readonly usualFrom: LocalDate | null;
  /** Do days behind stand on the usual weather? */
  readonly usualBehind: boolean;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** How far a day lies from another. [°C] */
const departure = (day: LowHigh, from: LowHigh | null): LowHigh | null =>
  from === null ? null : { low: day.low - from.low, high: day.high - from.high };

const ranged = (record: DailyRecord, origin: Origin): Day => ({
  ...record,
  low: Math.min(record.low, record.high),
  high: Math.max(record.low, record.high),
  origin,
});

/** The mean of the known days nearest to a date: two inside the log, else two weeks of them. */
function nearby(date: LocalDate, known: ReadonlyMap<LocalDate, Day>, inside: boolean): Day | null {
  const nearest = [...known]
    .map(([at, day]) => ({ day, away: Math.abs(daysBetween(date, at)) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, inside ? 2 : NEAREST_DAYS)
    .map(({ day }) => day);
  if (nearest.length === 0) return null;
  const low = mean(nearest.map((day) => day.low));
  const high = mean(nearest.map((day) => day.high));
  return { ...UNSEEN, low, high, origin: inside ? "estimated" : "carried" };
}

/**
 * Every hour from the first date to the last: logged where there is a log, bridged over short gaps, over longer ones as
 * forecasts of that time said or like the days beside it, forecast ahead, and beyond either the usual weather of the date or, where none is given, the last
 * known days carried on. How far the last known day lies from them fades day by day, so that there is no step.
 * Radiation, cloud and wind come with it, rain and snow as far as forecasts tell of them. With none of them there is nothing to go by, and the answer is null.
 */
export function weatherOf(input: WeatherInput): WeatherResult | null {
  const { place, settings, on, from, until } = input;
  const first = (hourOf(solarNoon(place.longitude, from)) - 12) as UtcHour;
  const end = hourOf(solarNoon(place.longitude, until)) + 13;
  const length = end - first;
  const days = calendar(place.zone, first, length);
  const now = Math.min(length, Math.max(0, Math.floor(on / HOUR) - first));

  const temperature = new Float64Array(length).fill(Number.NaN);
  // Radiation, cloud and wind as measured or foretold; the light of the day fills the rest.
  const seen = new Float64Array(length).fill(Number.NaN);
  const cloud = new Float64Array(length).fill(Number.NaN);
  const wind = new Float64Array(length).fill(Number.NaN);
  const lowest = new Float64Array(days.dates.length).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(days.dates.length).fill(Number.NEGATIVE_INFINITY);
  const logged = new Int32Array(days.dates.length);
  const origin = new Uint8Array(length);
  for (const record of input.hours) {
    const i = record.hour - first;
    if (i < 0 || i >= now) continue;
    const day = days.day[i]!;
    temperature[i] = record.mean;
    seen[i] = record.radiation ?? Number.NaN;
    lowest[day] = Math.min(lowest[day]!, record.lowest);
    highest[day] = Math.max(highest[day]!, record.highest);
    logged[day]!++;
  }
  const laid = { temperature, seen, cloud, wind, lowest, highest };
  const foretold = layForetold(input.forecast?.hours ?? [], first, now, days, settings.windAtCrop, laid);
  for (const i of foretold.laid) origin[i] = ORIGINS.indexOf("forecast");

  const today = localDate(place.zone, on);
  const known = new Map<LocalDate, Day>();
  days.dates.forEach((date, day) => {
    if (logged[day]! >= WHOLE_DAY) {
      known.set(date, { ...UNSEEN, low: lowest[day]!, high: highest[day]!, origin: "logger" });
      return;
    }
    const { hours, wind } = foretold.days[day]!;
    // Of today the hours behind are missing where there is no log, and no other day's are better.
    if (hours > 0 && (logged[day]! + hours >= WHOLE_DAY || (date === today && hours >= HALF_DAY)))
      known.set(date, { ...UNSEEN, wind, low: lowest[day]!, high: highest[day]!, origin: "forecast" });
  });
  const dates = new Set(days.dates);
  for (const record of input.daily)
    if (record.date < today && dates.has(record.date) && !known.has(record.date))
      known.set(record.date, { ...record, origin: "logger" });
  for (const record of input.forecast?.days ?? []) {
    if (record.date < today) continue;
    known.set(record.date, ranged(record, "forecast"));
  }
  const loggedDates = [...known]
    .filter(([, day]) => day.origin === "logger")
    .map(([date]) => date)
    .sort();
  const firstLogged = loggedDates[0];
  const lastLogged = loggedDates[loggedDates.length - 1];

  const behind = foretoldBehind(place.zone, input.earlier ?? [], today);
  const standIn = (date: LocalDate): Day | null => {
    const inside =
      firstLogged !== undefined && lastLogged !== undefined && date > firstLogged && date < lastLogged;
    const usual = inside ? null : usualOn(input.usual, date);
    if (usual !== null) return { ...usual, ...UNSEEN, origin: "usual" };
    const near = nearby(date, known, inside);
    return near !== null && date < today ? { ...near, origin: "estimated" } : near;
  };
  const lastKnown = [...known.keys()].reduce<LocalDate | null>(
    (last, date) => (last === null || date > last ? date : last),
    null,
  );
  const left = lastKnown === null ? null : departure(known.get(lastKnown)!, standIn(lastKnown));
  const filled = days.dates.map((date): Day | null => {
    const own = known.get(date);
    if (own !== undefined) return own;
    const said = behind.get(date);
    if (said !== undefined) return ranged(said, "foretold");
    const day = standIn(date);
    if (day === null || left === null || lastKnown === null || date <= lastKnown) return day;
    const kept = settings.dayToDay ** daysBetween(lastKnown, date);
    return { ...day, low: day.low + kept * left.low, high: day.high + kept * left.high };
  });
  if (filled.some((day) => day === null)) return null;
  const all = filled as readonly Day[];
  const firstAhead = (origin: Origin): LocalDate | null =>
    days.dates.find((date, i) => all[i]!.origin === origin && date > today && date <= until) ?? null;

  bridge(temperature, origin, now);
  curve(input, first, days, all, temperature, origin);

  const radiation = new Float64Array(length);
  const hoursOf: number[][] = days.dates.map(() => []);
  days.day.forEach((day, hour) => {
    hoursOf[day]!.push(hour);
  });
  const said = precipitationOf(place.zone, input.forecast, input.earlier ?? [], first, now, days, settings);
  const fallen = said.map((amount) => (Number.isNaN(amount) ? 0 : amount));
  const falls = snowOf(temperature, fallen, days.day, settings);
  const dayWeather = days.dates.map((date, index) => {
    const own = hoursOf[index]!;
    const told = own.some((hour) => !Number.isNaN(said[hour]!));
    const sum = (of: Float64Array): number | null =>
      told ? own.reduce((total, hour) => total + of[hour]!, 0) : null;
    return {
      ...lightOfDay(input, date, all[index]!, own, first, { seen, radiation, cloud, wind }),
      rain: sum(falls.rain),
      snowfall: sum(falls.snowfall),
    };
  });
  return {
    weather: {
      calendar: days,
      first,
      temperature,
      radiation,
      wind,
      cloud,
      ...falls,
      origin,
      days: dayWeather,
    },
    gaps: gapsOf(first, origin, input.hours, now),
    carriedFrom: firstAhead("carried"),
    usualFrom: firstAhead("usual"),
    usualBehind: days.dates.some((date, i) => all[i]!.origin === "usual" && date >= from && date < today),
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
  calendar: Calendar,
  days: readonly Day[],
  temperature: Float64Array,
  origin: Uint8Array,
): void {
  const diurnal = DIURNALS[place.curve ?? CURVES[0]];
  const between = turnings(place, first, calendar);
  for (let i = 0; i < temperature.length; i++) {
    if (!Number.isNaN(temperature[i]!)) continue;
    const { today, next, sun, nextSun } = between(i);
    const [a, b] = [days[today]!, days[next]!];
    temperature[i] = diurnal(
      { rise: sun.rise, length: sun.length, low: a.low, high: a.high },
      { rise: nextSun.rise, length: nextSun.length, low: b.low, high: b.high },
      i + 0.5,
    );
    const { origin: own } = days[calendar.day[i]!]!;
    origin[i] = ORIGINS.indexOf(own === "logger" ? "estimated" : own);
  }
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
    if (kind === "logger" || kind === "forecast" || kind === "carried") continue;
    let end = i;
    while (end < now && ORIGINS[origin[end]!] === kind) end++;
    gaps.push({ from: startOf((first + i) as UtcHour), to: startOf((first + end) as UtcHour), origin: kind });
    i = end;
  }
  return gaps;
}
