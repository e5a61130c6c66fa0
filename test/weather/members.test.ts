import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue, type Settings, smoothedYears, type Usual } from "../../src/farm/index.ts";
import { addDays, celsius, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import {
  type DailyRecord,
  type Forecast,
  type Members,
  members,
  type PastYears,
  pastYears,
  usualError,
  type Weather,
  weatherOf,
} from "../../src/weather/index.ts";
import { CITIES, measuredDays } from "../real/cities.ts";
import { otherYears } from "../real/foretold.ts";

const { settings } = catalogue();
const place = CITIES["New York"];
const today = "2014-05-05" as LocalDate;
const on = instantAt(place.zone, today, 4);
const measured = measuredDays("New York");
const past = pastYears(otherYears("New York", 2014));
const none = pastYears([]);

const forecastOf = (days: number): Forecast | null =>
  days === 0
    ? null
    : {
        issued: on,
        days: measured.filter(({ date }) => date >= today && date < addDays(today, days)),
      };

/** The last weeks as a daily log would have them: a forecast that reaches back stands for them. */
/** The usual weather of the years that tell of it, else a typed month. */
const usualBy = (years: PastYears): readonly Usual[] =>
  years === past
    ? smoothedYears(otherYears("New York", 2014), 2)
    : [{ month: 5, low: celsius(11), high: celsius(21) }];

function ahead(
  changed: Partial<Settings>,
  years: PastYears,
  days: number,
  spread = 1,
): { readonly weather: Weather; readonly many: Members } {
  const own = { ...settings, ...changed };
  const forecast = forecastOf(days);
  const common = { place, settings: own, on, past: years };
  const { weather } = weatherOf({
    ...common,
    hours: [],
    daily: [],
    forecast,
    usual: usualBy(years),
    from: addDays(today, -3),
    until: addDays(today, 20),
  })!;
  const error = (lead: number) => {
    const { bias, spread: size } = usualError(lead, own);
    return { bias, spread: { low: spread * size.low, high: spread * size.high } };
  };
  return { weather, many: members({ ...common, weather, issued: forecast?.issued ?? null, error }) };
}

const values = (many: Members): readonly (readonly number[])[] =>
  many.daily.map(({ low, high }) => [...low, ...high]);

const WAYS: readonly (readonly [string, PastYears, number])[] = [
  ["a forecast and past years", past, 10],
  ["a forecast and usual weather", none, 10],
  ["past years alone", past, 0],
  ["usual weather alone", none, 0],
];

describe.each(WAYS)("members from %s", (_, years, days) => {
  test("are the same for the same seed, others for another, and more never move the earlier ones", () => {
    const few = ahead({ members: 16 }, years, days).many;
    expect(values(ahead({ members: 16 }, years, days).many)).toEqual(values(few));
    expect(values(ahead({ members: 53 }, years, days).many).slice(0, 16)).toEqual(values(few));
    expect(values(ahead({ members: 16, seed: 2 }, years, days).many)).not.toEqual(values(few));
  });

  test("are in hundredths of a degree, lows below highs, hours finite", () => {
    const { many } = ahead({}, years, days);
    expect(many.daily.length).toBe(settings.members);
    for (const { low, high } of many.daily)
      low.forEach((value, i) => {
        expect(value).toBeLessThanOrEqual(high[i]!);
        for (const each of [value, high[i]!])
          expect(Math.abs(each * 100 - Math.round(each * 100))).toBeLessThan(1e-6);
      });
    for (const hours of many.departures) expect(hours.every(Number.isFinite)).toBe(true);
  });
});

test("without any error the members are the forecast itself", () => {
  const { weather, many } = ahead({}, past, 10, 0);
  const foretold = weather.days.filter(({ lead }) => lead >= 0 && lead < 10);
  for (const { low, high } of many.daily) {
    expect([...low.slice(0, 10)]).toEqual(foretold.map((day) => day.low));
    expect([...high.slice(0, 10)]).toEqual(foretold.map((day) => day.high));
  }
  const hours = 24 * 9;
  for (const departure of many.departures)
    expect(Math.max(...departure.slice(0, hours).map(Math.abs))).toBeLessThan(1e-9);
});

test("hours follow the same curve as the weather's: a member's days foretold give its hours", () => {
  const { weather, many } = ahead({ members: 4 }, none, 10);
  many.daily.forEach(({ low, high }, m) => {
    const days = many.dates.map(
      (date, i): DailyRecord => ({
        date,
        low: celsius(low[i]!),
        high: celsius(high[i]!),
        wind: null,
        sky: null,
      }),
    );
    const own = weatherOf({
      place,
      settings,
      hours: [],
      daily: [],
      forecast: { issued: on, days },
      usual: [{ month: 5, low: celsius(11), high: celsius(21) }],
      on,
      from: addDays(today, -3),
      until: addDays(today, 20),
    })!.weather;
    // From the first sunrise on: the night before belongs to a day that has been.
    for (let i = many.now + 6; i < weather.temperature.length; i++)
      expect(weather.temperature[i]! + many.departures[m]![i - many.now]!).toBeCloseTo(
        own.temperature[i]!,
        9,
      );
  });
});

test("their mean is the weather as expected, and their spread grows with the days ahead", () => {
  const { weather, many } = ahead({}, none, 10);
  const days = weather.days.filter(({ lead }) => lead >= 0);
  const spread = days.map((day, i) => {
    const off = many.daily.map(({ high }) => high[i]! - day.high);
    expect(Math.abs(off.reduce((a, b) => a + b, 0) / off.length)).toBeLessThan(0.35);
    return Math.sqrt(off.reduce((a, b) => a + b * b, 0) / off.length);
  });
  for (const lead of [0, 3, 6, 9])
    expect(spread[lead]! / usualError(lead, settings).spread.high).toBeCloseTo(1, 0.4);
  expect(spread[9]!).toBeGreaterThan(2 * spread[0]!);
  for (const later of spread.slice(12)) expect(later).toBeLessThan(settings.forecastSpreadMost * 1.3);
});

test("no step where forecast meets usual weather: changes from day to day there are like those beside it", () => {
  // Over many starts, so that the measured course of one month does not decide; a few members of each.
  for (const years of [past, none]) {
    const changes: { mean: number; spread: number }[] = [];
    const all: number[][] = Array.from({ length: 19 }, () => []);
    for (let start = 0; start < 60; start++) {
      const date = addDays("2014-04-01", start * 3);
      const moment = instantAt(place.zone, date, 4);
      const forecast = {
        issued: moment,
        days: measured.filter((day) => day.date >= date && day.date < addDays(date, 10)),
      };
      const own = { ...settings, members: 32, seed: start };
      const usual = Array.from({ length: 12 }, (_, i) => ({
        month: i + 1,
        ...past.usual(`2014-${String(i + 1).padStart(2, "0")}-15` as LocalDate)!,
      })).map(({ month, low, high }) => ({ month, low: celsius(low), high: celsius(high) }));
      const common = { place, settings: own, on: moment, past: years };
      const { weather } = weatherOf({
        ...common,
        hours: [],
        daily: [],
        forecast,
        usual: years === past ? usualBy(past) : usual,
        from: date,
        until: addDays(date, 19),
      })!;
      const many = members({
        ...common,
        weather,
        issued: moment,
        error: (lead) => usualError(lead, own),
      });
      for (const { high } of many.daily) for (let i = 0; i < 19; i++) all[i]!.push(high[i + 1]! - high[i]!);
    }
    for (const day of all) {
      const mean = day.reduce((a, b) => a + b, 0) / day.length;
      const spread = Math.sqrt(day.reduce((a, b) => a + (b - mean) ** 2, 0) / day.length);
      changes.push({ mean, spread });
    }
    // Day 9 is the last foretold: the change into day 10 is the join.
    const beside = [6, 7, 8, 10, 11, 12].map((i) => changes[i]!);
    const join = changes[9]!;
    const within = (value: number, others: readonly number[], room: number): void => {
      expect(value).toBeGreaterThan(Math.min(...others) - room);
      expect(value).toBeLessThan(Math.max(...others) + room);
    };
    within(
      join.mean,
      beside.map(({ mean }) => mean),
      0,
    );
    within(
      join.spread,
      beside.map(({ spread }) => spread),
      0,
    );
  }
});

test("whatever the weather, its seed and its settings, nothing is no number", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 10 }),
      fc.integer(),
      fc.constantFrom(past, none),
      fc.double({ min: 0, max: 3, noNaN: true }),
      (days, seed, years, spread) => {
        const { many } = ahead({ members: 8, seed }, years, days, spread);
        for (const { low, high } of many.daily) expect([...low, ...high].every(Number.isFinite)).toBe(true);
      },
    ),
    { numRuns: 40, seed: 3 },
  );
});
