import type { Outcome } from "../../decide/index.ts";
import type { CrewLanguageCode } from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { instant } from "../../quantity/index.ts";
import { crewText, promiseText, scheduleRows, weekHtml, weekJson, weekText } from "../../sheet/index.ts";
import { week } from "../../week.ts";
import { COULD_NOT, type Context, DONE, NEEDS_YOU } from "../context.ts";
import { csv } from "../csv.ts";
import { printOrWrite } from "../printOrWrite.ts";
import { keepSheet } from "../sheets.ts";
import { loadSolver } from "../solver.ts";
import type { Run } from "../spec.ts";
import { weekInput } from "../weekInput.ts";

/** Keeps the sheet as it is given out. @returns What keeps it from being kept, or null. */
async function issue(dir: string, outcome: Outcome, { io, say }: Context): Promise<Problem | null> {
  const kept = await keepSheet(dir, outcome.on, weekJson(outcome), instant(io.now()));
  if ("problem" in kept) return kept.problem;
  say(kept.isNew ? `Kept as ${kept.file}.\n` : `Kept before, the same, as ${kept.file}.\n`);
  return null;
}

/** Prints the cover schedule, or writes it as a page, a table or a message. */
export const run: Run = async (_names, given, context) => {
  const read = await weekInput(given, context);
  if ("problems" in read) return context.refuse(read.problems);
  const outcome = week(read.input, await loadSolver());
  if (outcome.problems.some(({ weight }) => weight === "stops")) return context.refuse(outcome.problems);
  if (given.issue === true && outcome.walks.length > 0) {
    const problem = await issue(read.dir, outcome, context);
    if (problem !== null) return context.refuse([problem]);
  }
  const { html, csv: table, promise, crew } = given;
  if (typeof html === "string") await printOrWrite(weekHtml(outcome), html, context);
  if (typeof table === "string") await printOrWrite(csv(scheduleRows(outcome)), table, context);
  if (typeof promise === "string")
    await printOrWrite(promiseText(outcome, outcome.since, context.look), promise, context);
  if (typeof crew === "string")
    await printOrWrite(crewText(outcome, (given.language ?? "en") as CrewLanguageCode), crew, context);
  // Beside a page, a table or a message the sheet itself is wanted only where a file is named for it.
  const others = [html, table, promise, crew].some((file) => typeof file === "string");
  if (!others || typeof given.output === "string")
    await context.result(context.json ? weekJson(outcome) : weekText(outcome, context.look));
  // With neither a log nor a forecast there is nothing to plan by.
  if (outcome.walks.length === 0) return COULD_NOT;
  const needsYou =
    outcome.problems.length > 0 || outcome.warnings.some(({ severity }) => severity === "danger");
  return context.strict && needsYou ? NEEDS_YOU : DONE;
};
