import { Body, Observer, SearchRiseSet } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import { addDays, dayOfYear, HOUR, type LocalDate, megajoule } from "../../src/quantity/index.ts";
import {
  dayLength,
  declination,
  extraterrestrial,
  fromRange,
  fromSunshine,
  inverseDistance,
  solarNoon,
  sunHeight,
  sunsetAngle,
  sunshineHours,
} from "../../src/weather/index.ts";
import fao from "../published/fao56-examples.json" with { type: "json" };

type Case = (typeof fao.cases)[number];

const example = (number: number): Case => fao.cases.find((each) => each.example === number)!;

/** The value as the paper prints it: rounded to as many digits. */
const printed = (value: number, digits: number): number => Number(value.toFixed(digits));

describe("radiation against the worked examples of FAO Irrigation and Drainage Paper 56", () => {
  test("example 8: the sun's distance, declination and sunset angle and the radiation above the air at 20° S on 3 September", () => {
    const { latitude, dayOfYear: day, published, recomputed } = example(8);
    expect(dayOfYear("2026-09-03")).toBe(day);
    expect(printed(inverseDistance(day), 3)).toBe(published.inverseDistance);
    expect(printed(declination(day), 3)).toBe(published.declination);
    expect(printed(sunsetAngle(latitude, day), 3)).toBe(published.sunsetAngle);
    expect(printed(extraterrestrial(latitude, day), 1)).toBe(published.extraterrestrial);
    expect(inverseDistance(day)).toBeCloseTo(recomputed.inverseDistance!, 6);
    expect(declination(day)).toBeCloseTo(recomputed.declination!, 6);
    expect(sunsetAngle(latitude, day)).toBeCloseTo(recomputed.sunsetAngle!, 6);
    expect(extraterrestrial(latitude, day)).toBeCloseTo(recomputed.extraterrestrial!, 6);
  });

  test("example 9: possible hours of sunshine on the same day", () => {
    const { latitude, dayOfYear: day, published, recomputed } = example(9);
    expect(printed(sunshineHours(latitude, day), 1)).toBe(published.sunshineHours);
    expect(sunshineHours(latitude, day)).toBeCloseTo(recomputed.sunshineHours!, 6);
  });

  test("example 10: radiation from 7.1 h of sunshine in May at 22.9° S, with radiation above the air and possible hours computed", () => {
    const { latitude, dayOfYear: day, sunshine, given, published, recomputed } = example(10);
    const above = extraterrestrial(latitude, day);
    const hours = sunshineHours(latitude, day);
    expect(printed(above, 1)).toBe(given!.extraterrestrial);
    expect(printed(hours, 1)).toBe(given!.sunshineHours);
    expect(above).toBeCloseTo(recomputed.extraterrestrial!, 6);
    expect(hours).toBeCloseTo(recomputed.sunshineHours!, 6);
    expect(printed(fromSunshine(above, sunshine! / hours), 1)).toBe(published.radiation);
    // The month's 220 h over its 31 days, before they were rounded to 7.1 h a day.
    expect(recomputed.sunshineComputed).toBe("220/31");
    expect(fromSunshine(above, 220 / 31 / hours)).toBeCloseTo(recomputed.radiationComputed!, 6);
  });

  test("example 10 from the rounded inputs the paper prints falls 0.05 short of its own result", () => {
    const { sunshine, given, recomputed } = example(10);
    const found = fromSunshine(megajoule(given!.extraterrestrial), sunshine! / given!.sunshineHours!);
    expect(found).toBeCloseTo(recomputed.radiationFromGiven!, 6);
    expect(printed(found, 1)).toBe(14.4);
  });

  test("example 15: radiation in July at 45.72° N from a low of 14.8 and a high of 26.6 °C", () => {
    const { latitude, dayOfYear: day, low, high, given, published, recomputed } = example(15);
    const above = extraterrestrial(latitude, day);
    const from = (extra: number): number => fromRange(megajoule(extra), high! - low!, "inland", 200);
    expect(printed(above, 1)).toBe(given!.extraterrestrial);
    // Recomputed from the place as degrees and minutes, 45°43′.
    expect(extraterrestrial(45 + 43 / 60, day)).toBeCloseTo(recomputed.extraterrestrial!, 6);
    expect(from(given!.extraterrestrial)).toBeCloseTo(recomputed.radiation!, 6);
    expect(printed(from(given!.extraterrestrial), 1)).toBe(published.radiation);
    expect(printed(from(above), 1)).toBe(published.radiation);
  });
});

/** Sunrise to sunset at sea level by a general astronomy library, refraction and the sun's disc included. [h] */
function riseToSet(latitude: number, date: LocalDate): number {
  const observer = new Observer(latitude, 0, 0);
  const rise = SearchRiseSet(Body.Sun, observer, 1, new Date(`${date}T00:00:00Z`), 1);
  const set = rise && SearchRiseSet(Body.Sun, observer, -1, rise, 1);
  if (rise === null || set === null) throw new RangeError(`no sunrise or sunset on ${date} at ${latitude}°`);
  return (set.date.getTime() - rise.date.getTime()) / HOUR;
}

const WEEKS = Array.from({ length: 53 }, (_, week) => addDays("2025-01-01", week * 7));

describe("day length", () => {
  test.each([
    ...[0, 15, 30, 40, 50, -20, -44].map((latitude) => [latitude, 0.1] as const),
    ...[55, 60, -60].map((latitude) => [latitude, 0.14] as const),
  ])("at %i° is within %d h of an astronomy library in every week of a year", (latitude, most) => {
    const off = WEEKS.map((date) => ({
      date,
      hours: Math.abs(dayLength(latitude, dayOfYear(date)) - riseToSet(latitude, date)),
    }));
    expect(off.filter(({ hours }) => hours > most)).toEqual([]);
  });

  test("is nothing in polar night and the whole day in polar day", () => {
    expect(dayLength(75, 355)).toBe(0);
    expect(dayLength(75, 172)).toBe(24);
  });

  test("is longer than the possible hours of sunshine, which know no refraction", () => {
    for (const date of WEEKS) {
      const day = dayOfYear(date);
      expect(dayLength(44, day)).toBeGreaterThan(sunshineHours(44, day));
    }
  });
});

describe("solar noon", () => {
  test("is within two minutes of half-way from sunrise to sunset in every week of a year", () => {
    const observer = new Observer(44, 0, 0);
    for (const date of WEEKS) {
      const rise = SearchRiseSet(Body.Sun, observer, 1, new Date(`${date}T00:00:00Z`), 1)!;
      const set = SearchRiseSet(Body.Sun, observer, -1, rise, 1)!;
      const middle = (rise.date.getTime() + set.date.getTime()) / 2;
      expect(Math.abs(solarNoon(0, date) - middle) / 60_000, date).toBeLessThan(2);
    }
  });

  test("comes an hour later for every 15° to the west", () => {
    const date = "2026-04-20" as LocalDate;
    expect(solarNoon(-75, date) - solarNoon(0, date)).toBe(5 * HOUR);
  });

  test("is when the sun stands highest, and the sun is on the horizon at the sunset angle", () => {
    const day = 110;
    expect(sunHeight(44, day, 0)).toBeGreaterThan(sunHeight(44, day, 0.5));
    expect(sunHeight(44, day, (sunsetAngle(44, day) * 12) / Math.PI)).toBeCloseTo(0, 12);
  });
});
