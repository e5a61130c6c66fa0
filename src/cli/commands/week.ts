import { resolve } from "node:path";
import { weekHtml, weekJson, weekText } from "../../sheet/index.ts";
import { week } from "../../week.ts";
import { COULD_NOT, type Context, DONE, NEEDS_YOU } from "../context.ts";
import type { Run } from "../spec.ts";
import { weekInput } from "../weekInput.ts";

/** Writes the page whole or not at all; "-" is standard output. */
async function writePage(page: string, file: string, { io, say }: Context): Promise<void> {
  if (file === "-") return io.stdout.write(page);
  const { default: writeFileAtomic } = await import("write-file-atomic");
  await writeFileAtomic(resolve(io.cwd, file), page);
  say(`Wrote ${file}.\n`);
}

/** Prints the cover schedule, or writes it as a page. */
export const run: Run = async (_names, given, context) => {
  const read = await weekInput(given, context);
  if ("problems" in read) return context.refuse(read.problems);
  const outcome = week(read.input);
  if (outcome.problems.some(({ weight }) => weight === "stops")) return context.refuse(outcome.problems);
  if (typeof given.html === "string") await writePage(weekHtml(outcome), given.html, context);
  else await context.result(context.json ? weekJson(outcome) : weekText(outcome, context.look));
  // With neither a log nor a forecast there is nothing to plan by.
  if (outcome.walks.length === 0) return COULD_NOT;
  const needsYou =
    outcome.problems.length > 0 || outcome.warnings.some(({ severity }) => severity === "danger");
  return context.strict && needsYou ? NEEDS_YOU : DONE;
};
