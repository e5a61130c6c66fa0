import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, instant } from "../quantity/index.ts";
import type { DailyRecord, Forecast } from "../weather/index.ts";
import { shown } from "./faults.ts";
import type { ReadForecast } from "./forecastFile.ts";
import { daysOfSteps, hoursOfSteps } from "./foretoldSteps.ts";
import { type Json, type JsonHints, jsonFile } from "./jsonFile.ts";
import { nwsGridPage } from "./serviceForecastGrid.ts";
import { metNorwayPage } from "./serviceForecastMet.ts";
import { nwsPeriodsPage } from "./serviceForecastNws.ts";
import type { ServicePage } from "./serviceValues.ts";

export const NWS = "the National Weather Service";
/** Its terms ask for the name wherever its data is shown. @source metTerms */
export const MET_NORWAY = "MET Norway";

/** How far from when it was made a forecast may speak of. [h] judgement */
const AHEAD = 20 * 24;
const BEHIND = 3 * 24;

const HINTS: JsonHints = {
  unreadable: "Get the page again, as it is and whole.",
  otherForm: "Get the page again; if it stays so, the service has changed its form.",
};

interface Form {
  readonly source: string;
  /** Is it this form? Told by what only it has. */
  readonly fits: (properties: Json) => boolean;
  readonly read: (root: Json, zone: string) => ServicePage;
}

const FORMS: readonly Form[] = [
  { source: MET_NORWAY, fits: (page) => page.at("timeseries").given, read: metNorwayPage },
  { source: NWS, fits: (page) => page.at("periods").given, read: nwsPeriodsPage },
  { source: NWS, fits: (page) => page.at("temperature").at("values").given, read: nwsGridPage },
];

/** Does a text begin as a service's page does? All are features with properties; other JSON may hold a log. */
export const looksLikePage = (start: string): boolean =>
  /^\uFEFF?\s*\{/u.test(start) && /"(?:Feature|FeatureCollection|properties)"/u.test(start);

/** A page that holds no forecast this program can read. */
function unknownForm(root: Json): null {
  const properties = root.at("properties");
  if (properties.at("forecastGridData").given)
    return properties.fault(
      "forecast-json-addresses",
      "a forecast",
      "This page only lists addresses: open the one behind forecastGridData, save that page and import it.",
    );
  return root.fault(
    "forecast-json-unknown",
    "a forecast of the National Weather Service (forecast, forecast/hourly or gridpoints) or of MET Norway (Locationforecast 2.0)",
    "Save one of these pages, or type the forecast one line a day.",
  );
}

/** Times that cannot belong to a forecast made at a moment. */
function strayTimes(file: string, issued: Instant, times: readonly number[]): readonly Problem[] {
  const stray = times.find((at) => at < issued - BEHIND * HOUR || at > issued + AHEAD * HOUR);
  if (stray === undefined) return [];
  return [
    {
      code: "forecast-times",
      weight: "stops",
      file,
      line: null,
      column: null,
      expected: `times within ${AHEAD / 24} days of ${new Date(issued).toISOString().slice(0, 16)}Z, when it was made`,
      received: shown(new Date(stray).toISOString()),
      hint: "Get the page again; if it stays so, do not use it.",
    },
  ];
}

const empty = (file: string): Problem => ({
  code: "forecast-empty",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected: "at least one hour or one whole day",
  received: "none",
  hint: "Get the page again.",
});

/** Days the page states as such, and for other dates those its steps come to. */
function daysOf(zone: string, { days, steps }: ServicePage): readonly DailyRecord[] {
  const stated = new Set(days.map(({ date }) => date));
  return [...days, ...daysOfSteps(zone, steps).filter(({ date }) => !stated.has(date))].sort((a, b) =>
    a.date < b.date ? -1 : 1,
  );
}

/**
 * Reads a forecast as a service gives it: the page tells which service it is.
 *
 * @param zone - The farm's, by which hours become days.
 * @param said - When it was issued, if the grower says so.
 * @returns With `form`, what of the page was read.
 */
export function serviceForecast(
  file: string,
  text: string,
  zone: string,
  said: Instant | null,
): ReadForecast & { readonly form: string | null } {
  const { root, problems } = jsonFile(file, text, HINTS);
  const none = (more: readonly Problem[] = []): ReadForecast & { readonly form: null } => ({
    forecast: null,
    issuedBy: null,
    problems: [...problems(), ...more],
    form: null,
  });
  if (problems().length > 0) return none();
  const known = FORMS.find(({ fits }) => fits(root.at("properties")));
  if (known === undefined) {
    unknownForm(root);
    return none();
  }
  const page = known.read(root, zone);
  const issued = said ?? page.issued;
  if (problems().length > 0 || issued === null) return none();
  const hours = hoursOfSteps(page.steps);
  const days = daysOf(zone, page);
  if (hours.length === 0 && days.length === 0) return none([empty(file)]);
  const times = [
    ...page.steps.flatMap(({ from, to }) => [from, to]),
    ...days.map(({ date }) => instant(Date.parse(date))),
  ];
  const stray = strayTimes(file, issued, times);
  if (stray.length > 0) return none(stray);
  const forecast: Forecast = {
    issued,
    source: known.source,
    days,
    ...(hours.length === 0 ? {} : { hours }),
  };
  return {
    forecast,
    issuedBy: said === null ? "file" : "option",
    problems: [],
    form: `${known.source}, ${page.form}`,
  };
}
