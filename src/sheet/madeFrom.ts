import type { MadeFrom } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { type Instant, localHour } from "../quantity/index.ts";
import type { Gap } from "../weather/index.ts";
import { clean } from "./clean.ts";
import { doubtfulText } from "./doubtful.ts";
import { age, clock, day, dayOf, list, moment } from "./words.ts";

const SHOWN = 3;

const GAP: Readonly<Record<Gap["origin"], (from: string, to: string) => string>> = {
  filled: (from, to) => `${from} to ${to}, filled from the hours beside it`,
  estimated: (from, to) => `${from} to ${to}, estimated`,
};

/** The end of a gap, without its date when that is the date it began on. */
const until = (farm: Farm, { from, to }: Gap): string =>
  dayOf(farm, from) === dayOf(farm, to)
    ? clock(farm.units, localHour(farm.place.zone, to))
    : moment(farm, to);

function gaps(farm: Farm, all: readonly Gap[]): string[] {
  if (all.length === 0) return [];
  const shown = all.slice(-SHOWN).map((gap) => GAP[gap.origin](moment(farm, gap.from), until(farm, gap)));
  const rest = all.length - shown.length;
  return [
    rest === 0
      ? `The log has gaps: ${shown.join("; ")}.`
      : `The log has ${all.length} gaps; the latest: ${shown.join("; ")}.`,
  ];
}

/** What a sheet was made from and how old that was, as whole sentences. */
export function madeFrom(farm: Farm, from: MadeFrom, on: Instant): readonly string[] {
  const { units } = farm;
  const sensors = list(from.sensors.map(clean));
  return [
    from.latest === null
      ? "No temperature log: the days since sowing are taken to have been like those of the forecast, so sizes and dates are rough; a measured leaf helps."
      : sensors === ""
        ? `Temperature log up to ${moment(farm, from.latest)}, ${age(from.latest, on)}.`
        : `Temperature log (${sensors}) up to ${moment(farm, from.latest)}, ${age(from.latest, on)}.`,
    ...(from.sensors.length > 1
      ? ["Where several sensors hang outside, the median of them counts for every hour."]
      : []),
    ...doubtfulText(farm, from.doubtful),
    ...gaps(farm, from.gaps),
    from.forecastIssued === null
      ? "No forecast: what lies ahead carries on the days before, and frost and heat cannot be foreseen."
      : from.forecastEnds === null
        ? `Forecast issued ${moment(farm, from.forecastIssued)}, ${age(from.forecastIssued, on)}.`
        : `Forecast issued ${moment(farm, from.forecastIssued)}, ${age(from.forecastIssued, on)}; it ends with ${day(units, from.forecastEnds)}.`,
    ...(from.carriedFrom === null
      ? []
      : [
          `From ${day(units, from.carriedFrom)} on the last known days are carried on: take those dates as rough.`,
        ]),
  ];
}
