import { expect, test } from "vitest";
import { sceneOf } from "../../src/decide/index.ts";
import { usualWeather } from "../../src/decide/usualWeather.ts";
import { catalogue, type Usual } from "../../src/farm/index.ts";
import { addDays, celsius, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { type DailyRecord, usualOn } from "../../src/weather/index.ts";
import { farmOf } from "../folder/fixtures.ts";

const months: readonly Usual[] = [{ month: 4, low: celsius(1), high: celsius(11) }];
const normals: readonly Usual[] = [{ month: 4, day: 20, low: celsius(2), high: celsius(12) }];
const own = (first: number, count: number): DailyRecord[] =>
  Array.from({ length: count }, (_, year) =>
    Array.from({ length: 120 }, (_, day) => ({
      date: addDays(`${first + year}-03-01`, day),
      low: celsius(3),
      high: celsius(13),
      wind: null,
      sky: null,
    })),
  ).flat();
const between = ["2026-04-10", "2026-05-10"] as unknown as [LocalDate, LocalDate];

test("five own years that tell of every date make the usual weather", () => {
  const { usual, by } = usualWeather({ normals, usual: months }, own(2020, 5), ...between);
  expect(by).toEqual({ by: "years", years: 5 });
  expect(usualOn(usual, "2026-04-25" as LocalDate)).toEqual({ low: 3, high: 13 });
});

test("four do not, and neither do five that miss a date: the table of normals does then", () => {
  expect(usualWeather({ normals, usual: months }, own(2020, 4), ...between)).toEqual({
    usual: normals,
    by: { by: "normals" },
  });
  const late = ["2026-04-10", "2026-08-10"] as unknown as [LocalDate, LocalDate];
  expect(usualWeather({ normals, usual: months }, own(2020, 5), ...late).by).toEqual({ by: "normals" });
});

test("without a table the months in farm.yaml do, and without them nothing", () => {
  expect(usualWeather({ usual: months }, [], ...between)).toEqual({ usual: months, by: { by: "months" } });
  expect(usualWeather({ usual: [] }, [], ...between)).toEqual({ usual: [], by: null });
});

test("a daily record of earlier years is enough for a plan, and the plan says so", () => {
  const on = instantAt("America/New_York", "2026-04-20", 7);
  const sensors = [{ sensor: "outside", hours: [], days: own(2019, 6) }];
  const asked = { farm: farmOf({}), settings: catalogue().settings, sensors, forecast: null, on, days: 7 };
  const { scene, madeFrom } = sceneOf({ ...asked, problems: [] });
  expect(madeFrom).toMatchObject({ usualBy: { by: "years", years: 6 }, usualFrom: "2026-04-21" });
  expect(scene!.weather.days.at(-1)).toMatchObject({ low: 3, high: 13, origin: "usual" });
});
