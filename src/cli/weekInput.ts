import { sensorsAt } from "../decide/index.ts";
import { catalogue, type Farm, type Settings } from "../farm/index.ts";
import { keptWords, OUTSIDE } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, instant, startOf } from "../quantity/index.ts";
import { firstOpen, outside, type SensorRecords } from "../weather/index.ts";
import type { WeekInput } from "../week.ts";
import { type Context, usage } from "./context.ts";
import { openFarm } from "./farmFolder.ts";
import { knownAt } from "./knownAt.ts";
import { momentGiven } from "./moment.ts";
import { newestSheet } from "./sheets.ts";
import type { Given } from "./spec.ts";
import { readForecasts } from "./store.ts";

const USUAL_DAYS = 7;

/** No bed of baby greens stands longer; forecasts say nothing of days further ahead that counts. [d] */
const LOOK_BACK = 240;
const SAID_BEFORE = 7;
/** A sheet older than the longest plan says nothing of the days ahead. [d] */
const COUNTS = 21;
const DAY = 24 * HOUR;

/** A whole number an option gives, between two bounds; what is usual where it is left out. */
function numberGiven(
  text: Given[string],
  option: string,
  [least, most, usual]: readonly [number, number, number],
  what: string,
  hint: string,
): { readonly number: number } | { readonly problem: Problem } {
  if (typeof text !== "string") return { number: usual };
  const number = Number(text);
  if (Number.isInteger(number) && number >= least && number <= most) return { number };
  return { problem: usage(option, `${what} from ${least} to ${most}`, text, hint) };
}

/** Days whose forecasts, and what followed, are learned from. [d] judgement */
const LEARNED = 60;

/** From when on earlier forecasts are wanted: to learn from, and for days behind that the log outside leaves open, doubtful hours too. */
function earlierSince(
  farm: Farm,
  settings: Settings,
  sensors: readonly SensorRecords[],
  on: Instant,
): Instant {
  const begin = instant(on - LOOK_BACK * DAY);
  const recent = sensorsAt(farm, sensors, OUTSIDE).map(({ sensor, hours }) => ({
    sensor,
    hours: hours.filter(({ hour }) => startOf(hour) >= begin),
  }));
  const open = firstOpen(outside(recent, farm.place, settings, farm.keepFlagged, begin).hours, begin, on);
  const learned = on - LEARNED * DAY;
  return instant(open === null ? learned : Math.min(learned, open - SAID_BEFORE * DAY));
}

const keepGiven = ({ keep }: Given): readonly string[] => (Array.isArray(keep) ? keep : []);

/** Everything known at the moment asked about: the folder, what sensors had recorded, the newest forecast. */
export async function weekInput(
  given: Given,
  context: Context,
): Promise<{ readonly dir: string; readonly input: WeekInput } | { readonly problems: readonly Problem[] }> {
  const { dir, value: farm, problems } = await openFarm(context);
  const { settings } = catalogue();
  const days = numberGiven(given.days, "--days", [1, 21, USUAL_DAYS], "a number of days", "Seven is usual.");
  const members = numberGiven(
    given.members,
    "--members",
    [2, 1024, settings.members],
    "a number of weathers",
    `${settings.members} are usual.`,
  );
  if (farm === null) return { problems };
  const moment = momentGiven(given, farm, context.io.now());
  if ("problem" in moment) return { problems: [moment.problem] };
  if ("problem" in days) return { problems: [days.problem] };
  if ("problem" in members) return { problems: [members.problem] };
  const on = moment.at;
  const { kept, problems: unkept } = keptWords("--keep", keepGiven(given), { farm, on, days: days.number });
  if (unkept.length > 0) return { problems: unkept };
  const { sensors, forecast, problems: beside } = await knownAt(dir, farm, on);
  const all = [...problems, ...beside];
  if (all.some(({ weight }) => weight === "stops")) return { problems: all };
  const { sheet, problems: unread } = await newestSheet(dir, on);
  const earlier = await readForecasts(dir, earlierSince(farm, settings, sensors, on), on);
  return {
    dir,
    input: {
      farm,
      settings: { ...settings, ...farm.settings, members: members.number },
      sensors,
      forecast,
      earlier,
      on,
      days: days.number,
      ...(kept.length === 0 ? {} : { keep: kept }),
      ...(sheet === null || on - sheet.on > COUNTS * DAY ? {} : { issued: sheet }),
      ...(given.whatIf === true ? { whatIf: true } : {}),
      problems: [...all, ...unread],
    },
  };
}
