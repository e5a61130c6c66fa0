import { celsius, HOUR, type Instant, instant, type LocalDate, localDate } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import { daysOfSteps, type Step } from "./foretoldSteps.ts";
import type { Json } from "./jsonFile.ts";
import { airOf, cloudOf, rainOf, type ServicePage, windOf } from "./serviceValues.ts";

/** An hour count in "2026-04-20T09:00:00+00:00/P1DT6H". */
const SPAN = /^(.+)\/P(?:(\d{1,2})D)?(?:T(?:(\d{1,3})H)?(?:\d+M)?)?$/u;

/** No value holds longer. [h] */
const LONGEST = 24 * 14;

interface Span {
  readonly from: Instant;
  readonly hours: number;
  readonly value: number;
}

/** The values of one layer with the stretch each holds for; none where the layer is left out. */
function layer(json: Json, units: Readonly<Record<string, (value: Json) => number | null>>): readonly Span[] {
  if (!json.given) return [];
  const stated = json.at("uom");
  const unit = stated.text("a unit");
  const read = unit === null ? undefined : units[unit.replace(/^(?:wmoUnit|unit):/u, "")];
  if (read === undefined) {
    if (unit !== null)
      stated.fault(
        "json-unit",
        Object.keys(units).join(" or "),
        "The service has changed its units; this page cannot be used.",
      );
    return [];
  }
  return json
    .at("values")
    .list("a list of values")
    .flatMap((entry) => {
      const valid = entry.at("validTime");
      const match = SPAN.exec(valid.text("a stretch like 2026-04-20T09:00:00+00:00/PT3H") ?? "");
      const from = match === null ? Number.NaN : Date.parse(match[1]!);
      const hours = Number(match?.[2] ?? 0) * 24 + Number(match?.[3] ?? 0);
      if (Number.isNaN(from) || hours > LONGEST) {
        if (valid.given)
          valid.fault("json-time", "a stretch like 2026-04-20T09:00:00+00:00/PT3H", "Get the page again.");
        return [];
      }
      const value = entry.at("value").given ? read(entry.at("value")) : null;
      return value === null || hours < 1 ? [] : [{ from: instant(from), hours, value }];
    });
}

/** By the hour a stretch begins in and all that follow. */
function byHour(spans: readonly Span[]): ReadonlyMap<number, number> {
  const hours = new Map<number, number>();
  for (const { from, hours: long, value } of spans)
    for (let k = 0; k < long; k++) hours.set(Math.floor(from / HOUR) + k, value);
  return hours;
}

const AIR = {
  degC: (value: Json): number | null => airOf(value, "C"),
  degF: (value: Json): number | null => airOf(value, "F"),
};
const SPEED = {
  "km_h-1": (value: Json): number | null => windOf(value, "km/h"),
  "m_s-1": (value: Json): number | null => windOf(value, "m/s"),
};

/** By the date the middle of its stretch lies in: a night's low is that of the morning it ends on. */
const byDate = (zone: string, spans: readonly Span[]): ReadonlyMap<LocalDate, number> =>
  new Map(
    spans.map(({ from, hours, value }) => [localDate(zone, instant(from + (hours / 2) * HOUR)), value]),
  );

/** Days the hours come to, with the low and high the page states for them where it does. */
function statedDays(zone: string, steps: readonly Step[], page: Json): readonly DailyRecord[] {
  const lows = byDate(zone, layer(page.at("minTemperature"), AIR));
  const highs = byDate(zone, layer(page.at("maxTemperature"), AIR));
  return daysOfSteps(zone, steps).map((day) => ({
    ...day,
    low: celsius(Math.min(day.low, lows.get(day.date) ?? day.low)),
    high: celsius(Math.max(day.high, highs.get(day.date) ?? day.high)),
  }));
}

/**
 * Reads a page "gridpoints" of the National Weather Service of the United States: layers of values by the hour, where equal
 * ones that follow each other are one.
 *
 * @source nwsApi
 */
export function nwsGridPage(root: Json, zone: string): ServicePage {
  const page = root.at("properties");
  const issued = page.at("updateTime").time("when it was made,");
  const air = byHour(layer(page.at("temperature"), AIR));
  const wind = byHour(layer(page.at("windSpeed"), SPEED));
  const cloud = byHour(layer(page.at("skyCover"), { percent: cloudOf }));
  const wet = layer(page.at("quantitativePrecipitation"), { mm: rainOf });
  const rain = byHour(wet.map((span) => ({ ...span, value: span.value / span.hours })));
  const steps = [...air].map(
    ([hour, mean]): Step => ({
      from: instant(hour * HOUR),
      to: instant((hour + 1) * HOUR),
      mean,
      low: mean,
      high: mean,
      wind: wind.get(hour) ?? null,
      cloud: cloud.get(hour) ?? null,
      radiation: null,
      rain: rain.get(hour) ?? null,
    }),
  );
  return { issued, steps, days: statedDays(zone, steps, page), form: "hour by hour" };
}
