import { catalogue } from "../../farm/index.ts";
import { instant } from "../../quantity/index.ts";
import { score } from "../../score.ts";
import { scoreHtml, scoreJson, scoreText } from "../../sheet/index.ts";
import { DONE, NEEDS_YOU } from "../context.ts";
import { openFarm } from "../farmFolder.ts";
import { momentGiven } from "../moment.ts";
import { printOrWrite } from "../printOrWrite.ts";
import { readSheets } from "../sheets.ts";
import type { Run } from "../spec.ts";
import { readForecasts, readSensors } from "../store.ts";

/** Prints how earlier sheets did. */
export const run: Run = async (_names, given, context) => {
  const { dir, value: farm, problems } = await openFarm(context);
  if (farm === null || problems.some(({ weight }) => weight === "stops")) return context.refuse(problems);
  const moment = momentGiven(given, farm, context.io.now());
  if ("problem" in moment) return context.refuse([moment.problem]);
  const on = moment.at;
  const [stored, forecasts, issued] = await Promise.all([
    readSensors(dir, on),
    readForecasts(dir, instant(0), on),
    readSheets(dir),
  ]);
  const all = [...problems, ...stored.problems, ...issued.problems];
  if (all.some(({ weight }) => weight === "stops")) return context.refuse(all);
  const { sensors } = stored;
  const { settings } = catalogue();
  const outcome = score({ farm, settings, sensors, forecasts, sheets: issued.sheets, on, problems: all });
  const { html } = given;
  if (typeof html === "string") await printOrWrite(scoreHtml(outcome), html, context);
  if (typeof html !== "string" || typeof given.output === "string")
    await context.result(context.json ? scoreJson(outcome) : scoreText(outcome, context.look));
  return context.strict && all.length > 0 ? NEEDS_YOU : DONE;
};
