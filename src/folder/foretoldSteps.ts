import {
  celsius,
  HOUR,
  hourOf,
  type Instant,
  instant,
  type LocalDate,
  localDate,
  metrePerSecond,
} from "../quantity/index.ts";
import type { DailyRecord, ForetoldHour } from "../weather/index.ts";

/** A stretch of time that a forecast speaks of as one. */
export interface Step {
  readonly from: Instant;
  readonly to: Instant;
  /** Mean, lowest and highest. [°C] */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  /** At 10 m. [m/s] */
  readonly wind: number | null;
  /** 0 clear to 1 overcast. [1] */
  readonly cloud: number | null;
  /** [W/m²] */
  readonly radiation: number | null;
  /** Over the stretch. [mm] */
  readonly rain: number | null;
}

/** Steps up to this long are hours, or are cut into them. [h] judgement: longer ones hide the day's course */
const SHORT = 3;

/** A date of which this much is foretold is foretold whole. [h] As of a log. */
const WHOLE_DAY = 20;

const hoursLong = ({ from, to }: Step): number => (to - from) / HOUR;

/** The hours of all steps that are short enough, in order of time; of two steps for an hour the first counts. */
export function hoursOfSteps(steps: readonly Step[]): readonly ForetoldHour[] {
  const hours = new Map<number, ForetoldHour>();
  for (const step of steps) {
    const long = Math.round(hoursLong(step));
    if (long < 1 || long > SHORT) continue;
    for (let k = 0; k < long; k++) {
      const hour = hourOf(instant(step.from + k * HOUR));
      if (hours.has(hour)) continue;
      hours.set(hour, {
        hour,
        temperature: celsius(step.mean),
        wind: step.wind === null ? null : metrePerSecond(step.wind),
        cloud: step.cloud,
        radiation: step.radiation as ForetoldHour["radiation"],
        rain: step.rain === null ? null : step.rain / long,
      });
    }
  }
  return [...hours.values()].sort((a, b) => a.hour - b.hour);
}

/** Mean over the steps that say it, by their length; null when none does. */
function meanOf(steps: readonly Step[], value: (step: Step) => number | null): number | null {
  let sum = 0;
  let long = 0;
  for (const step of steps) {
    const known = value(step);
    if (known === null) continue;
    sum += known * hoursLong(step);
    long += hoursLong(step);
  }
  return long === 0 ? null : sum / long;
}

/** Every date that the steps foretell whole, as its low and high; a step belongs to the date its middle lies in. */
export function daysOfSteps(zone: string, steps: readonly Step[]): readonly DailyRecord[] {
  const dates = new Map<LocalDate, Step[]>();
  for (const step of steps) {
    const date = localDate(zone, instant((step.from + step.to) / 2));
    const own = dates.get(date);
    if (own === undefined) dates.set(date, [step]);
    else own.push(step);
  }
  return [...dates]
    .filter(([, own]) => own.reduce((sum, step) => sum + hoursLong(step), 0) >= WHOLE_DAY)
    .map(([date, own]): DailyRecord => {
      const wind = meanOf(own, (step) => step.wind);
      const cloud = meanOf(own, (step) => step.cloud);
      const wet = own.filter(({ rain }) => rain !== null);
      return {
        date,
        low: celsius(Math.min(...own.map(({ low }) => low))),
        high: celsius(Math.max(...own.map(({ high }) => high))),
        wind: wind === null ? null : metrePerSecond(wind),
        sky: null,
        ...(cloud === null ? {} : { cloud }),
        ...(wet.length === 0 ? {} : { rain: wet.reduce((sum, { rain }) => sum + rain!, 0) }),
      };
    })
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}
