import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cloudOfWords } from "../../src/folder/cloudOfWords.ts";
import { readForecast, serviceForecast, writeForecast } from "../../src/folder/index.ts";
import { HOUR, instantAt } from "../../src/quantity/index.ts";
import pages from "../published/forecast-pages.json" with { type: "json" };
import skyWords from "../published/sky-words.json" with { type: "json" };
import { messages, table } from "./fixtures.ts";

const ZONE = "America/New_York";
const text = (name: string): string =>
  readFileSync(new URL(`../cli/folders/foretold/${name}`, import.meta.url), "utf8");
const read = (name: string) => serviceForecast(name, text(name), ZONE, null);
const iso = (at: number): string => new Date(at).toISOString();

/** A small page of the United States' service with these periods. */
const periods = (...list: readonly object[]) =>
  serviceForecast(
    "page.json",
    JSON.stringify({ properties: { updateTime: "2026-04-20T09:00:00+00:00", periods: list } }),
    ZONE,
    null,
  );

describe("the invented samples have the documented form (nwsApi, metForecastJson)", () => {
  test.each(pages.pages)("$sample", ({ sample, holds }) => {
    const content: unknown = JSON.parse(text(sample));
    const at = (path: string): unknown =>
      path
        .split(".")
        .reduce((value, name) => (value as Record<string, unknown> | undefined)?.[name], content);
    expect(holds.filter((path) => at(path) === undefined)).toEqual([]);
  });
});

describe("days and nights of the National Weather Service", () => {
  const day = {
    startTime: "2026-04-21T06:00:00-04:00",
    endTime: "2026-04-21T18:00:00-04:00",
    isDaytime: true,
    temperature: 68,
    temperatureUnit: "F",
    windSpeed: "5 to 15 mph",
    shortForecast: "Mostly Cloudy",
  };
  const night = {
    startTime: "2026-04-20T18:00:00-04:00",
    endTime: "2026-04-21T06:00:00-04:00",
    isDaytime: false,
    temperature: 41,
    temperatureUnit: "F",
    windSpeed: "5 mph",
    shortForecast: "Clear",
  };
  test("a night's low is that of the morning it ends on", () => {
    const { forecast } = periods(night, day);
    expect(forecast!.days).toEqual([
      { date: "2026-04-21", low: 5, high: 20, wind: 4.4704, sky: null, cloud: 6.5 / 8 },
    ]);
    expect(forecast!.hours).toBeUndefined();
  });
  test("on a first day whose night is over, the following night's low stands in", () => {
    const { forecast } = periods(day, {
      ...night,
      startTime: "2026-04-21T18:00:00-04:00",
      endTime: "2026-04-22T06:00:00-04:00",
    });
    expect(forecast!.days.map(({ date, low }) => [date, low])).toEqual([["2026-04-21", 5]]);
  });
  test("a temperature and a wind with their units within are read as well", () => {
    const { forecast } = periods(night, {
      ...day,
      temperature: { unitCode: "wmoUnit:degC", value: 20 },
      windSpeed: { unitCode: "wmoUnit:km_h-1", value: 36 },
    });
    expect(forecast!.days[0]).toMatchObject({ high: 20, wind: 10 });
  });
});

test("hours of the National Weather Service stay hours", () => {
  const { forecast, form } = read("nws-hourly.json");
  expect(form).toBe("the National Weather Service, hour by hour");
  expect(iso(forecast!.issued)).toBe("2026-04-20T08:41:17.000Z");
  expect(forecast!.hours).toHaveLength(72);
  const [first] = forecast!.hours!;
  expect(iso(first!.hour * HOUR)).toBe("2026-04-20T09:00:00.000Z");
  expect(first!.temperature).toBeCloseTo((38 - 32) / 1.8, 9);
});

test("in a gridpoint's layers equal values that follow each other are one, and rain is spread over its hours", () => {
  const { forecast } = read("nws-gridpoints.json");
  const rain = forecast!.hours!.filter((hour) => (hour.rain ?? 0) > 0);
  expect(rain.map(({ hour }) => iso(hour * HOUR))).toEqual(
    [12, 13, 14, 15, 16, 17].map((hour) => `2026-04-21T${hour}:00:00.000Z`),
  );
  expect(rain.map((hour) => hour.rain)).toEqual(Array.from({ length: 6 }, () => 4.2 / 6));
  expect(forecast!.hours).toHaveLength(150);
});

test("the low and high a gridpoint states count where they go beyond its hours", () => {
  const day = (stated: object) =>
    serviceForecast(
      "page.json",
      JSON.stringify({
        properties: {
          updateTime: "2026-04-20T09:00:00+00:00",
          temperature: {
            uom: "wmoUnit:degC",
            values: [{ validTime: "2026-04-21T04:00:00+00:00/P1D", value: 10 }],
          },
          ...stated,
        },
      }),
      ZONE,
      null,
    ).forecast!.days.map(({ low, high }) => [low, high]);
  const minTemperature = {
    uom: "wmoUnit:degC",
    values: [{ validTime: "2026-04-20T23:00:00+00:00/PT14H", value: 4 }],
  };
  expect(day({})).toEqual([[10, 10]]);
  expect(day({ minTemperature })).toEqual([[4, 10]]);
});

