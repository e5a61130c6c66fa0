import type { BroughtOver, MadeFrom } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { type Instant, localHour } from "../quantity/index.ts";
import type { Gap } from "../weather/index.ts";
import { clean } from "./clean.ts";
import { doubtfulText } from "./doubtful.ts";
import { age, capital, clock, day, dayOf, leafLimit, moment, temperature, thermalTime } from "./words.ts";

const SHOWN = 3;

const GAP: Readonly<Record<Gap["origin"], (from: string, to: string) => string>> = {
  usual: (from, to) => `${from} to ${to}, usual weather`,
  filled: (from, to) => `${from} to ${to}, filled from the hours beside it`,
  foretold: (from, to) => `${from} to ${to}, as forecasts said`,
  estimated: (from, to) => `${from} to ${to}, estimated`,
};

/** The end of a gap, without its date when that is the date it began on. */
const until = (farm: Farm, { from, to }: Gap): string =>
  dayOf(farm, from) === dayOf(farm, to)
    ? clock(farm.units, localHour(farm.place.zone, to))
    : moment(farm, to);

function gaps(farm: Farm, all: readonly Gap[]): string[] {
  if (all.length === 0) return [];
  const shown = [...all]
    .sort((a, b) => b.to - b.from - (a.to - a.from) || b.from - a.from)
    .slice(0, SHOWN)
    .sort((a, b) => a.from - b.from)
    .map((gap) => GAP[gap.origin](moment(farm, gap.from), until(farm, gap)));
  const rest = all.length - shown.length;
  return [
    rest === 0
      ? `The log has gaps: ${shown.join("; ")}.`
      : `The log has ${all.length} gaps; the longest: ${shown.join("; ")}.`,
  ];
}

/** What stands in for a log that is not there. */
const noLog = ({ usualBehind }: MadeFrom): string =>
  `No temperature log: the days since sowing are taken to have been ${usualBehind ? "as usual" : "like those of the forecast"}, so sizes and dates are rough; a measured leaf helps.`;

/** The usual weather by where it is from. */
function whoseUsual({ usualBy }: MadeFrom): string {
  if (usualBy?.by === "years")
    return `the mean of ${usualBy.years} of your own years, over a week before and after each date,`;
  return usualBy?.by === "normals" ? "the usual weather of normals.csv" : "your usual weather";
}

/** What stands in for a forecast that is not there. */
const noForecast = ({ usualFrom }: MadeFrom): string =>
  `No forecast: what lies ahead ${usualFrom === null ? "carries on the days before, with wide ranges" : "is the usual weather"}, and frost and heat cannot be foreseen.`;
/** A requirement stated by another way of counting and what it came to on the model's clock. */
function broughtOver({ units }: Farm, { name, counted, requirement, sowings, steady }: BroughtOver): string {
  const { sum, method, base, upper, cutOff, from, to } = counted;
  const above = upper === null ? "" : `, ${cutOff} cut-off at ${temperature(units, upper)}`;
  const how = `${method} above ${temperature(units, base)}${above}, ${from} to ${leafLimit(units, to)}`;
  const over =
    sowings === null
      ? `at a steady ${temperature(units, steady)}, because the log holds no whole growth of it`
      : `over ${sowings.count} sowing dates of your log (${thermalTime(units, sowings.least)} to ${thermalTime(units, sowings.most)})`;
  return `${capital(clean(name))}: your ${thermalTime(units, sum)} (${how}) came to ${thermalTime(units, requirement)} from emergence, counted hour by hour ${over}.`;
}

/** Whose forecast it was, how old and how far it reached. */
function forecast(farm: Farm, from: MadeFrom, issued: Instant, on: Instant): string {
  const whose = from.forecastSource === undefined ? "" : ` of ${clean(from.forecastSource)}`;
  const ends = from.forecastEnds === null ? "" : `; it ends with ${day(farm.units, from.forecastEnds)}`;
  return `Forecast${whose} issued ${moment(farm, issued)}, ${age(issued, on)}${ends}.`;
}

/** What odds and ranges count. */
export const membersTold = ({ members, learnedFrom }: MadeFrom): readonly string[] =>
  members === 0
    ? []
    : [
        `Odds and ranges: ${members} ways the weather may go from here, ${learnedFrom === 0 ? "by the usual error of forecasts" : `by how ${learnedFrom} earlier ${learnedFrom === 1 ? "forecast" : "forecasts"} did here`}, and what is uncertain of each crop and cover.`,
      ];

/** What a sheet was made from and how old that was, as whole sentences. */
export function madeFrom(farm: Farm, from: MadeFrom, on: Instant): readonly string[] {
  const { units } = farm;
  const sensors = list(from.sensors.map(clean));
  return [
    from.latest === null
      ? noLog(from)
      : sensors === ""
        ? `Temperature log up to ${moment(farm, from.latest)}, ${age(from.latest, on)}.`
        : `Temperature log (${sensors}) up to ${moment(farm, from.latest)}, ${age(from.latest, on)}.`,
    ...(from.sensors.length > 1
      ? ["Where several sensors hang outside, the median of them counts for every hour."]
      : []),
    ...doubtfulText(farm, from.doubtful),
    ...gaps(farm, from.gaps),
    ...from.tunnels.map(
      ({ tunnel, latest }) =>
        `${clean(tunnel.name)}: its own logger up to ${moment(farm, latest)}, ${age(latest, on)}.`,
    ),
    from.forecastIssued === null ? noForecast(from) : forecast(farm, from, from.forecastIssued, on),
    ...(from.usualFrom === null || from.forecastIssued === null
      ? []
      : [`From ${day(units, from.usualFrom)} on ${whoseUsual(from)} stands in: take those dates as rough.`]),
    ...(from.carriedFrom === null
      ? []
      : [
          `From ${day(units, from.carriedFrom)} on the last known days are carried on: take those dates as rough.`,
        ]),
    ...from.broughtOver.map((each) => broughtOver(farm, each)),
    ...(from.shortDays === null
      ? []
      : [
          `Under 10 hours of day from ${day(units, from.shortDays.from)} to ${day(units, from.shortDays.to)}. Sizes and dates go by light and warmth, not by that line.`,
        ]),
  ];
}
