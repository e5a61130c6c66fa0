import { describe, expect, test } from "vitest";
import { catalogue, type Place } from "../../src/farm/index.ts";
import {
  addDays,
  celsius,
  hourOf,
  instantAt,
  type LocalDate,
  metre,
  metrePerSecond,
  type UtcHour,
  utcHour,
} from "../../src/quantity/index.ts";
import {
  type Forecast,
  type ForetoldHour,
  type HourlyRecord,
  ORIGINS,
  radiationOf,
  throughCloud,
  type WeatherInput,
  weatherOf,
} from "../../src/weather/index.ts";
import published from "../published/cloud-to-radiation.json" with { type: "json" };

const place: Place = {
  latitude: 44.12,
  longitude: -72.84,
  elevation: metre(190),
  zone: "America/New_York",
  setting: "inland",
};
const { settings } = catalogue();
const today = "2026-04-20" as LocalDate;
const on = instantAt(place.zone, today, 7);
const now = hourOf(on);

const hour = (at: number, more: Partial<ForetoldHour> = {}): ForetoldHour => ({
  hour: utcHour(at),
  temperature: celsius(10 + (at % 24) / 2),
  wind: null,
  cloud: null,
  radiation: null,
  rain: null,
  ...more,
});
const hours = (count: number, more: Partial<ForetoldHour> = {}): ForetoldHour[] =>
  Array.from({ length: count }, (_, k) => hour(now + k, more));
const input = (forecast: Forecast, logged: readonly HourlyRecord[] = []): WeatherInput => ({
  place,
  settings,
  hours: logged,
  daily: [],
  forecast,
  usual: [],
  on,
  from: today,
  until: addDays(today, 3),
});
const log = (from: UtcHour, count: number): HourlyRecord[] =>
  Array.from({ length: count }, (_, k) => ({
    hour: utcHour(from + k),
    mean: celsius(3),
    lowest: celsius(2),
    highest: celsius(4),
    count: 4,
  }));

test("hours foretold are the weather from now on, and what was logged stays", () => {
  const foretold = hours(48);
  const logged = log(utcHour(now - 30), 31);
  const { weather } = weatherOf(input({ issued: on, days: [], hours: foretold }, logged))!;
  const at = (hour: number) => hour - weather.first;
  expect(weather.temperature[at(now - 1)]).toBe(3);
  expect(weather.temperature[at(now)]).toBe(foretold[0]!.temperature);
  expect(weather.temperature[at(now + 47)]).toBe(foretold[47]!.temperature);
  expect([now - 1, now, now + 47].map((hour) => ORIGINS[weather.origin[at(hour)]!])).toEqual([
    "logger",
    "forecast",
    "forecast",
  ]);
});

test("hours before now are not used: by then the log knows better", () => {
  const { weather } = weatherOf(
    input({ issued: on, days: [], hours: [hour(now - 3, { temperature: celsius(40) }), ...hours(48)] }),
  )!;
  expect(weather.temperature[now - 3 - weather.first]).toBeLessThan(30);
});

test("today's low and high are from its log and the hours foretold together", () => {
  const logged = log(utcHour(now - 7), 7);
  const { weather } = weatherOf(
    input({ issued: on, days: [], hours: hours(48, { wind: metrePerSecond(6) }) }, logged),
  )!;
  const day = weather.days.find(({ date }) => date === today)!;
  expect(day).toMatchObject({ low: 2, high: 21.5, wind: 6, windKnown: true, origin: "forecast" });
});

describe("wind and cloud of an hour are that hour's", () => {
  const { weather } = weatherOf(
    input({
      issued: on,
      days: [],
      hours: hours(48).map((each, k) => ({
        ...each,
        wind: metrePerSecond(k < 24 ? 4 : 8),
        cloud: k < 24 ? 0 : 1,
      })),
    }),
  )!;
  const at = (k: number) => now + k - weather.first;
  test("wind at the crop is the stated part of it", () => {
    expect(weather.wind[at(3)]).toBeCloseTo(4 * settings.windAtCrop, 12);
    expect(weather.wind[at(30)]).toBeCloseTo(8 * settings.windAtCrop, 12);
  });
  test("the sky is as foretold, by night as by day", () => {
    expect([weather.cloud[at(3)], weather.cloud[at(20)], weather.cloud[at(44)]]).toEqual([0, 0, 1]);
  });
  test("a covered sky lets a quarter of the light through", () => {
    // A day apart the clear sky's light differs by half a percent.
    const ratio = weather.radiation[at(29)]! / weather.radiation[at(5)]!;
    expect(ratio).toBeGreaterThan(0.245);
    expect(ratio).toBeLessThan(0.255);
  });
});

test("radiation that is foretold is used as it is", () => {
  const { weather } = weatherOf(
    input({ issued: on, days: [], hours: hours(30, { radiation: 321 as never, cloud: 1 }) }),
  )!;
  expect(weather.radiation[now + 4 - weather.first]).toBe(321);
});

test.each(published.rows)(
  "under $eighths eighths of cloud $share of a clear sky's radiation comes through (kastenCzeplak1980)",
  ({ eighths, share }) => {
    expect(throughCloud(eighths / 8)).toBeCloseTo(share, 3);
  },
);

describe("a day's cloud", () => {
  const radiation = (cloud?: number) =>
    radiationOf(
      { low: 5, high: 15, sky: "sun", ...(cloud === undefined ? {} : { cloud }) },
      place,
      110,
      settings,
    );
  test("counts before a word for the sky", () => {
    expect(radiation(1)).toBeCloseTo(radiation(0) / 4, 9);
    expect(radiation(1)).toBeLessThan(radiation());
  });
  test("is the night's sky as well", () => {
    const days = [0, 1, 2, 3].map((k) => ({
      date: addDays(today, k),
      low: celsius(5),
      high: celsius(15),
      wind: null,
      sky: null,
      cloud: 0.5,
    }));
    const { weather } = weatherOf(input({ issued: on, days }))!;
    expect(weather.cloud[now + 20 - weather.first]).toBe(0.5);
  });
});
