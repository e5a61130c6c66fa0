import { beds } from "../../beds.ts";
import { bedsJson, bedsText } from "../../sheet/index.ts";
import { DONE, NEEDS_YOU } from "../context.ts";
import { saveLearned } from "../saveLearned.ts";
import { loadSolver } from "../solver.ts";
import type { Run } from "../spec.ts";
import { weekInput } from "../weekInput.ts";

/** Prints where each succession stands. */
export const run: Run = async (_names, given, context) => {
  const read = await weekInput(given, context);
  if ("problems" in read) return context.refuse(read.problems);
  const outcome = beds(read.input, await loadSolver());
  if (outcome.problems.some(({ weight }) => weight === "stops")) return context.refuse(outcome.problems);
  if (given.saveLearned === true) {
    const saved = await saveLearned(read.dir, outcome, context);
    if (saved !== null) return context.refuse([saved]);
  }
  await context.result(context.json ? bedsJson(outcome) : bedsText(outcome, context.look));
  return context.strict && outcome.problems.length > 0 ? NEEDS_YOU : DONE;
};
