import { catalogue } from "../../src/farm/index.ts";
import { addDays, celsius, type Instant, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, type Forecast, type PastYears, usualError } from "../../src/weather/index.ts";
import { CITIES, type City, measuredDays } from "./cities.ts";

/** Days a forecast tells of. [d] */
const FORETOLD = 10;

/** Standard normal values from a seed: a linear congruential generator, through Box and Muller. Not the program's own draws. */
export function* gauss(seed: number): Generator<number, never> {
  let state = seed >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  for (let i = 0; i < 16; i++) next();
  for (;;) {
    const [radius, angle] = [Math.sqrt(-2 * Math.log(next())), 2 * Math.PI * next()];
    yield radius * Math.cos(angle);
    yield radius * Math.sin(angle);
  }
}

/** By date, every measured day of a city. */
export const byDate = (city: City): ReadonlyMap<LocalDate, DailyRecord> =>
  new Map(measuredDays(city).map((day) => [day.date, day]));

/**
 * A forecast made of what was measured: errors of the stated kind added, as large as stated times `size`, and highs `bias` too
 * low besides. null where days are missing. No forecast errs more than the usual weather of the date would.
 */
export function foretell(
  city: City,
  days: ReadonlyMap<LocalDate, DailyRecord>,
  date: LocalDate,
  size: number,
  bias: number,
  past: PastYears,
  numbers: Generator<number, never>,
): Forecast | null {
  const { settings } = catalogue();
  const { dayToDay, lowToHigh } = settings;
  const own = Math.sqrt(1 - lowToHigh ** 2);
  const fresh = Math.sqrt(1 - dayToDay ** 2);
  let [low, high] = [0, 0];
  const told: DailyRecord[] = [];
  for (let lead = 0; lead < FORETOLD; lead++) {
    const day = days.get(addDays(date, lead));
    if (day === undefined) return null;
    const a = numbers.next().value;
    const b = lowToHigh * a + own * numbers.next().value;
    [low, high] = lead === 0 ? [a, b] : [dayToDay * low + fresh * a, dayToDay * high + fresh * b];
    const stated = size * usualError(lead, settings).spread.low;
    const most = past.spread(day.date) ?? { low: stated, high: stated };
    const pair = [
      day.low - Math.min(stated, most.low) * low,
      day.high - Math.min(stated, most.high) * high - bias,
    ] as const;
    told.push({
      ...day,
      low: celsius(Math.min(...pair)),
      high: celsius(Math.max(...pair)),
    });
  }
  return { issued: instantAt(CITIES[city].zone, date, 0) as Instant, days: told };
}

/** The days of all other years as those of the years before: what a grower who had kept a thermometer for three years knows. */
export function otherYears(city: City, year: number): readonly DailyRecord[] {
  const years = [2012, 2013, 2014, 2015].filter((other) => other !== year);
  return measuredDays(city).flatMap((day) => {
    const back = years.indexOf(Number(day.date.slice(0, 4)));
    const leap = day.date.slice(5) === "02-29";
    return back < 0 || leap ? [] : [{ ...day, date: `${year - 1 - back}${day.date.slice(4)}` as LocalDate }];
  });
}
