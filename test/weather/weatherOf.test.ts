import { describe, expect, test } from "vitest";
import { catalogue, type Usual } from "../../src/farm/index.ts";
import {
  addDays,
  celsius,
  type Instant,
  instant,
  instantAt,
  type LocalDate,
  metre,
  type UtcHour,
} from "../../src/quantity/index.ts";
import {
  type DailyRecord,
  type Forecast,
  firstOpen,
  type HourlyRecord,
  type WeatherInput,
  weatherOf,
} from "../../src/weather/index.ts";

const zone = "America/New_York";
const today = "2026-04-20" as LocalDate;
const date = (offset: number): LocalDate => addDays(today, offset);
const april: readonly Usual[] = [{ month: 4, low: celsius(3), high: celsius(15) }];
const foretold = (offset: number): DailyRecord => ({
  date: date(offset),
  low: celsius(8),
  high: celsius(20),
  wind: null,
  sky: null,
});
const on = instant(instantAt(zone, today, 7));

const input = (changed: Partial<WeatherInput>): WeatherInput => ({
  place: { latitude: 44.12, longitude: -72.84, elevation: metre(190), zone, setting: "inland" },
  settings: catalogue().settings,
  hours: [],
  daily: [],
  forecast: { issued: on, days: [0, 1, 2, 3, 4].map(foretold) },
  usual: [],
  on,
  from: date(-10),
  until: date(10),
  ...changed,
});

const hoursOf = (first: number, last: number): readonly HourlyRecord[] => {
  const [from, to] = [first, last].map((offset) => instantAt(zone, date(offset), 0) / 3_600_000);
  return Array.from({ length: to! - from! }, (_, i) => ({
    hour: (from! + i) as UtcHour,
    mean: celsius(10),
    lowest: celsius(9),
    highest: celsius(11),
    count: 2,
  }));
};

const origins = (changed: Partial<WeatherInput>): readonly string[] =>
  weatherOf(input(changed))!
    .weather.days.filter((day) => day.date >= date(-10) && day.date <= date(10))
    .map(({ origin }) => origin);

const times = (count: number, origin: string): readonly string[] =>
  Array.from({ length: count }, () => origin);

test("a day that only a daily record knows has its low and high on the diurnal curve; logged hours count before it", () => {
  const record = (offset: number): DailyRecord => ({
    ...foretold(offset),
    low: celsius(-3),
    high: celsius(9),
  });
  const { weather, gaps } = weatherOf(
    input({ daily: [-3, -2].map(record), hours: hoursOf(-2, -1), usual: april }),
  )!;
  const dayAt = (offset: number) => weather.days.find((day) => day.date === date(offset))!;
  expect([dayAt(-3).low, dayAt(-3).high, dayAt(-3).origin]).toEqual([-3, 9, "logger"]);
  expect([dayAt(-2).low, dayAt(-2).high]).toEqual([9, 11]);
  const first = weather.calendar.dates.indexOf(date(-3));
  const hours = [...weather.temperature].filter((_, i) => weather.calendar.day[i] === first);
  // Hours are as at their middle, so the turnings themselves are missed by a little.
  expect(Math.abs(Math.min(...hours) + 3)).toBeLessThan(0.3);
  expect(Math.abs(Math.max(...hours) - 9)).toBeLessThan(0.3);
  expect(gaps.every(({ from }) => from >= instantAt(zone, date(-2), 0))).toBe(true);
});

test("a daily record of earlier years is no log of this one", () => {
  const old = { ...foretold(-400), low: celsius(-20), high: celsius(-10) };
  const known = { hours: hoursOf(-3, 0), usual: april };
  expect(weatherOf(input({ ...known, daily: [old] }))).toEqual(weatherOf(input(known)));
});

