import { catalogue } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { WeekInput } from "../week.ts";
import { type Context, usage } from "./context.ts";
import { openFarm } from "./farmFolder.ts";
import { knownAt } from "./knownAt.ts";
import { momentGiven } from "./moment.ts";
import type { Given } from "./spec.ts";

const USUAL_DAYS = 7;

function daysGiven(given: Given): { readonly days: number } | { readonly problem: Problem } {
  const text = given.days;
  if (typeof text !== "string") return { days: USUAL_DAYS };
  const days = Number(text);
  if (Number.isInteger(days) && days >= 1 && days <= 21) return { days };
  return { problem: usage("--days", "a number of days from 1 to 21", text, "Seven is usual.") };
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
  return { input: { farm, settings, sensors, forecast, on, days: days.days, problems: all } };
}
