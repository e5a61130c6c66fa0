import {
  type FarmSettings,
  hangingPlaces,
  recalled,
  steadyExample,
  unknownName,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { type Instant, instant, localHour } from "../../quantity/index.ts";
import { unlikelyForecast } from "../../weather/index.ts";
import { DONE, NEEDS_YOU, problemText, usage } from "../context.ts";
import { openSettings } from "../farmFolder.ts";
import { type FetchedBefore, rememberFetched } from "../fetchedMemory.ts";
import { fetchForecast } from "../fetchForecast.ts";
import { issuedGiven } from "../foretold.ts";
import { hangsGiven } from "../hangs.ts";
import { importJson, understandingText } from "../importText.ts";
import { outsideOf } from "../knownAt.ts";
import type { ServiceId } from "../services.ts";
import { sources } from "../sources.ts";
import type { Given, Run } from "../spec.ts";
import { readLogKinds, readSensors } from "../store.ts";
import { storeImport } from "../storeImport.ts";
import { foretoldAttempt, isNoLog, saidOf, type Understanding, understand } from "../understand.ts";
import { undoImport } from "../undoImport.ts";
import { writtenLines } from "../writtenLines.ts";

/** What is wrong with the options themselves. */
function optionFaults(given: Given, farm: FarmSettings, year: number): readonly Problem[] {
  const { place, sensors } = farm;
  const { zone, sensor } = saidOf(given);
  if (zone !== null && Number.isNaN(localHour(zone, instant(0))))
    return [usage("--zone", "a time zone like America/New_York", zone, steadyExample(place.zone, year))];
  if (sensor === null || sensors.has(sensor)) return [];
  const spot = { file: "--sensor", line: null, column: null };
  const problem = unknownName(
    spot,
    sensor,
    "a sensor whose place is known",
    [...sensors.keys()],
    "sensor-unknown",
  );
  const places = hangingPlaces(farm)
    .slice(0, 2)
    .map((place) => `--hangs ${place}`);
  const hint = `${problem.hint} For a new one say where it hangs, ${places.join(" or ")}: it is remembered.`;
  return [{ ...problem, hint }];
}

const NO_FILE: Problem = {
  ...usage("import", "files to take in", "", "Name a log or a forecast, or write - for standard input."),
  received: "none",
};

const nothingIn = (names: readonly string[], passedOver: readonly string[]): Problem => ({
  ...usage(names.join(", "), "a log or a forecast", "", "Name the file itself to hear what is amiss."),
  received: passedOver.length === 0 ? "an empty folder" : "a folder with none",
});

/** Forecasts that look like a slip beside the log and the usual weather. */
async function unlikely(
  dir: string,
  understood: readonly Understanding[],
  farm: FarmSettings,
  now: Instant,
): Promise<readonly Problem[]> {
  const forecasts = understood.filter((one) => one.kind === "forecast");
  if (forecasts.length === 0) return [];
  const outside = outsideOf((await readSensors(dir, now)).sensors, farm);
  return forecasts.flatMap(({ file, forecast }) =>
    unlikelyForecast(file, forecast, { usual: farm.usual, outside, units: farm.units }),
  );
}

/** Takes in temperature logs and forecasts: says what it understands of all of them, then stores all or none. */
export const run: Run = async (names, given, context) => {
  if (given.undo === true) return undoImport(names, given.dryRun === true, context);
  const service = given.fromService as ServiceId | undefined;
  if (names.length === 0 && service === undefined) return context.refuse([NO_FILE]);
  const { dir, value: found, problems: own } = await openSettings(context);
  if (found === null) return context.refuse(own);
  const hung = hangsGiven(given, found);
  if ("problem" in hung) return context.refuse([hung.problem]);
  const { farm, place } = hung;
  const now = context.io.now();
  const said = issuedGiven(given, farm, now);
  const refused = async (problems: readonly Problem[]): Promise<number> => {
    const code = await context.refuse(problems);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  };
  const wrong = optionFaults(given, farm, new Date(now).getUTCFullYear());
  if (wrong.length > 0) return refused(wrong);
  if ("problem" in said) return refused([said.problem]);
  const kinds = await readLogKinds(dir);
  const around = {
    given,
    context,
    farm,
    issued: said.issued,
    recall: (header: string, file: string) => recalled(kinds, header, file),
  };
  const understood: Understanding[] = [];
  const problems: Problem[] = [];
  const passedOver: string[] = [];
  for (const source of await sources(names, context.io.cwd)) {
    const one = await understand(source, around);
    if (source.inFolder && isNoLog(one)) {
      passedOver.push(source.name);
      continue;
    }
    problems.push(...one.problems);
    if (one.understanding !== null) understood.push(one.understanding);
  }
  if (names.length > 0 && understood.length === 0 && problems.length === 0)
    problems.push(nothingIn(names, passedOver));
  let fetched: FetchedBefore | null = null;
  if (service !== undefined) {
    const came = await fetchForecast(service, dir, given, context, farm);
    if (came.kind === "current") context.say(came.words);
    if (came.kind === "none") problems.push(...came.problems);
    if (came.kind === "forecast") {
      const one = foretoldAttempt(service, came.read);
      problems.push(...one.problems);
      if (one.understanding !== null) understood.push(one.understanding);
      fetched = came.remember;
    }
    if (came.kind === "current" && names.length === 0) return DONE;
  }
  problems.push(...(await unlikely(dir, understood, farm, instant(now))));
  const lines = [
    ...understood.map((one) => understandingText(one, farm)),
    ...(passedOver.length > 0 ? [`Passed over as no logs: ${passedOver.join(", ")}.\n`] : []),
  ];
  if (problems.some(({ weight }) => weight === "stops")) {
    if (!context.json) await context.result(lines.join("\n"));
    return refused(problems);
  }
  const dry = given.dryRun === true;
  const stored = dry
    ? { written: [], problems: [] }
    : await storeImport(dir, understood, given, farm, place, instant(now));
  if (stored.problems.length > 0) return context.refuse(stored.problems);
  if (fetched !== null && !dry) await rememberFetched(dir, fetched);
  if (context.json)
    await context.result(importJson(understood, passedOver, dry ? null : stored.written, problems));
  else {
    const end = dry ? ["Nothing stored: --dry-run."] : writtenLines(stored.written);
    await context.result(`${lines.join("\n")}\n${end.join("\n")}\n`);
    if (problems.length > 0) context.io.stderr.write(problemText(problems));
    if (!dry) context.say('See "leafpace week" for the schedule.\n');
  }
  return context.strict && problems.length > 0 ? NEEDS_YOU : DONE;
};
