import {
  type FarmSettings,
  hangingPlaces,
  type LogKind,
  recalled,
  steadyExample,
  unknownName,
  withKind,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { instant, localHour } from "../../quantity/index.ts";
import { DONE, NEEDS_YOU, problemText, usage } from "../context.ts";
import { doubtfulLines } from "../doubtful.ts";
import { openSettings } from "../farmFolder.ts";
import { hangsGiven } from "../hangs.ts";
import { locked } from "../lock.ts";
import type { Given, Run } from "../spec.ts";
import {
  readLogKinds,
  storeDays,
  storeForecast,
  storeHours,
  storeLogKinds,
  storePlace,
  type Written,
} from "../store.ts";
import { isNoLog, saidOf, sources, type Understanding, understand } from "../understand.ts";
import { forecastText, understoodText } from "../understood.ts";

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

const text = (understanding: Understanding, farm: FarmSettings): string => {
  const look = { zone: farm.place.zone, units: farm.units };
  return understanding.kind === "log"
    ? understoodText(understanding, look, understanding.read) + doubtfulLines(understanding.doubtful, farm)
    : forecastText(
        understanding.file,
        understanding.separator,
        look,
        understanding.forecast,
        understanding.issuedBy,
      );
};

/** Everything understood goes into the store under one lock, and what was said of the logs is remembered. */
async function store(
  dir: string,
  understood: readonly Understanding[],
  kinds: readonly LogKind[],
  given: Given,
  farm: FarmSettings,
  place: readonly [string, string] | null,
): Promise<{ readonly written: readonly Written[]; readonly problems: readonly Problem[] }> {
  const done = await locked(dir, async () => {
    const written: Written[] = [];
    let known = kinds;
    for (const one of understood) {
      if (one.kind === "forecast") {
        written.push(await storeForecast(dir, one.forecast));
        continue;
      }
      for (const { sensor, hours, days } of one.sensors) {
        for (const stored of [await storeHours(dir, sensor, hours), await storeDays(dir, sensor, days)]) {
          if (stored.problems.length > 0) return { written, problems: stored.problems };
          written.push(...stored.written);
        }
      }
      known = withKind(known, saidOf(given), one.read.header, one.file);
    }
    if (known !== kinds) written.push(await storeLogKinds(dir, known));
    if (place !== null) written.push(await storePlace(dir, farm, place));
    return { written, problems: [] };
  });
  return "value" in done ? done.value : { written: [], problems: [done.problem] };
}

const WRITTEN: Readonly<Record<Written["change"], string>> = {
  new: "written",
  changed: "brought up to date",
  same: "holds all of it already; nothing changed",
};

const json = (
  understood: readonly Understanding[],
  passedOver: readonly string[],
  written: readonly Written[] | null,
  problems: readonly Problem[],
) =>
  `${JSON.stringify(
    {
      format: "leafpace import",
      version: 2,
      files: understood.map((one) => {
        if (one.kind === "forecast") return one;
        const { sensors, ...rest } = one;
        return {
          ...rest,
          sensors: sensors.map(({ sensor, hours, days }) => ({
            sensor,
            hours: hours.length,
            days: days.length,
          })),
        };
      }),
      passedOver,
      written,
      problems,
    },
    null,
    2,
  )}\n`;

/** Takes in temperature logs and forecasts: says what it understands of all of them, then stores all or none. */
export const run: Run = async (names, given, context) => {
  const { dir, value: found, problems: own } = await openSettings(context);
  if (found === null) return context.refuse(own);
  const hung = hangsGiven(given, found);
  if ("problem" in hung) return context.refuse([hung.problem]);
  const { farm, place } = hung;
  const wrong = optionFaults(given, farm, new Date(context.io.now()).getUTCFullYear());
  if (wrong.length > 0) {
    const code = await context.refuse(wrong);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  }
  const kinds = await readLogKinds(dir);
  const around = {
    given,
    context,
    farm,
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
  if (understood.length === 0 && problems.length === 0)
    problems.push({
      ...usage(names.join(", "), "a log or a forecast", "", "Name the file itself to hear what is amiss."),
      received: passedOver.length === 0 ? "an empty folder" : "a folder with none",
    });
  const stops = problems.some(({ weight }) => weight === "stops");
  const lines = [
    ...understood.map((one) => text(one, farm)),
    ...(passedOver.length > 0 ? [`Passed over as no logs: ${passedOver.join(", ")}.\n`] : []),
  ];
  if (stops) {
    if (!context.json) await context.result(lines.join("\n"));
    const code = await context.refuse(problems);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  }
  const dry = given.dryRun === true;
  const stored = dry
    ? { written: [], problems: [] }
    : await store(dir, understood, kinds, given, farm, place);
  if (stored.problems.length > 0) return context.refuse(stored.problems);
  if (context.json) await context.result(json(understood, passedOver, dry ? null : stored.written, problems));
  else {
    const end = dry
      ? ["Nothing stored: --dry-run."]
      : stored.written.map(({ file, change }) => `${file} ${WRITTEN[change]}.`);
    await context.result(`${lines.join("\n")}\n${end.join("\n")}\n`);
    if (problems.length > 0) context.io.stderr.write(problemText(problems));
    if (!dry) context.say('See "leafpace week" for the schedule.\n');
  }
  return context.strict && problems.length > 0 ? NEEDS_YOU : DONE;
};
