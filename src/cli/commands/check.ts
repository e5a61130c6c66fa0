import { missingOnFarm } from "../../decide/index.ts";
import { withStandingSowings } from "../../farm/index.ts";
import { instant } from "../../quantity/index.ts";
import { COULD_NOT, DONE, NEEDS_YOU, problemJson, problemText } from "../context.ts";
import { openFarm } from "../farmFolder.ts";
import { knownAt } from "../knownAt.ts";
import { readSheets } from "../sheets.ts";
import type { Run } from "../spec.ts";

const many = (number: number, one: string): string => `${number} ${number === 1 ? one : `${one}s`}`;

/** Prints every problem of the folder. */
export const run: Run = async (_names, _given, context) => {
  const { dir, value: farm, problems: own } = await openFarm(context);
  if (own.some(({ code }) => code === "farm-missing")) return context.refuse(own);
  const now = instant(context.io.now());
  const { problems: beside } = await knownAt(dir, farm, now);
  const { problems: issued } = await readSheets(dir);
  const missing = farm === null ? [] : missingOnFarm({ farm: withStandingSowings(farm, now), on: now });
  const problems = [...own, ...beside, ...issued, ...missing];
  if (context.json) await context.result(problemJson(problems));
  else if (problems.length > 0) await context.result(problemText(problems));
  else if (farm !== null)
    await context.result(
      `${farm.name}: no problems. ${[
        many(farm.tunnels.length, "tunnel"),
        many(farm.successions.length, "succession"),
        many(
          farm.pieces.reduce((sum, { count }) => sum + count, 0),
          "cloth",
        ),
        many(farm.notes.length, "note"),
      ].join(", ")}.\n`,
    );
  if (problems.some(({ weight }) => weight === "stops")) return COULD_NOT;
  return context.strict && problems.length > 0 ? NEEDS_YOU : DONE;
};
