import { catalogue } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { WeekInput } from "../week.ts";
import { type Context, usage } from "./context.ts";
import { openFarm } from "./farmFolder.ts";
import { knownAt } from "./knownAt.ts";
import { momentGiven } from "./moment.ts";
import type { Given } from "./spec.ts";

const USUAL_DAYS = 7;

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

/** Everything known at the moment asked about: the folder, what sensors had recorded, the newest forecast. */
export async function weekInput(
  given: Given,
  context: Context,
): Promise<{ readonly input: WeekInput } | { readonly problems: readonly Problem[] }> {
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
  const { sensors, forecast, problems: beside } = await knownAt(dir, farm, on);
  const all = [...problems, ...beside];
  if (all.some(({ weight }) => weight === "stops")) return { problems: all };
  return {
    input: {
      farm,
      settings: { ...settings, members: members.number },
      sensors,
      forecast,
      on,
      days: days.number,
      problems: all,
    },
  };
}
