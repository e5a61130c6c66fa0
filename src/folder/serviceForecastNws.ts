import { celsius, HOUR, type Instant, localDate, metrePerSecond, milesPerHour } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import { cloudOfWords } from "./cloudOfWords.ts";
import type { Step } from "./foretoldSteps.ts";
import type { Json } from "./jsonFile.ts";
import { airOf, type ServicePage, windOf } from "./serviceValues.ts";

const UNIT_HINT = "The service has changed its units; this page cannot be used.";

/** A temperature as a plain number with its unit beside it, or with its unit within. [°C] */
function airOfPeriod(period: Json): number | null {
  const stated = period.at("temperature");
  const within = stated.at("value");
  if (within.given) {
    const unit = stated.at("unitCode").text("a unit");
    if (unit === null) return null;
    if (/deg[CF]$/u.test(unit)) return airOf(within, unit.endsWith("C") ? "C" : "F");
    return stated.at("unitCode").fault("json-unit", "degrees C or F", UNIT_HINT);
  }
  const unit = period.at("temperatureUnit");
  const letter = unit.text("F or C");
  if (letter === "F" || letter === "C") return airOf(stated, letter);
  return letter === null ? null : unit.fault("json-unit", "F or C", UNIT_HINT);
}

/** "10 mph", "5 to 10 mph", or a number with its unit within; null when it is not given. Of two the middle. [m/s] */
function windOfPeriod(period: Json): number | null {
  const stated = period.at("windSpeed");
  if (!stated.given) return null;
  for (const name of ["value", "maxValue"]) {
    const within = stated.at(name);
    if (within.given) return windOf(within, "km/h");
  }
  const text = stated.text("a wind speed like 10 mph");
  if (text === null) return null;
  const match = /^(\d{1,3})(?: to (\d{1,3}))? (mph|km\/h)$/u.exec(text);
  if (match === null || Number(match[2] ?? match[1]) > 180)
    return stated.fault("json-text", "a wind speed like 10 mph", "Get the page again.");
  const [low, high] = [Number(match[1]), Number(match[2] ?? match[1])];
  return match[3] === "mph" ? milesPerHour((low + high) / 2) : (low + high) / 2 / 3.6;
}

/** One of the periods a page is made of: an hour, or a day or a night. */
interface Period {
  readonly from: Instant;
  readonly to: Instant;
  readonly air: number;
  readonly wind: number | null;
  readonly cloud: number | null;
}

function periodOf(period: Json): Period | null {
  const from = period.at("startTime").time("a moment");
  const to = period.at("endTime").time("a moment");
  const air = airOfPeriod(period);
  const wind = windOfPeriod(period);
  const words = period.at("shortForecast");
  const cloud = words.given ? cloudOfWords(words.text("words for the sky") ?? "") : null;
  return from === null || to === null || air === null || to <= from ? null : { from, to, air, wind, cloud };
}

const stepOf = ({ from, to, air, wind, cloud }: Period): Step => ({
  from,
  to,
  mean: air,
  low: air,
  high: air,
  wind,
  cloud,
  radiation: null,
  rain: null,
});

/**
 * Days from periods of a day and a night in turn: a day has its high, the night that ends on its morning its low. On the
 * first date, whose night is over, the following night's low stands in.
 */
function daysOf(
  zone: string,
  periods: readonly { readonly day: boolean; readonly of: Period }[],
): readonly DailyRecord[] {
  const lows = new Map(
    periods.filter(({ day }) => !day).map(({ of }) => [localDate(zone, of.to), of.air] as const),
  );
  const first = periods.find(({ day }) => !day)?.of.air;
  return periods.flatMap(({ day, of }): readonly DailyRecord[] => {
    const date = localDate(zone, of.from);
    const low = lows.get(date) ?? (of === periods[0]?.of ? first : undefined);
    if (!day || low === undefined) return [];
    const wind = of.wind === null ? null : metrePerSecond(of.wind);
    return [
      {
        date,
        low: celsius(Math.min(low, of.air)),
        high: celsius(of.air),
        wind,
        sky: null,
        ...(of.cloud === null ? {} : { cloud: of.cloud }),
      },
    ];
  });
}

/** Reads a page "forecast" or "forecast/hourly" of the National Weather Service of the United States. @source nwsApi */
export function nwsPeriodsPage(root: Json, zone: string): ServicePage {
  const properties = root.at("properties");
  const updated = properties.at("updateTime");
  const issued = (updated.given ? updated : properties.at("generatedAt")).time("when it was made,");
  const read = properties
    .at("periods")
    .list("a list of periods")
    .flatMap((period) => {
      const of = periodOf(period);
      return of === null ? [] : [{ day: period.at("isDaytime").is(true), of }];
    });
  const hourly = read.every(({ of }) => of.to - of.from <= HOUR);
  return hourly
    ? { issued, steps: read.map(({ of }) => stepOf(of)), days: [], form: "hour by hour" }
    : { issued, steps: [], days: daysOf(zone, read), form: "days and nights" };
}
