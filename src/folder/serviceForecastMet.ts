import { HOUR, type Instant } from "../quantity/index.ts";
import type { Step } from "./foretoldSteps.ts";
import type { Json } from "./jsonFile.ts";
import { airOf, cloudOf, rainOf, type ServicePage, windOf } from "./serviceValues.ts";

/** Longest stretch between two of its times. [h] */
const LONGEST = 12;

/** What holds at one moment. */
interface Moment {
  readonly at: Instant;
  readonly air: number;
  readonly wind: number | null;
  readonly cloud: number | null;
  /** Stretches that begin here, as the page sums them up. */
  readonly next: (hours: number) => Json;
}

/** Wind and cloud, air and rain are in these units, or the page is another one's. */
const UNITS: Readonly<Record<string, string>> = {
  air_temperature: "celsius",
  cloud_area_fraction: "%",
  precipitation_amount: "mm",
  wind_speed: "m/s",
};

function momentOf(entry: Json): Moment | null {
  const at = entry.at("time").time("a moment");
  const data = entry.at("data");
  const details = data.at("instant").at("details");
  const air = airOf(details.at("air_temperature"), "C");
  const wind = windOf(details.at("wind_speed"), "m/s");
  const cloud = cloudOf(details.at("cloud_area_fraction"));
  if (at === null || air === null) return null;
  return { at, air, wind, cloud, next: (hours) => data.at(`next_${hours}_hours`).at("details") };
}

/** The stretch from one moment to the next: an hour is the mean of its two ends, a longer one has its own extremes. */
function stepOf(here: Moment, there: Moment): Step {
  const hours = Math.round((there.at - here.at) / HOUR);
  const details = here.next(hours);
  const lowest = details.at("air_temperature_min");
  const highest = details.at("air_temperature_max");
  const ends = [here.air, there.air];
  return {
    from: here.at,
    to: there.at,
    mean: (here.air + there.air) / 2,
    low: Math.min(...ends, (lowest.given ? airOf(lowest, "C") : null) ?? here.air),
    high: Math.max(...ends, (highest.given ? airOf(highest, "C") : null) ?? here.air),
    wind: here.wind,
    cloud: here.cloud,
    radiation: null,
    rain: rainOf(details.at("precipitation_amount")),
  };
}

/**
 * Reads a page of Locationforecast 2.0, compact or complete, of the Norwegian Meteorological Institute: what holds at
 * moments an hour apart for some days, then six hours apart.
 *
 * @source metForecastJson
 */
export function metNorwayPage(root: Json): ServicePage {
  const properties = root.at("properties");
  const meta = properties.at("meta");
  const units = meta.at("units");
  for (const [name, unit] of Object.entries(UNITS)) {
    const stated = units.at(name);
    const told = stated.given ? stated.text(`"${unit}"`) : null;
    if (told !== null && told !== unit)
      stated.fault("json-unit", `"${unit}"`, "The service has changed its units; this page cannot be used.");
  }
  const issued = meta.at("updated_at").time("when it was made,");
  const moments = properties
    .at("timeseries")
    .list("a list of times")
    .map(momentOf)
    .filter((moment) => moment !== null)
    .sort((a, b) => a.at - b.at);
  const steps = moments.slice(0, -1).flatMap((here, index) => {
    const there = moments[index + 1]!;
    const hours = (there.at - here.at) / HOUR;
    return hours >= 1 && hours <= LONGEST ? [stepOf(here, there)] : [];
  });
  return { issued, steps, days: [], form: "hours, then stretches of six hours" };
}
