import { expect, test } from "vitest";
import type { BroughtOver, MadeFrom } from "../../src/decide/index.ts";
import type { UsualBy } from "../../src/decide/usualWeather.ts";
import {
  celsius,
  centimetre,
  degreeDays,
  type Instant,
  instant,
  type LocalDate,
} from "../../src/quantity/index.ts";
import { madeFrom } from "../../src/sheet/madeFrom.ts";
import { metricSample, sample } from "./sample.ts";

const brought: BroughtOver = {
  crop: "lettuce-mix",
  name: "lettuce mix",
  counted: {
    sum: degreeDays(333),
    method: "double sine",
    base: celsius(5),
    upper: celsius(25),
    cutOff: "horizontal",
    from: "sowing",
    to: centimetre(8),
    at: "here",
  },
  requirement: degreeDays(301.4),
  sowings: { count: 63, least: degreeDays(270), most: degreeDays(320) },
  steady: celsius(15),
};

const last = (outcome: ReturnType<typeof sample>, more: Partial<MadeFrom>): string | undefined =>
  madeFrom(outcome.farm, { ...outcome.madeFrom, ...more }, outcome.on)
    .filter((sentence) => !sentence.startsWith("Odds and ranges"))
    .at(-1)
    ?.replaceAll("\u00a0", " ");

test("a requirement counted another way is told with what it came to, and over what", () => {
  expect(last(metricSample(), { broughtOver: [brought] })).toBe(
    "Lettuce mix: your 333 °C·d (double sine above 5 °C, horizontal cut-off at 25 °C, sowing to 8 cm) came to 301 °C·d from emergence, counted hour by hour over 63 sowing dates of your log (270 °C·d to 320 °C·d).",
  );
  expect(last(sample(), { broughtOver: [{ ...brought, sowings: null }] })).toBe(
    "Lettuce mix: your 599 °F·d (double sine above 41 °F, horizontal cut-off at 77 °F, sowing to 3¼ in) came to 543 °F·d from emergence, counted hour by hour at a steady 59 °F, because the log holds no whole growth of it.",
  );
});

test("days under ten hours are told with their dates, and as no more than that", () => {
  const shortDays = { from: "2025-11-07" as LocalDate, to: "2026-02-03" as LocalDate };
  expect(last(metricSample(), { shortDays })).toBe(
    "Under 10 hours of day from Fri 7 Nov to Tue 3 Feb. Sizes and dates go by light and warmth, not by that line.",
  );
});

test("a forecast is told by who made it, when and how far it reaches", () => {
  const outcome = sample();
  const told = madeFrom(outcome.farm, { ...outcome.madeFrom, forecastSource: "MET Norway" }, outcome.on);
  expect(told.map((line) => line.replaceAll("\u00a0", " ")).find((line) => line.startsWith("Forecast"))).toBe(
    "Forecast of MET Norway issued Sun Apr 19, 6:30 pm, 11 hours old; it ends with Thu Apr 23.",
  );
});

test("a gap in the log is told with what fills it", () => {
  const outcome = sample();
  const [from, to] = [outcome.on - 50 * 3_600_000, outcome.on - 40 * 3_600_000].map(instant) as [
    Instant,
    Instant,
  ];
  const gaps = (["filled", "foretold", "estimated", "usual"] as const).map((origin) => ({
    from,
    to,
    origin,
  }));
  const told = gaps.map((gap) => madeFrom(outcome.farm, { ...outcome.madeFrom, gaps: [gap] }, outcome.on)[1]);
  expect(told.map((line) => line?.replaceAll("\u00a0", " ").split(", ").slice(2).join(", "))).toEqual([
    "filled from the hours beside it.",
    "as forecasts said.",
    "estimated.",
    "usual weather.",
  ]);
});

test("usual weather is told by whose it is", () => {
  const usualFrom = "2026-04-27" as LocalDate;
  const told = (usualBy?: UsualBy) =>
    last(metricSample(), { usualFrom, carriedFrom: null, ...(usualBy === undefined ? {} : { usualBy }) });
  expect(told({ by: "months" })).toBe(
    "From Mon 27 Apr on your usual weather stands in: take those dates as rough.",
  );
  expect(told({ by: "normals" })).toBe(
    "From Mon 27 Apr on the usual weather of normals.csv stands in: take those dates as rough.",
  );
  expect(told({ by: "years", years: 6 })).toBe(
    "From Mon 27 Apr on the mean of 6 of your own years, over a week before and after each date, stands in: take those dates as rough.",
  );
});