describe("Locationforecast of MET Norway", () => {
  test("an hour is the mean of the moments at its ends; further out stretches of six hours make days", () => {
    const { forecast } = read("met-complete.json");
    const { timeseries } = JSON.parse(text("met-complete.json")).properties;
    const air = (index: number): number => timeseries[index].data.instant.details.air_temperature;
    expect(forecast!.hours).toHaveLength(51);
    expect(forecast!.hours![0]!.temperature).toBe((air(0) + air(1)) / 2);
    expect(forecast!.days.map(({ date }) => date)).toEqual(
      [21, 22, 23, 24, 25, 26, 27].map((day) => `2026-04-${day}`),
    );
  });
  test("the extremes within six hours are in the complete page only, and widen a day's range", () => {
    const range = (name: string) => {
      const { low, high } = read(name).forecast!.days[3]!;
      return high - low;
    };
    expect(range("met-complete.json")).toBeGreaterThan(range("met-compact.json"));
  });
});

test.each(["nws-forecast", "nws-hourly", "nws-gridpoints", "met-compact", "met-complete"])(
  "%s is kept with its hours, its source and when it was made, and read back the same",
  (name) => {
    const { forecast } = read(`${name}.json`);
    const kept = writeForecast(forecast!);
    const again = readForecast(table("forecasts/2026-04-20T0841Z.csv", kept));
    expect(again.problems).toEqual([]);
    expect(again.forecast!.source).toBe(forecast!.source);
    expect(again.forecast!.hours?.length).toBe(forecast!.hours?.length);
    expect(again.forecast!.days.length).toBe(forecast!.days.length);
    expect(writeForecast(again.forecast!)).toBe(kept);
  },
);

test("what the grower says of when it was issued counts before the page", () => {
  const said = instantAt(ZONE, "2026-04-20", 6);
  const { forecast, issuedBy } = serviceForecast("page.json", text("nws-hourly.json"), ZONE, said);
  expect([forecast!.issued, issuedBy]).toEqual([said, "option"]);
});

describe("a page that cannot be used", () => {
  const told = (content: unknown) =>
    messages(serviceForecast("page.json", JSON.stringify(content), ZONE, null));
  test("is told by the places in it, and of a kind only the first", () => {
    const nothing = Array.from({ length: 6 }, () => ({}));
    expect(told({ properties: { updateTime: "2026-04-20T09:00:00Z", periods: nothing } })).toContain(
      'page.json "properties.periods[2].startTime": expected a moment like 2026-04-20T09:00:00Z, received nothing. And 3 more like it. Get the page again; if it stays so, the service has changed its form.',
    );
  });
  test("is none when it lists more than any forecast has", () => {
    const many = Array.from({ length: 2001 }, () => ({}));
    expect(told({ properties: { updateTime: "2026-04-20T09:00:00Z", periods: many } })).toEqual([
      'page.json "properties.periods": expected at most 2000 entries, received a list. Get the page again; if it stays so, the service has changed its form.',
    ]);
  });
  test("is not taken in by names that every object has", () => {
    const page = '{"properties":{"__proto__":{"periods":[]},"constructor":1}}';
    expect(messages(serviceForecast("page.json", page, ZONE, null))).toHaveLength(1);
  });
  test("is told when it lies deeper than any page", () => {
    const deep = `{"properties":${'{"a":'.repeat(50_000)}1${"}".repeat(50_000)}}`;
    expect(messages(serviceForecast("page.json", deep, ZONE, null))).toHaveLength(1);
  });
});

describe("words for the sky lie within the eighths they stand for (nwsSkyWords)", () => {
  test.each(skyWords.rows)("$words", ({ words, from, to }) => {
    for (const each of words) {
      const cloud = cloudOfWords(each)!;
      expect(cloud * 8).toBeGreaterThanOrEqual(from);
      expect(cloud * 8).toBeLessThanOrEqual(to);
    }
  });
  test("rain stands for a covered sky by judgement, and other words for none", () => {
    expect(cloudOfWords("Slight Chance Rain Showers")).toBe(1);
    expect(cloudOfWords("Partly Sunny then Chance Showers")).toBe(0.5);
    expect(cloudOfWords("Breezy")).toBeNull();
  });
});

test("no moment before the page was made is more than three days back", () => {
  const { problems } = periods({
    startTime: "2026-04-10T06:00:00-04:00",
    endTime: "2026-04-10T07:00:00-04:00",
    temperature: 50,
    temperatureUnit: "F",
  });
  expect(messages({ problems })).toEqual([
    'page.json: expected times within 20 days of 2026-04-20T09:00Z, when it was made, received "2026-04-10T10:00:00.000Z". Get the page again; if it stays so, do not use it.',
  ]);
});
