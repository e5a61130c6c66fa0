import type { Problem } from "../problem/index.ts";
import { celsius, HOUR, type Instant, instant } from "../quantity/index.ts";
import type { ForetoldHour } from "../weather/index.ts";
import { collapsed } from "./collapsed.ts";
import type { DateOrder } from "./dialect.ts";
import type { Units } from "./faults.ts";
import { AIR_WORDS, cloudIn, type ReadForecast, rainIn, titledIssue } from "./forecastFile.ts";
import { daysOfSteps, hoursOfSteps, type Step } from "./foretoldSteps.ts";
import { type Timed, timesOf } from "./hourTable.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import type { Table } from "./row.ts";
import type { Entry } from "./tableReader.ts";

/** More than the sun gives above the atmosphere. [W/m²] */
const BRIGHTEST = 1400;

/** Rows further apart say nothing of the hours between. [h] */
const APART = 3;

/** What a row says of its moment. */
type Point = Omit<Step, "to" | "low" | "high">;

function radiationIn(entry: Entry): number | null {
  const text = entry.text("radiation");
  if (text === "") return null;
  const value = Number(text);
  if (value >= 0 && value <= BRIGHTEST) return value;
  return entry.fault(
    "radiation",
    "radiation-unreadable",
    `radiation in W/m² from 0 to ${BRIGHTEST}`,
    "Write a plain number, or leave it out.",
  );
}

function pointOf({ entry, at }: Timed): Point | null {
  const air = entry.quantity("temperature", "temperature");
  const wind = entry.text("wind") === "" ? null : entry.quantity("wind", "speed");
  const more = { cloud: cloudIn(entry), radiation: radiationIn(entry), rain: rainIn(entry) };
  if (air === null || at === null) return null;
  if (air < ON_A_FARM.coldest || air > ON_A_FARM.warmest)
    return entry.fault(
      "temperature",
      "temperature-out-of-range",
      AIR_WORDS,
      "Look at the number and its unit.",
    );
  return { from: at, mean: air, wind, ...more };
}

/** Hours from each row to the next: the temperature on a straight line, all else as the row says. */
function stepsOf(points: readonly Point[]): readonly Step[] {
  return points.flatMap((here, index): readonly Step[] => {
    const [before, next] = [points[index - 1], points[index + 1]];
    const ahead = next === undefined ? Number.NaN : (next.from - here.from) / HOUR;
    const behind = before === undefined ? 1 : (here.from - before.from) / HOUR;
    const joined = ahead >= 1 && ahead <= APART;
    const long = Math.floor(joined ? ahead : Math.min(behind, APART));
    return Array.from({ length: Math.max(1, long) }, (_, k): Step => {
      const mean = joined ? here.mean + ((next!.mean - here.mean) * k) / ahead : here.mean;
      const rain = here.rain === null ? null : here.rain / Math.max(1, long);
      const from = instant(here.from + k * HOUR);
      return { ...here, from, to: instant(from + HOUR), mean, low: mean, high: mean, rain };
    });
  });
}

/**
 * Reads a forecast by the hour: time, temperature and, where known, wind, cloud, radiation and rain. A row holds from its
 * moment to the next.
 *
 * @param said - When it was issued, if the grower says so; else a title line counts, else its first hour, or now where that
 * lies ahead.
 */
export function forecastHours(
  table: Table,
  zone: string,
  said: Instant | null,
  now: Instant,
  { dates = null, units = "US" }: { readonly dates?: DateOrder | null; readonly units?: Units } = {},
): ReadForecast {
  const { times, problems, titles } = timesOf(table, zone, dates, units);
  const points = times.map(pointOf).filter((point) => point !== null);
  if (points.length === 0 && problems.length === 0)
    problems.push({
      code: "forecast-empty",
      weight: "stops",
      file: table.file,
      line: null,
      column: null,
      expected: "at least one hour with time and temperature",
      received: "none",
      hint: `Write one line an hour under the header time,temperature (${units === "US" ? "F" : "C"}).`,
    });
  if (problems.some(({ weight }) => weight === "stops"))
    return { forecast: null, issuedBy: null, problems: collapsed(problems) };
  const steps = stepsOf(points);
  const titled = titledIssue(titles, zone);
  const first = points[0]!.from;
  const issued = said ?? titled ?? instant(Math.min(first, now));
  const issuedBy = said !== null ? "option" : titled !== null ? "file" : first <= now ? "firstHour" : "now";
  const forecast = { issued, days: daysOfSteps(zone, steps), hours: hoursOfSteps(steps) };
  return { forecast, issuedBy, problems: collapsed(problems) };
}

/** Hours of a kept forecast, as they were written. */
export function keptHours(table: Table): {
  readonly hours: readonly ForetoldHour[];
  readonly problems: readonly Problem[];
} {
  const { times, problems } = timesOf(table, "UTC", null, "metric");
  const steps = times.map(pointOf).flatMap((point): readonly Step[] => {
    if (point === null) return [];
    const { mean } = point;
    return [{ ...point, to: instant(point.from + HOUR), low: celsius(mean), high: celsius(mean) }];
  });
  return { hours: hoursOfSteps(steps), problems: collapsed(problems) };
}
