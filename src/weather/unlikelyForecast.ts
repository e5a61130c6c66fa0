import type { UsualMonth } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Celsius, celsius, fahrenheit, HOUR, startOf, toFahrenheit } from "../quantity/index.ts";
import type { Forecast, HourlyRecord } from "./record.ts";
import { usualOn } from "./usualOn.ts";

/** Further from the weather known of the season no forecast of some days lies, unless its unit is another. [°C] judgement */
const FAR = 15;

/** Above it air has hardly ever been measured. [°C] judgement */
const HOTTEST = 50;

/** Hours of a log that tell the season, and how old they may be. [h] */
const WEEK = 7 * 24;
const OLD = 14 * 24;

/** What is known of the season beside a forecast. */
export interface Beside {
  readonly usual: readonly UsualMonth[];
  /** What is measured outside, oldest first. */
  readonly outside: readonly HourlyRecord[];
  readonly units: "US" | "metric";
}

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

const shown = (value: number, units: Beside["units"]): string =>
  units === "US" ? `${Math.round(toFahrenheit(value as Celsius))} °F` : `${Math.round(value)} °C`;

/** The unit that numbers may have been meant in, where another one was taken: the one that brings them near. */
function unitMeant(value: number, near: number, units: Beside["units"]): string {
  const other = units === "US" ? toFahrenheit(celsius(value)) : fahrenheit(value);
  if (Math.abs(other - near) > Math.abs(value - near)) return "Look at its numbers, its unit and its dates.";
  return units === "US"
    ? "Are these °C? Write the unit behind a number, like 17C 5C."
    : "Are these °F? Write the unit behind a number, like 62F 41F.";
}

/**
 * A forecast that looks like a slip of the unit or of the dates: beyond what air ever is, or far from the usual weather of
 * its days and from what was measured in the last days.
 *
 * @param file - Name people know it by.
 */
export function unlikelyForecast(
  file: string,
  { issued, days }: Forecast,
  { usual, outside, units }: Beside,
): readonly Problem[] {
  const problem = (expected: string, received: string, hint: string): readonly Problem[] => [
    {
      code: "forecast-unlikely",
      weight: "needsYou",
      file,
      line: null,
      column: null,
      expected,
      received,
      hint,
    },
  ];
  const hot = days.find(({ high }) => high > HOTTEST);
  if (hot !== undefined)
    return problem(
      `highs up to ${shown(HOTTEST, units)}`,
      `${shown(hot.high, units)} on ${hot.date}`,
      unitMeant(hot.high, 20, units),
    );
  const foretold = mean(days.map(({ low, high }) => (low + high) / 2));
  const usually = mean(
    days.flatMap(({ date }) => {
      const range = usualOn(usual, date);
      return range === null ? [] : [(range.low + range.high) / 2];
    }),
  );
  const measured = mean(
    outside
      .filter(({ hour }) => startOf(hour) <= issued && startOf(hour) > issued - OLD * HOUR)
      .slice(-WEEK)
      .map((hour) => hour.mean),
  );
  const known = [usually, measured].filter((value) => value !== null);
  if (foretold === null || known.length === 0 || known.some((value) => Math.abs(value - foretold) <= FAR))
    return [];
  const near = known[0]!;
  const season = usually === null ? "what the log has of the days before" : "the usual weather of its days";
  return problem(
    `a forecast near ${season}, ${shown(near, units)} in the mean of day and night`,
    shown(foretold, units),
    unitMeant(foretold, near, units),
  );
}
