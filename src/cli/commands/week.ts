import type { CrewLanguageCode } from "../../folder/index.ts";
import { crewText, scheduleRows, weekHtml, weekJson, weekText } from "../../sheet/index.ts";
import { week } from "../../week.ts";
import { COULD_NOT, type Context, DONE, NEEDS_YOU } from "../context.ts";
import { csv } from "../csv.ts";
import type { Run } from "../spec.ts";
import { weekInput } from "../weekInput.ts";
import { writeWhole } from "../writeWhole.ts";

/** "-" is standard output. */
async function write(text: string, file: string, { io, say }: Context): Promise<void> {
  if (file === "-") return io.stdout.write(text);
  await writeWhole(io.cwd, file, text);
  say(`Wrote ${file}.\n`);
}

/** Prints the cover schedule, or writes it as a page or a table. */
export const run: Run = async (_names, given, context) => {
  const read = await weekInput(given, context);
  if ("problems" in read) return context.refuse(read.problems);
  const outcome = week(read.input);
  if (outcome.problems.some(({ weight }) => weight === "stops")) return context.refuse(outcome.problems);
  const { html, csv: table, crew } = given;
  if (typeof html === "string") await write(weekHtml(outcome), html, context);
  if (typeof table === "string") await write(csv(scheduleRows(outcome)), table, context);
  if (typeof crew === "string")
    await write(crewText(outcome, (given.language ?? "en") as CrewLanguageCode), crew, context);
  // Beside a page or a table the sheet itself is wanted only where a file is named for it.
  if (![html, table, crew].some((file) => typeof file === "string") || typeof given.output === "string")
    await context.result(context.json ? weekJson(outcome) : weekText(outcome, context.look));
  // With neither a log nor a forecast there is nothing to plan by.
  if (outcome.walks.length === 0) return COULD_NOT;
  const needsYou =
    outcome.problems.length > 0 || outcome.warnings.some(({ severity }) => severity === "danger");
  return context.strict && needsYou ? NEEDS_YOU : DONE;
};
