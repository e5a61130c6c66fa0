import { readFileSync } from "node:fs";
import { addDays, dayOfYear, HOUR, type LocalDate } from "../../src/quantity/index.ts";
import { type Diurnal, dayLength, solarNoon, type Turning } from "../../src/weather/index.ts";
import normals from "../published/hourly-normals.json" with { type: "json" };

const file = new URL(
  "../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv",
  import.meta.url,
);

const { latitude, longitude, hoursBehind, year } = normals;

interface Hour {
  /** Hours since midnight of the first day. */
  readonly time: number;
  readonly temperature: number;
}

const first = `${year}-01-01` as LocalDate;

const readHours = (): readonly Hour[] =>
  readFileSync(file, "utf8")
    .trim()
    .split(/\r?\n/u)
    .slice(1)
    .map((line) => {
      const [date, , temperature] = line.split(",");
      return {
        time: (Date.parse(`${date}Z`) - Date.parse(`${first}T00:00:00Z`)) / HOUR,
        temperature: Number(temperature),
      };
    });

/** How far a curve through each day's low and high lies from the hours it is to stand for. */
export interface Score {
  readonly hours: number;
  /** Root mean square error. [°C] */
  readonly rmse: number;
  /** Mean of curve less normal. [°C] */
  readonly bias: number;
  /** Error of a year's thermal time by a response, as a share of it. [1] */
  readonly thermalTime: number;
}

/** @param pace - What a temperature earns. [°C·d/d] */
export function scoreOf(curve: Diurnal, pace: (temperature: number) => number): Score {
  const hours = readHours();
  const days = Array.from({ length: 365 }, (_, day): Turning => {
    const own = hours
      .filter(({ time }) => Math.floor(time / 24) === day)
      .map(({ temperature }) => temperature);
    const date = addDays(first, day);
    const length = dayLength(latitude, dayOfYear(date));
    const noon = (solarNoon(longitude, date) - Date.parse(`${first}T00:00:00Z`)) / HOUR - hoursBehind;
    return { rise: noon - length / 2, length, low: Math.min(...own), high: Math.max(...own) };
  });
  const errors: number[] = [];
  let [found, wanted] = [0, 0];
  for (const { time, temperature } of hours) {
    const day = Math.floor(time / 24);
    const [before, own, after] = [days[day - 1], days[day]!, days[day + 1]];
    // The first and the last day lack a neighbour.
    if (before === undefined || after === undefined) continue;
    const rebuilt = time < own.rise ? curve(before, own, time) : curve(own, after, time);
    errors.push(rebuilt - temperature);
    found += pace(rebuilt);
    wanted += pace(temperature);
  }
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  return {
    hours: errors.length,
    rmse: Math.sqrt(mean(errors.map((error) => error ** 2))),
    bias: mean(errors),
    thermalTime: found / wanted - 1,
  };
}
