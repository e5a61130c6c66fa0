import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { catalogue, type Place } from "../../src/farm/index.ts";
import {
  celsius,
  hourOf,
  type Instant,
  instant,
  metre,
  startOf,
  type UtcHour,
} from "../../src/quantity/index.ts";
import { type Flag, flagsOf, type HourlyRecord, outside } from "../../src/weather/index.ts";

const { settings } = catalogue();
const INLAND: Place = {
  latitude: 44,
  longitude: -72,
  elevation: metre(0),
  zone: "America/New_York",
  setting: "inland",
};

/** Local midnight of an April day. */
const FIRST = hourOf(instant(Date.UTC(2026, 3, 10, 4)));

const record = (hour: number, mean: number, spread = 0.3): HourlyRecord => ({
  hour: (FIRST + hour) as UtcHour,
  mean: celsius(mean),
  lowest: celsius(mean - spread),
  highest: celsius(mean + spread),
  count: 4,
});

/** Three days between 4 and 16 °C, coldest at 5, warmest at 17. */
const spring = (hour: number): number => 10 - 6 * Math.cos((2 * Math.PI * (hour - 5)) / 24);
const days = (value: (hour: number) => number = spring, length = 72): readonly HourlyRecord[] =>
  Array.from({ length }, (_, hour) => record(hour, value(hour)));

/** Flags by hour from the first. */
const flagged = (hours: readonly HourlyRecord[], place = INLAND): Readonly<Record<number, Flag>> =>
  Object.fromEntries([...flagsOf(hours, place, settings)].map(([hour, flag]) => [hour - FIRST, flag]));

const hoursOf = (from: number, to: number, flag: Flag): Readonly<Record<number, Flag>> =>
  Object.fromEntries(Array.from({ length: to - from }, (_, i) => [from + i, flag]));

describe("one sensor in the open", () => {
  test("a plain spring has no flag, nor has a front that brings 12 °C less within an hour", () => {
    expect(flagged(days())).toEqual({});
    expect(flagged(days((hour) => spring(hour) - (hour >= 40 ? 12 : 0)))).toEqual({});
  });

  test("is outside −50 to 50 °C, the range of the Austrian weather service (Gmoser 2002)", () => {
    const hours = days().map((each, i) => (i === 30 ? { ...each, highest: celsius(50.1) } : each));
    expect(flagged(hours)).toEqual({ 30: "range" });
    expect(flagged([record(0, -50.2)])).toEqual({ 0: "range" });
    expect(flagged([record(0, 49.7), record(1, -49.7)])).toEqual({});
  });

  test("has a mean outside its own low and high", () => {
    const hours = days().map((each, i) => (i === 9 ? { ...each, mean: celsius(each.highest + 0.1) } : each));
    expect(flagged(hours)).toEqual({ 9: "inconsistent" });
  });

  test("differs by more than 5 °C from both hours beside it (step: EPA-454/R-99-005, second hand)", () => {
    const at = (change: number) =>
      days((hour) => 10 + (hour % 2 === 0 ? 0.1 : 0) + (hour === 30 ? change : 0));
    expect(flagged(at(5.2))).toEqual({ 30: "spike" });
    expect(flagged(at(-5.2))).toEqual({ 30: "spike" });
    expect(flagged(at(4.9))).toEqual({});
  });

  test("rests within 0.1 °C (Zahumenský 2004) for 12 hours (EPA-454/R-99-005)", () => {
    const rest = (from: number, to: number): readonly HourlyRecord[] =>
      days().map((each, i) => (i >= from && i < to ? record(i, 5, 0) : each));
    expect(flagged(rest(30, 42))).toEqual(hoursOf(30, 42, "stuck"));
    expect(flagged(rest(60, 72))).toEqual(hoursOf(60, 72, "stuck"));
    expect(flagged(rest(30, 41))).toEqual({});
    expect(flagged(rest(30, 42).filter((_, i) => i !== 36))).toEqual({});
    expect(flagged(days(() => 5))).toEqual({});
  });

  test("warms at once after sunrise on a day wider than a clear sky allows: all its sunlit hours", () => {
    // Sunrise is at about 6:10, sunset at 19:30.
    const sunny = (hour: number): number => {
      const clock = hour % 24;
      return hour >= 24 && hour < 48 && clock >= 7 && clock < 19 ? 35 + Math.sin(clock) : spring(hour);
    };
    expect(flagged(days(sunny))).toEqual(hoursOf(30, 44, "sun"));
  });

  test("a wide day without a jump in the morning, or a jump on a narrow day, is weather", () => {
    expect(flagged(days((hour) => 15 - 16 * Math.cos((2 * Math.PI * (hour - 5)) / 24)))).toEqual({});
    expect(flagged(days((hour) => spring(hour) + (hour % 24 >= 7 ? 6 : 0)))).toEqual({});
  });

  test("no day of Seattle or New York in 2012 to 2015 (vega-datasets) has 1.3 times a clear sky's range at a coast", () => {
    const [, ...lines] = readFileSync(
      new URL("../../node_modules/vega-datasets/data/weather.csv", import.meta.url),
      "utf8",
    ).split("\n");
    const ranges = lines.map((line) => line.split(",").map(Number)).map(([, , , high, low]) => high! - low!);
    expect(Math.max(...ranges.filter(Number.isFinite))).toBeLessThan(settings.sunRange * (0.75 / 0.19) ** 2);
  });

  test("no hour of the normals of Seattle (vega-datasets) is flagged, rounded to half degrees or whole degrees Fahrenheit", () => {
    const [, ...lines] = readFileSync(
      new URL("../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv", import.meta.url),
      "utf8",
    )
      .trim()
      .split("\n");
    const seattle: Place = {
      ...INLAND,
      latitude: 47.6,
      longitude: -122.3,
      zone: "America/Los_Angeles",
      setting: "coast",
    };
    const rounded = (step: number, offset = 0) =>
      lines.map((line, i) =>
        record(i, Math.round((Number(line.split(",")[2]) - offset) / step) * step + offset, 0),
      );
    expect(flagged(rounded(0.1), seattle)).toEqual({});
    expect(flagged(rounded(0.5), seattle)).toEqual({});
    expect(flagged(rounded(5 / 9, -160 / 9), seattle)).toEqual({});
  });
});

