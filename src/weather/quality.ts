import type { Place, Settings } from "../farm/index.ts";
import {
  calendar,
  dayOfYear,
  HOUR,
  type Instant,
  instant,
  type LocalDate,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import type { HourlyRecord } from "./record.ts";
import { clearRange, dayLength, solarNoon } from "./sun.ts";

/**
 * Why an hour is doubted. `range`: no air on a farm is like this. `inconsistent`: its mean lies outside its own low and
 * high. `spike`: one hour up and back, or down and back. `stuck`: half a day without a change. `sun`: the sensor itself
 * was heated by the sun.
 */
export type Flag = "range" | "inconsistent" | "spike" | "stuck" | "sun";

export type Flags = ReadonlyMap<UtcHour, Flag>;

/** Rounding of a stored mean. [°C] */
const ROUNDING = 0.01;

/** Hours after sunrise in which the first sun reaches a sensor. [h] judgement */
const MORNING = 3;

const isNext = (a: HourlyRecord | undefined, b: HourlyRecord): boolean => a?.hour === b.hour - 1;

/** Up and back, or down and back, by more than the step. */
function isSpike(before: HourlyRecord, { mean }: HourlyRecord, after: HourlyRecord, step: number): boolean {
  const [rise, fall] = [mean - before.mean, mean - after.mean];
  return Math.min(rise, fall) > step || Math.max(rise, fall) < -step;
}

/** Stretches of hours one after the other, none missing, in which nothing changes. */
function stuck(hours: readonly HourlyRecord[], { stuckHours, stuckRange }: Settings): readonly UtcHour[] {
  const found: UtcHour[] = [];
  let from = 0;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const end = (to: number): void => {
    if (to - from >= stuckHours) for (const { hour } of hours.slice(from, to)) found.push(hour);
  };
  hours.forEach((record, i) => {
    const [lower, higher] = [Math.min(low, record.lowest), Math.max(high, record.highest)];
    if (i > from && isNext(hours[i - 1], record) && higher - lower < stuckRange)
      [low, high] = [lower, higher];
    else {
      end(i);
      from = i;
      [low, high] = [record.lowest, record.highest];
    }
  });
  end(hours.length);
  return found;
}

interface Daylight {
  readonly rise: Instant;
  readonly set: Instant;
}

/** Sunrise and sunset of a date. */
function daylightOf({ latitude, longitude }: Place, date: LocalDate): Daylight {
  const noon = solarNoon(longitude, date);
  const half = (dayLength(latitude, dayOfYear(date)) / 2) * HOUR;
  return { rise: instant(noon - half), set: instant(noon + half) };
}

interface Day extends Daylight {
  readonly hours: readonly HourlyRecord[];
}

function daysOf(hours: readonly HourlyRecord[], place: Place): readonly Day[] {
  const [first, last] = [hours[0], hours.at(-1)];
  if (first === undefined || last === undefined) return [];
  const { dates, day } = calendar(place.zone, first.hour, last.hour - first.hour + 1);
  const byDate = dates.map((): HourlyRecord[] => []);
  for (const record of hours) byDate[day[record.hour - first.hour]!]!.push(record);
  return dates.map((date, i) => ({ ...daylightOf(place, date), hours: byDate[i]! }));
}

const sunlit = ({ rise, set, hours }: Day): readonly HourlyRecord[] =>
  hours.filter(({ hour }) => startOf(hour) + HOUR > rise && startOf(hour) < set);

/** Does it warm at once when the sun comes up, on a day of a wider range than a clear sky gives? Judgement; see the settings. */
function inSun({ rise, hours }: Day, place: Place, { sunStep, sunRange }: Settings): boolean {
  const low = Math.min(...hours.map(({ lowest }) => lowest));
  const high = Math.max(...hours.map(({ highest }) => highest));
  if (high - low <= sunRange * clearRange(place.setting, place.elevation)) return false;
  return hours.some((record, i) => {
    const before = hours[i - 1];
    const since = startOf(record.hour) - rise;
    if (before === undefined || !isNext(before, record) || since < -HOUR || since > MORNING * HOUR)
      return false;
    return record.mean - before.mean > sunStep;
  });
}

/**
 * Hours of one sensor in the open that its own record makes doubtful; an hour has the first flag that holds.
 *
 * @param hours - Oldest first.
 * @source zamgAws2002 (range), epaMonitoring2000 (step, span without a change), zahumensky2004 (least change)
 */
export function flagsOf(hours: readonly HourlyRecord[], place: Place, settings: Settings): Flags {
  const flags = new Map<UtcHour, Flag>();
  const flag = (hour: UtcHour, as: Flag): void => void (flags.has(hour) || flags.set(hour, as));
  hours.forEach((record, i) => {
    const { hour, mean, lowest, highest } = record;
    const [before, after] = [hours[i - 1], hours[i + 1]];
    if (lowest < settings.airLowest || highest > settings.airHighest) flag(hour, "range");
    else if (mean < lowest - ROUNDING || mean > highest + ROUNDING) flag(hour, "inconsistent");
    else if (before !== undefined && after !== undefined && isNext(before, record) && isNext(record, after))
      if (isSpike(before, record, after, settings.spikeStep)) flag(hour, "spike");
  });
  for (const hour of stuck(hours, settings)) flag(hour, "stuck");
  const sound = hours.filter(({ hour }) => !flags.has(hour));
  for (const day of daysOf(sound, place))
    if (inSun(day, place, settings)) for (const { hour } of sunlit(day)) flag(hour, "sun");
  return flags;
}

/** Sunlit hours in which a sensor is warmer by more than `sunExcess` than the coolest other one. Judgement. */
export function warmerThanOthers(
  hours: readonly HourlyRecord[],
  others: readonly (readonly HourlyRecord[])[],
  place: Place,
  { sunExcess }: Settings,
): readonly UtcHour[] {
  const coolest = new Map<UtcHour, number>();
  for (const { hour, mean } of others.flat())
    coolest.set(hour, Math.min(mean, coolest.get(hour) ?? Number.POSITIVE_INFINITY));
  return daysOf(hours, place)
    .flatMap(sunlit)
    .filter(({ hour, mean }) => mean - (coolest.get(hour) ?? Number.POSITIVE_INFINITY) > sunExcess)
    .map(({ hour }) => hour);
}
