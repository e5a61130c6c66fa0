import { weekJson, weekText } from "../../sheet/index.ts";
import { week } from "../../week.ts";
import { COULD_NOT, DONE, NEEDS_YOU } from "../context.ts";
import type { Run } from "../spec.ts";
import { weekInput } from "../weekInput.ts";

/** Prints the cover schedule. */
export const run: Run = async (_names, given, context) => {
  const read = await weekInput(given, context);
  if ("problems" in read) return context.refuse(read.problems);
  const outcome = week(read.input);
  if (outcome.problems.some(({ weight }) => weight === "stops")) return context.refuse(outcome.problems);
  await context.result(context.json ? weekJson(outcome) : weekText(outcome, context.look));
  // With neither a log nor a forecast there is nothing to plan by.
  if (outcome.walks.length === 0) return COULD_NOT;
  const needsYou =
    outcome.problems.length > 0 || outcome.warnings.some(({ severity }) => severity === "danger");
  return context.strict && needsYou ? NEEDS_YOU : DONE;
};
