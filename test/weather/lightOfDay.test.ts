import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catalogue, type Place } from "../../src/farm/index.ts";
import {
  addDays,
  celsius,
  dayOfYear,
  type Instant,
  instantAt,
  type LocalDate,
  megajoule,
  metre,
  type UtcHour,
  type WattPerSquareMetre,
} from "../../src/quantity/index.ts";
import {
  clearSky,
  type DailyRecord,
  extraterrestrial,
  fromSunshine,
  radiationOf,
  sunshineHours,
  type WeatherInput,
  weatherOf,
} from "../../src/weather/index.ts";

const { settings } = catalogue();
const place: Place = {
  latitude: 44,
  longitude: -72,
  elevation: metre(190),
  zone: "America/New_York",
  setting: "inland",
};
const date = "2026-04-20" as LocalDate;
const number = dayOfYear(date);
const mild = { low: 6, high: 18, sky: null } as const;

describe("a day's radiation", () => {
  const of = (more: Partial<Parameters<typeof radiationOf>[0]>): number =>
    radiationOf({ ...mild, ...more }, place, number, settings);

  test("is what was measured, before all else", () => {
    expect(of({ radiation: megajoule(7.3), sunshine: 12, sky: "sun" })).toBe(7.3);
  });

  test("is taken from hours of sunshine before a word for the sky", () => {
    const extra = extraterrestrial(44, number);
    expect(of({ sunshine: 5, sky: "cloud" })).toBe(fromSunshine(extra, 5 / sunshineHours(44, number)));
  });

  test("falls from sun to mixed to cloud, and none passes a clear sky", () => {
    expect(of({ sky: "sun" })).toBeGreaterThan(of({ sky: "mixed" }));
    expect(of({ sky: "mixed" })).toBeGreaterThan(of({ sky: "cloud" }));
    const clear = clearSky(extraterrestrial(44, number), 190);
    for (const day of [{ sky: "sun" as const }, { sunshine: 24 }, { low: -20, high: 45 }]) {
      expect(of(day)).toBeLessThanOrEqual(clear);
    }
  });

  test("grows with the daily range, and crossed values count as none", () => {
    expect(of({ low: 2 })).toBeGreaterThan(of({}));
    expect(of({ low: 20, high: 10 })).toBe(0);
  });
});

const daily = (from: LocalDate, count: number, each: Partial<DailyRecord>): readonly DailyRecord[] =>
  Array.from({ length: count }, (_, i) => ({
    date: addDays(from, i),
    low: celsius(6),
    high: celsius(18),
    wind: null,
    sky: null,
    ...each,
  }));

const inputOf = (where: Place, each: Partial<DailyRecord>, from = date): WeatherInput => {
  const on = instantAt(where.zone, from, 0) as Instant;
  return {
    place: where,
    settings,
    hours: [],
    daily: [],
    forecast: { issued: on, days: daily(from, 5, each) },
    usual: [],
    on,
    from,
    until: addDays(from, 3),
  };
};

describe("over the hours of a day", () => {
  test("measured radiation keeps its sum, and its light integral goes by the factor of the settings", () => {
    const { weather } = weatherOf(inputOf(place, { radiation: megajoule(11) }))!;
    const day = 1;
    let sum = 0;
    weather.calendar.day.forEach((of, i) => {
      if (of === day) sum += weather.radiation[i]! * 0.0036;
    });
    expect(sum).toBeCloseTo(11, 9);
    expect(weather.days[day]!.light).toBeCloseTo(11 * settings.lightPerMegajoule, 9);
    const other = {
      ...inputOf(place, { radiation: megajoule(11) }),
      settings: { ...settings, lightPerMegajoule: 2 },
    };
    expect(weatherOf(other)!.weather.days[day]!.light).toBeCloseTo(22, 9);
  });

  test("a measured hour stands as it is and changes its day's light by as much", () => {
    const on = instantAt(place.zone, addDays(date, 1), 12);
    const noon = Math.floor(instantAt(place.zone, date, 12) / 3_600_000) as UtcHour;
    const log = Array.from({ length: 36 }, (_, i) => ({
      hour: (noon - 12 + i) as UtcHour,
      mean: celsius(12),
      lowest: celsius(8),
      highest: celsius(16),
      count: 4,
    }));
    const base = { ...inputOf(place, {}), on };
    const plain = weatherOf({ ...base, hours: log })!.weather;
    const measured = log.map((record) =>
      record.hour === noon ? { ...record, radiation: 100 as WattPerSquareMetre } : record,
    );
    const seen = weatherOf({ ...base, hours: measured })!.weather;
    const i = noon - seen.first;
    expect(seen.radiation[i]).toBe(100);
    expect(seen.radiation[i - 1]).toBe(plain.radiation[i - 1]);
    const less = (plain.radiation[i]! - 100) * 0.0036 * settings.lightPerMegajoule;
    const day = seen.calendar.day[i]!;
    expect(plain.days[day]!.light - seen.days[day]!.light).toBeCloseTo(less, 9);
  });
});

test("from pole to pole and through the year no number of the weather is none", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -90, max: 90 }),
      fc.integer({ min: 0, max: 364 }),
      fc.constantFrom("goudriaan-van-laar" as const, "parton-logan" as const, "linvill" as const),
      fc.double({ min: -60, max: 60, noNaN: true }),
      fc.double({ min: -60, max: 60, noNaN: true }),
      (latitude, day, curve, low, high) => {
        const where: Place = { ...place, latitude, curve };
        const input = inputOf(where, { low: celsius(low), high: celsius(high) }, addDays("2026-01-01", day));
        const { weather } = weatherOf(input)!;
        for (const values of [weather.temperature, weather.radiation, weather.cloud, weather.wind]) {
          expect(values.every(Number.isFinite)).toBe(true);
        }
        for (const { light, dayLength, sunrise, sunset } of weather.days) {
          expect([light, dayLength, sunrise, sunset].every(Number.isFinite)).toBe(true);
          expect(light).toBeGreaterThanOrEqual(0);
        }
      },
    ),
    { seed: 1, numRuns: 150 },
  );
});