describe("sensors in the open together", () => {
  const LONG_AGO = instant(0);
  const together = (
    all: Readonly<Record<string, readonly HourlyRecord[]>>,
    kept: readonly string[] = [],
    from: Instant = LONG_AGO,
  ) =>
    outside(
      Object.entries(all).map(([sensor, hours]) => ({ sensor, hours })),
      INLAND,
      settings,
      new Set(kept),
      from,
    );
  const means = (hours: readonly HourlyRecord[]): readonly number[] =>
    hours.map(({ mean }) => Number(mean.toFixed(3)));
  const stuck = days().map((each, i) => (i >= 30 && i < 50 ? record(i, 5, 0) : each));

  test("one sensor's sound hours are its record as it is, its stuck ones are left out and told", () => {
    expect(together({ north: days() })).toEqual({ hours: days(), doubtful: [] });
    expect(together({ north: stuck })).toEqual({
      hours: stuck.filter((_, i) => i < 30 || i >= 50),
      doubtful: [
        {
          sensor: "north",
          flag: "stuck",
          from: startOf((FIRST + 30) as UtcHour),
          to: startOf((FIRST + 50) as UtcHour),
          hours: 20,
          low: 5,
          high: 5,
          used: 0,
        },
      ],
    });
  });

  test("hours the grower keeps count, and are told", () => {
    const { hours, doubtful } = together({ north: stuck }, ["north"]);
    expect([hours, doubtful.map(({ used }) => used)]).toEqual([stuck, [20]]);
  });

  test("hours before the first sowing are not looked at", () => {
    expect(together({ north: stuck }, [], startOf((FIRST + 50) as UtcHour))).toEqual({
      hours: stuck,
      doubtful: [],
    });
  });

  test("of two their mean counts, of three the median, and where one is missing the others", () => {
    const [cool, warm] = [days((hour) => spring(hour) - 1), days((hour) => spring(hour) + 2)];
    expect(means(together({ cool, warm }).hours)).toEqual(means(days((hour) => spring(hour) + 0.5)));
    expect(means(together({ cool, warm, plain: days() }).hours)).toEqual(means(days()));
    expect(means(together({ cool: cool.slice(0, 24), warm }).hours)).toEqual(
      means(days((hour) => spring(hour) + (hour < 24 ? 0.5 : 2))),
    );
  });

  test("a sensor more than 5 °C above another by day is in the sun: the other counts", () => {
    const south = days((hour) => spring(hour) + (hour % 24 >= 12 && hour % 24 < 16 ? 6 : 0));
    const { hours, doubtful } = together({ south, north: days() });
    expect(means(hours)).toEqual(means(days()));
    expect(doubtful.map(({ sensor, flag, hours, used }) => [sensor, flag, hours, used])).toEqual([
      ["south", "sun", 4, 0],
      ["south", "sun", 4, 0],
      ["south", "sun", 4, 0],
    ]);
  });

  test("where the sun shone on all there is, that counts: nothing better is known", () => {
    const south = days((hour) => spring(hour) + (hour % 24 >= 7 && hour % 24 < 19 ? 22 : 0));
    const { hours, doubtful } = together({ south });
    expect(hours).toEqual(south);
    expect(doubtful.map(({ flag, hours, used }) => [flag, hours, used])).toEqual([
      ["sun", 14, 14],
      ["sun", 14, 14],
      ["sun", 14, 14],
    ]);
  });
});
