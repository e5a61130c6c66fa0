import { sensorsAt } from "../decide/index.ts";
import { catalogue, type Farm, type Settings } from "../farm/index.ts";
import { OUTSIDE } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, instant, startOf } from "../quantity/index.ts";
import { firstOpen, outside, type SensorRecords } from "../weather/index.ts";
import type { WeekInput } from "../week.ts";
import { type Context, usage } from "./context.ts";
import { openFarm } from "./farmFolder.ts";
import { knownAt } from "./knownAt.ts";
import { momentGiven } from "./moment.ts";
import type { Given } from "./spec.ts";
import { readForecasts } from "./store.ts";

const USUAL_DAYS = 7;

/** No bed of baby greens stands longer; forecasts say nothing of days further ahead that counts. [d] */
const LOOK_BACK = 240;
const SAID_BEFORE = 7;
const DAY = 24 * HOUR;

function daysGiven(given: Given): { readonly days: number } | { readonly problem: Problem } {
  const text = given.days;
  if (typeof text !== "string") return { days: USUAL_DAYS };
  const days = Number(text);
  if (Number.isInteger(days) && days >= 1 && days <= 21) return { days };
  return { problem: usage("--days", "a number of days from 1 to 21", text, "Seven is usual.") };
}

/** From when on forecasts may tell of days behind that the log outside leaves open, doubtful hours too; null: it leaves none. */
function openSince(
  farm: Farm,
  settings: Settings,
  sensors: readonly SensorRecords[],
  on: Instant,
): Instant | null {
  const begin = instant(on - LOOK_BACK * DAY);
  const recent = sensorsAt(farm, sensors, OUTSIDE).map(({ sensor, hours }) => ({
    sensor,
    hours: hours.filter(({ hour }) => startOf(hour) >= begin),
  }));
  const open = firstOpen(outside(recent, farm.place, settings, farm.keepFlagged, begin).hours, begin, on);
  return open === null ? null : instant(open - SAID_BEFORE * DAY);
}

/** Everything known at the moment asked about: the folder, what sensors had recorded, the newest forecast. */
export async function weekInput(
  given: Given,
  context: Context,
): Promise<{ readonly input: WeekInput } | { readonly problems: readonly Problem[] }> {
  const { dir, value: farm, problems } = await openFarm(context);
  const days = daysGiven(given);
  if (farm === null) return { problems };
  const moment = momentGiven(given, farm, context.io.now());
  if ("problem" in moment) return { problems: [moment.problem] };
  if ("problem" in days) return { problems: [days.problem] };
  const on = moment.at;
  const { sensors, forecast, problems: beside } = await knownAt(dir, farm, on);
  const all = [...problems, ...beside];
  if (all.some(({ weight }) => weight === "stops")) return { problems: all };
  const { settings } = catalogue();
  const since = openSince(farm, settings, sensors, on);
  const earlier = since === null ? [] : await readForecasts(dir, since, on);
  return {
    input: { farm, settings, sensors, forecast, earlier, on, days: days.days, problems: all },
  };
}
