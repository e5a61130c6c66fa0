import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import {
  addDays,
  calendar,
  celsius,
  HOUR,
  hourOf,
  type Instant,
  instantAt,
  type LocalDate,
} from "../../src/quantity/index.ts";
import { type DailyRecord, type Forecast, precipitationOf } from "../../src/weather/index.ts";

const { settings } = catalogue();
const ZONE = "America/New_York";
const MONDAY = "2026-04-20" as LocalDate;
const at = (day: number, hour: number): Instant => instantAt(ZONE, addDays(MONDAY, day), hour);
const FIRST = hourOf(at(0, 0));
const DAYS = calendar(ZONE, FIRST, 72);

const day = (number: number, more: Partial<DailyRecord>): DailyRecord => ({
  date: addDays(MONDAY, number),
  low: celsius(2),
  high: celsius(10),
  wind: null,
  sky: null,
  ...more,
});
const forecast = (
  issued: Instant,
  days: readonly DailyRecord[],
  rain: Readonly<Record<number, number | null>> = {},
): Forecast => ({
  issued,
  days,
  hours: Object.entries(rain).map(([hour, amount]) => ({
    hour: hourOf((at(0, 0) + Number(hour) * HOUR) as Instant),
    temperature: celsius(5),
    wind: null,
    cloud: null,
    radiation: null,
    rain: amount,
  })),
});

/** From Tuesday at eight on, with what forecasts before said. */
const fallen = (newest: Forecast | null, earlier: readonly Forecast[] = []): Float64Array =>
  precipitationOf(ZONE, newest, earlier, FIRST, 32, DAYS, settings);

const TUESDAY = at(1, 6);

describe("precipitation", () => {
  test("of a day is spread evenly over its hours", () => {
    const hours = fallen(forecast(TUESDAY, [day(1, {}), day(2, { rain: 12 })]));
    expect([...hours.subarray(48)]).toEqual(new Array(24).fill(0.5));
  });

  test("of an hour counts before its day's, which fills the other hours with what is left of it", () => {
    const hours = fallen(forecast(TUESDAY, [day(2, { rain: 12 })], { 48: 3, 49: 0, 50: null }));
    expect([...hours.subarray(48, 52)]).toEqual([3, 0, 9 / 22, 9 / 22]);
    expect(hours.subarray(48).reduce((sum, each) => sum + each, 0)).toBeCloseTo(12, 9);
  });

  test("that is said in a word only is the settings' amount in a day", () => {
    const hours = fallen(forecast(TUESDAY, [day(2, { wet: true })]));
    expect(hours.subarray(48).reduce((sum, each) => sum + each, 0)).toBeCloseTo(settings.wetWord, 9);
  });

  test("that nobody spoke of is not known", () => {
    expect(fallen(null).every(Number.isNaN)).toBe(true);
    expect(fallen(forecast(TUESDAY, [day(1, {}), day(2, {})])).every(Number.isNaN)).toBe(true);
  });

  test("behind is the last word of the forecasts of that time, ahead that of the newest alone", () => {
    const sunday = forecast(at(-1, 18), [day(0, { rain: 24 }), day(1, { rain: 24 }), day(2, { rain: 24 })]);
    const monday = forecast(at(0, 18), [day(0, { rain: 48 }), day(1, {})]);
    const hours = fallen(forecast(TUESDAY, [day(1, {})]), [sunday, monday]);
    expect([hours[0], hours[23], hours[24], hours[31]]).toEqual([2, 2, 1, 1]);
    expect(hours.subarray(32).every(Number.isNaN)).toBe(true);
  });

  test("is taken back by a later forecast that says a sky in words and nothing of rain", () => {
    const monday = forecast(at(0, 6), [day(1, { wet: true })]);
    const later = (sky: DailyRecord["sky"]) => fallen(forecast(TUESDAY, [day(1, { sky })]), [monday]);
    for (const sky of ["sun", "mixed", "cloud"] as const)
      expect([...later(sky).subarray(24, 48)]).toEqual(new Array(24).fill(0));
    expect(later(null)[24]).toBe(settings.wetWord / 24);
  });

  test("that a day has beyond hours that reach to its end fell before the issue", () => {
    const hours = Object.fromEntries(Array.from({ length: 11 }, (_, i) => [37 + i, 6 / 11]));
    const noon = fallen(forecast((at(1, 12) + (40 / 60) * HOUR) as Instant, [day(1, { rain: 10 })], hours));
    expect(noon[36]).toBeNaN();
    expect([...noon.subarray(37, 48)]).toEqual(new Array(11).fill(6 / 11));
    const { 47: _last, ...open } = hours;
    const some = fallen(forecast((at(1, 12) + (40 / 60) * HOUR) as Instant, [day(1, { rain: 10 })], open));
    expect([some[36], some[47]]).toEqual([expect.closeTo(25 / 11, 9), expect.closeTo(25 / 11, 9)]);
  });

  test("of the hours before its issue a forecast by the hour says nothing, and what was said before stands", () => {
    const monday = forecast(at(0, 18), [day(0, {}), day(1, { rain: 24 })]);
    const early = forecast(at(1, 3), [day(1, { rain: 5 })], { 27: 5, 28: 0 });
    const hours = fallen(early, [monday]);
    expect([...hours.subarray(24, 31)]).toEqual([1, 1, 1, 5, 0, 0, 0]);
  });

  test("behind is not what was foretold more than a week before, nor after it had been", () => {
    const old = forecast(at(-8, 18), [day(0, { rain: 24 })]);
    const late = forecast(TUESDAY, [day(0, { rain: 24 })]);
    expect(fallen(late, [old]).subarray(0, 24).every(Number.isNaN)).toBe(true);
  });
});