describe("where neither log nor forecast reaches", () => {
  test("the usual weather of the date stands in, behind and ahead", () => {
    expect(origins({ usual: april })).toEqual([
      ...times(10, "usual"),
      ...times(5, "forecast"),
      ...times(6, "usual"),
    ]);
    const { weather, usualFrom, usualBehind, carriedFrom } = weatherOf(input({ usual: april }))!;
    expect([usualFrom, usualBehind, carriedFrom]).toEqual([date(5), true, null]);
    expect(weather.days.find((day) => day.date === date(-1))).toMatchObject({
      low: 3,
      high: 15,
      origin: "usual",
    });
  });

  test("with no usual weather the known days are carried on", () => {
    expect(origins({})).toEqual([...times(10, "estimated"), ...times(5, "forecast"), ...times(6, "carried")]);
    const { usualFrom, usualBehind, carriedFrom } = weatherOf(input({}))!;
    expect([usualFrom, usualBehind, carriedFrom]).toEqual([null, false, date(5)]);
  });

  test("where the usual months end, the known days are carried on", () => {
    const march = [{ month: 3, low: celsius(-2), high: celsius(6) }];
    // 31 days from 15 March: to 15 April.
    expect(origins({ usual: march })).toEqual([
      ...times(6, "usual"),
      ...times(4, "estimated"),
      ...times(5, "forecast"),
      ...times(6, "carried"),
    ]);
  });

  test("usual weather alone is enough for a plan, and nothing at all is not", () => {
    const { usualFrom } = weatherOf(input({ forecast: null, usual: april }))!;
    expect(usualFrom).toBe(date(1));
    expect(weatherOf(input({ forecast: null }))).toBeNull();
  });

  test("a gap within the log is estimated from the days beside it; what lies before and after the log is as usual", () => {
    const hours = [...hoursOf(-8, -6), ...hoursOf(-4, -2)];
    expect(origins({ usual: april, hours }).slice(0, 10)).toEqual([
      ...times(2, "usual"),
      ...times(2, "logger"),
      ...times(2, "estimated"),
      ...times(2, "logger"),
      ...times(2, "usual"),
    ]);
    expect(weatherOf(input({ usual: april, hours }))!.gaps.map(({ origin }) => origin)).toEqual([
      "estimated",
      "usual",
    ]);
  });

  test("what forecasts of the time said of a day behind comes before the days beside it and the usual weather", () => {
    const hours = [...hoursOf(-8, -6), ...hoursOf(-4, -2)];
    const said = (issued: number, days: readonly number[]): Forecast => ({
      issued: instant(instantAt(zone, date(issued), 6)),
      days: days.map((offset) => ({ ...foretold(offset), low: celsius(issued + 10) })),
    });
    const earlier = [said(-3, [-3, -2, -1, 0]), said(-8, [-6, -5]), said(-20, [-10, -9])];
    const result = weatherOf(input({ usual: april, hours, earlier }))!;
    expect(origins({ usual: april, hours, earlier }).slice(0, 11)).toEqual([
      ...times(2, "usual"),
      ...times(2, "logger"),
      ...times(2, "foretold"),
      ...times(2, "logger"),
      ...times(2, "foretold"),
      "forecast",
    ]);
    expect(result.weather.days.filter(({ origin }) => origin === "foretold").map(({ low }) => low)).toEqual([
      2, 2, 7, 7,
    ]);
    expect(result.gaps.map(({ origin }) => origin)).toEqual(["foretold", "foretold"]);
  });

  test("the first stretch a log leaves open for longer than is bridged", () => {
    const [begin, end] = [-8, -2].map((offset) => instant(instantAt(zone, date(offset), 0))) as [
      Instant,
      Instant,
    ];
    const at = (hours: number): Instant => instant(begin + hours * 3_600_000);
    const whole = hoursOf(-8, -2);
    expect(firstOpen(whole, begin, end)).toBeNull();
    expect(firstOpen([], begin, end)).toBe(begin);
    expect(firstOpen(whole.slice(4), begin, end)).toBe(begin);
    expect(
      firstOpen(
        whole.filter((_, i) => i < 30 || i > 32),
        begin,
        end,
      ),
    ).toBeNull();
    expect(
      firstOpen(
        whole.filter((_, i) => i < 30 || i > 33),
        begin,
        end,
      ),
    ).toBe(at(30));
    expect(firstOpen(whole.slice(0, 40), begin, end)).toBe(at(40));
  });
});
