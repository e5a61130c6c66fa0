import { expect, test } from "vitest";
import { catalogue, smoothedYears, type Usual } from "../../src/farm/index.ts";
import { addDays, celsius, dayOfYear, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, usualOn } from "../../src/weather/index.ts";
import { type City, measuredDays } from "./cities.ts";

/** Days from sowing until a bed is looked at, and days of forecast known after them. [d] */
const BEHIND = 25;
const KNOWN = 5;

/** Base of arugula, as the catalogue has it. [°C] */
const BASE = 4;

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const warmth = (days: readonly { readonly low: number; readonly high: number }[]): number =>
  mean(days.map(({ low, high }) => Math.max(0, (low + high) / 2 - BASE)));

const monthOf = ({ date }: DailyRecord): number => Number(date.slice(5, 7));

/** Logarithms of measured thermal time over what usual weather, and five days carried back, would have had it. */
function errors(city: City): readonly { readonly usual: number; readonly carried: number }[] {
  const days = measuredDays(city);
  const usual = Array.from({ length: 12 }, (_, i): Usual => {
    const own = days.filter((day) => monthOf(day) === i + 1);
    return {
      month: i + 1,
      low: celsius(mean(own.map(({ low }) => low))),
      high: celsius(mean(own.map(({ high }) => high))),
    };
  });
  return days.flatMap(({ date }, at) => {
    const behind = days.slice(at, at + BEHIND);
    const known = days.slice(at + BEHIND, at + BEHIND + KNOWN);
    if (known.length < KNOWN || at % 5 > 0 || !inSeason(date)) return [];
    const taken = behind.map((_, i) => usualOn(usual, addDays(date, i))!);
    const own = warmth(behind);
    return [{ usual: Math.log(own / warmth(taken)), carried: Math.log(own / warmth(known)) }];
  });
}

/** Sowings from the middle of March to the middle of September. */
const inSeason = (date: LocalDate): boolean => dayOfYear(date) >= 70 && dayOfYear(date) <= 260;

const spread = (logs: readonly number[]): number => Math.hypot(...logs) / Math.sqrt(logs.length);

test("25 days measured in Seattle and New York, 2012 to 2015, lie no further from usual weather, and from the days after them, than the settings say", () => {
  const all = (["Seattle", "New York"] as const).flatMap(errors);
  const { usualSpread, carriedSpread } = catalogue().settings;
  const [usual, carried] = [all.map((each) => each.usual), all.map((each) => each.carried)].map(spread);
  expect([all.length, usual!.toFixed(2), carried!.toFixed(2)]).toEqual([310, "0.13", "0.27"]);
  expect(usual!).toBeLessThan(usualSpread);
  expect(carried!).toBeLessThan(carriedSpread);
});

test("the mean of three other years, a week before and after each date, errs no more than the settings say", () => {
  const logs = (["Seattle", "New York"] as const).flatMap((city) => {
    const days = measuredDays(city);
    return days.flatMap(({ date }, at) => {
      const behind = days.slice(at, at + BEHIND);
      if (behind.length < BEHIND || at % 5 > 0 || !inSeason(date)) return [];
      const others = days.filter((day) => day.date.slice(0, 4) !== date.slice(0, 4));
      const usual = smoothedYears(others, 3);
      return [Math.log(warmth(behind) / warmth(behind.map((day) => usualOn(usual, day.date)!)))];
    });
  });
  expect([logs.length, spread(logs).toFixed(2)]).toEqual([310, "0.19"]);
  expect(spread(logs)).toBeLessThan(catalogue().settings.usualSpread);
});
