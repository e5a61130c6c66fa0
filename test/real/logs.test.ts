import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { type Shell, shell } from "../cli/shell.ts";
import { readBack } from "../logs/readBack.ts";

/**
 * Weather records from the package vega-datasets, as they were published there: daily lows and highs of Seattle and New
 * York, 2012 to 2015, and hourly normals of Seattle for 2010, from the United States' weather service. The files state
 * no unit; the package's notes say degrees Celsius.
 */
const published = (name: string): string =>
  readFileSync(new URL(`../../node_modules/vega-datasets/data/${name}`, import.meta.url), "utf8");

const farm = (sensors: readonly string[]): string => `name: Little Field
units: metric
place: { latitude: 47.61, longitude: -122.33, elevation: 50 m, zone: America/Los_Angeles }
markets:
  - { id: friday, day: Friday, picks: [{ time: "6:00" }] }
tunnels:
  - { id: T1, length: 15 m, hoops: wire }
sensors: { ${sensors.map((sensor) => `${sensor}: outside`).join(", ")} }
`;

/** A direct reading: cells by the name of their column. */
function rowsOf(text: string): readonly ((name: string) => string)[] {
  const [header, ...lines] = text.trim().split(/\r?\n/u);
  const names = header!.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return (name) => cells[names.indexOf(name)]!;
  });
}

let here: Shell | null = null;
afterEach(() => here?.end());

/** Imports a file into a farm folder of its own. */
async function imported(name: string, text: string, sensors: readonly string[], options: string) {
  here = shell(null);
  writeFileSync(join(here.dir, "farm.yaml"), farm(sensors));
  writeFileSync(join(here.dir, name), text);
  const { code, all } = await here.run(`import ${name} ${options}`);
  return { code, all, stored: await readBack(here.dir) };
}

describe("records of a weather service, read as logs", () => {
  test("1461 days of Seattle: every low and high", async () => {
    const text = published("seattle-weather.csv");
    const { code, all, stored } = await imported("seattle-weather.csv", text, ["outside"], "--unit C");
    expect(code, all).toBe(0);
    const days = rowsOf(text).map((cell) => [
      cell("date"),
      Number(cell("temp_min")),
      Number(cell("temp_max")),
    ]);
    expect(days).toHaveLength(1461);
    expect(stored).toEqual({ hours: {}, days: { outside: days } });
  });

  test("two cities in one file go each to its sensor", async () => {
    const text = published("weather.csv");
    // Its column of places is called "location".
    const { code, all, stored } = await imported("weather.csv", text, ["seattle", "new-york"], "--unit C");
    expect(code, all).toBe(0);
    const daysOf = (city: string) =>
      rowsOf(text)
        .filter((cell) => cell("location") === city)
        .map((cell) => [cell("date"), Number(cell("temp_min")), Number(cell("temp_max"))]);
    expect(stored).toEqual({
      hours: {},
      days: { seattle: daysOf("Seattle"), "new-york": daysOf("New York") },
    });
  });

  test("8759 hours of Seattle's normals: every hour", async () => {
    const text = published("seattle-weather-hourly-normals.csv");
    const { code, all, stored } = await imported("normals.csv", text, ["outside"], "--unit C --zone UTC");
    expect(code, all).toBe(0);
    const hours = rowsOf(text).map((cell) => {
      const value = Number(cell("temperature"));
      return [cell("date").slice(0, 13), value, 1, value, value] as const;
    });
    expect(hours).toHaveLength(8759);
    expect(stored).toEqual({ hours: { outside: hours }, days: {} });
  });

  test.each(["seattle-weather.csv", "weather.csv", "seattle-weather-hourly-normals.csv"])(
    "%s states no unit, and is refused without one",
    async (name) => {
      const sensors = name === "weather.csv" ? ["seattle", "new-york"] : ["outside"];
      const { code, all, stored } = await imported(name, published(name), sensors, "");
      expect([code, stored]).toEqual([2, { hours: {}, days: {} }]);
      expect(all).toContain("Say --unit F or --unit C.");
    },
  );

  test.each(["global-temp.csv", "co2-concentration.csv", "stocks.csv", "sp500.csv", "weekly-weather.json"])(
    "%s is no temperature log, and is refused with any unit",
    async (name) => {
      const { code, stored } = await imported(name, published(name), ["outside"], "--unit C");
      expect([code, stored]).toEqual([2, { hours: {}, days: {} }]);
    },
  );
});
