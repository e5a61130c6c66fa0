import { climate } from "../cover/index.ts";
import type { Counted, Crop, Farm, Settings } from "../farm/index.ts";
import {
  accumulate,
  countedSums,
  ownRequirementAt,
  ownRequirementFrom,
  type Season,
} from "../growth/index.ts";
import type { Problem } from "../problem/index.ts";
import {
  addDays,
  type Celsius,
  celsius,
  type DegreeDays,
  degreeDays,
  type Instant,
  instantAt,
  localDate,
  startOf,
} from "../quantity/index.ts";
import { type HourlyRecord, weatherOf } from "../weather/index.ts";
import { hourAt } from "./horizon.ts";

/** A requirement that was counted in another way, and what it came to on the model's clock. */
export interface BroughtOver {
  readonly crop: string;
  readonly name: string;
  readonly counted: Counted;
  readonly requirement: DegreeDays;
  /** Sowing dates of the log both were run from; null: none was long enough, and a steady temperature stood in. */
  readonly sowings: { readonly count: number; readonly least: DegreeDays; readonly most: DegreeDays } | null;
  /** That temperature. */
  readonly steady: Celsius;
}

/** Steady temperature for a farm whose log reaches no salad size, as the catalogue's requirements were brought over. [°C] judgement */
const STEADY = celsius(15);
/** Sowings that take longer stand through a winter and say nothing of a season. [d] judgement */
const SEASON = 84;

/** The logged weather with nothing covered, and the hours of its morning walks. */
interface Logged extends Pick<Season, "weather" | "open"> {
  readonly mornings: readonly number[];
}

/** null without at least two days of a log. */
function logged(farm: Farm, hours: readonly HourlyRecord[], on: Instant, settings: Settings): Logged | null {
  const { place, walks } = farm;
  const first = hours[0];
  const last = hours.findLast(({ hour }) => startOf(hour) < on);
  if (first === undefined || last === undefined) return null;
  const from = addDays(localDate(place.zone, startOf(first.hour)), 1);
  const until = addDays(localDate(place.zone, startOf(last.hour)), -1);
  if (from >= until) return null;
  const input = { place, settings, hours, daily: [], forecast: null, usual: [], on, from, until };
  const weather = weatherOf(input)?.weather;
  if (weather === undefined) return null;
  const open = climate(weather, [{ from: 0, to: weather.temperature.length, lying: [] }], settings);
  const mornings = weather.calendar.dates.map((date) =>
    hourAt(weather, instantAt(place.zone, date, walks.morning)),
  );
  return { weather, open, mornings };
}

/** Every sowing date of a stretch of weather in turn. */
function fromEverySowing(
  farm: Farm,
  crop: Crop,
  counted: Counted,
  { weather, open, mornings }: Logged,
  settings: Settings,
): readonly number[] {
  const season = { weather, open, sums: accumulate(crop, open, mornings, settings) };
  const running = countedSums(weather, counted);
  return weather.calendar.dates.flatMap((date) => {
    const sown = hourAt(weather, instantAt(farm.place.zone, date, 12));
    if (sown < 0 || sown >= weather.temperature.length) return [];
    const end = Math.min(running.length, sown + SEASON * 24);
    const own = ownRequirementFrom(crop, counted, season, running.subarray(0, end), sown, settings);
    return own === null ? [] : [own];
  });
}

const unreachable = (crop: Crop, { sum, method, from }: Counted): Problem => ({
  code: "requirement-unreachable",
  weight: "needsYou",
  file: "farm.yaml",
  line: null,
  column: `crops.${crop.id}.counted.sum`,
  expected: "a sum that is reached after emergence",
  received: `${Math.round(sum)} °C·d by ${method} from ${from}`,
  hint: "Check the sum, its base and its unit; until then the catalogue's requirement counts.",
});

/**
 * The farm with every requirement on the model's clock. One a grower stated by another way of counting is run both ways
 * over the farm's own log, from every date a sowing could have been made on, and their mean is taken.
 *
 * @param hours - The log outside, in order of time.
 */
export function ownRequirements(
  farm: Farm,
  hours: readonly HourlyRecord[],
  on: Instant,
  settings: Settings,
): { readonly farm: Farm; readonly brought: readonly BroughtOver[]; readonly problems: readonly Problem[] } {
  const foreign = [...farm.crops.values()].filter(({ counted }) => counted?.at === "here");
  if (foreign.length === 0) return { farm, brought: [], problems: [] };
  const crops = new Map(farm.crops);
  const brought: BroughtOver[] = [];
  const problems: Problem[] = [];
  const log = logged(farm, hours, on, settings);
  for (const crop of foreign) {
    const stated = crop.counted!;
    const own = log === null ? [] : fromEverySowing(farm, crop, stated, log, settings);
    const requirement =
      own.length > 0
        ? degreeDays(own.reduce((sum, each) => sum + each, 0) / own.length)
        : ownRequirementAt(crop, stated, STEADY, settings);
    if (requirement === null) {
      problems.push(unreachable(crop, stated));
      continue;
    }
    const counted: Counted = own.length > 0 ? stated : { ...stated, at: STEADY };
    crops.set(crop.id, { ...crop, requirement, counted });
    const sowings =
      own.length === 0
        ? null
        : {
            count: own.length,
            least: degreeDays(Math.min(...own)),
            most: degreeDays(Math.max(...own)),
          };
    brought.push({ crop: crop.id, name: crop.name, counted, requirement, sowings, steady: STEADY });
  }
  return { farm: { ...farm, crops }, brought, problems };
}
