import { basename, resolve } from "node:path";
import {
  type DateOrder,
  type FarmSettings,
  type IssuedBy,
  type StoredHour,
  steadyExample,
  temperatureLog,
  type Understood,
  unknownName,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { type Instant, instant, localHour } from "../../quantity/index.ts";
import type { Forecast } from "../../weather/index.ts";
import type { Written } from "../batch.ts";
import { type Context, DONE, NEEDS_YOU, problemText, usage } from "../context.ts";
import { openSettings } from "../farmFolder.ts";
import { type FetchedBefore, rememberFetched } from "../fetchedMemory.ts";
import { fetchForecast } from "../fetchForecast.ts";
import {
  type Foretold,
  foretoldByPage,
  foretoldByTable,
  issuedGiven,
  pageText,
  type ReadFrom,
} from "../foretold.ts";
import { recordImport, type Stored } from "../recordImport.ts";
import type { ServiceId } from "../services.ts";
import type { Given, Run } from "../spec.ts";
import { storeForecast, storeHours } from "../store.ts";
import { heldTable, type OpenTable, openTable } from "../table.ts";
import { forecastText, understoodText } from "../understood.ts";
import { undoImport } from "../undoImport.ts";
import { writtenLines } from "../writtenLines.ts";

/** One file as understood, ready to be stored. */
type Understanding = { readonly file: string } & (
  | {
      readonly kind: "log";
      readonly separator: string;
      readonly sensor: string;
      readonly read: Understood;
      readonly hours: readonly StoredHour[];
    }
  | {
      readonly kind: "forecast";
      readonly from: ReadFrom;
      readonly forecast: Forecast;
      readonly issuedBy: IssuedBy;
    }
);

interface Attempt {
  readonly understanding: Understanding | null;
  readonly problems: readonly Problem[];
}

/** The sensor a log belongs to: the one named, else the only one there is. */
function sensorOf(
  given: Given,
  { sensors }: FarmSettings,
): { readonly sensor: string } | { readonly problem: Problem } {
  const names = [...sensors.keys()];
  const asked = given.sensor;
  if (typeof asked === "string") {
    if (sensors.has(asked)) return { sensor: asked };
    const spot = { file: "--sensor", line: null, column: null };
    const problem = unknownName(spot, asked, "a sensor named in farm.yaml", names, "sensor-unknown");
    const hint = problem.hint.startsWith("Did")
      ? problem.hint
      : `${problem.hint} Add it under "sensors" in farm.yaml.`;
    return { problem: { ...problem, hint } };
  }
  if (names.length === 1) return { sensor: names[0]! };
  return {
    problem: {
      ...usage("--sensor", "the sensor the log belongs to", "", `Say one of ${names.join(", ")}.`),
      received: "nothing",
    },
  };
}

async function understandLog(
  name: string,
  table: OpenTable,
  given: Given,
  farm: FarmSettings,
): Promise<Attempt> {
  const sensor = sensorOf(given, farm);
  if ("problem" in sensor) return { understanding: null, problems: [sensor.problem] };
  const zone = given.zone;
  const log = temperatureLog({
    file: name,
    zone: typeof zone === "string" ? zone : farm.place.zone,
    zoneBy: typeof zone === "string" ? "option" : "farm",
    unit: (given.unit as "C" | "F" | undefined) ?? null,
    dates: (given.dates as DateOrder | undefined) ?? null,
    column: typeof given.column === "string" ? given.column : null,
    decimalComma: table.separator !== ",",
    units: farm.units,
  });
  const cut: Problem[] = [];
  for await (const row of table.rows(cut)) log.feed(row);
  const { understood, hours, problems } = log.finish();
  if (understood === null || cut.length > 0) return { understanding: null, problems: [...problems, ...cut] };
  const found = { file: name, separator: table.separator, kind: "log" as const, sensor: sensor.sensor };
  return { understanding: { ...found, read: understood, hours }, problems };
}

const foretoldAttempt = (file: string, { forecast, issuedBy, problems, from }: Foretold): Attempt =>
  forecast === null || issuedBy === null
    ? { understanding: null, problems }
    : { understanding: { file, kind: "forecast", from, forecast, issuedBy }, problems };

async function understand(
  path: string,
  given: Given,
  context: Context,
  farm: FarmSettings,
): Promise<Attempt> {
  const name = path === "-" ? "standard input" : basename(path);
  const said = issuedGiven(given, farm);
  if ("problem" in said) return { understanding: null, problems: [said.problem] };
  const held = path === "-" ? await context.io.input() : null;
  const where = resolve(context.io.cwd, path);
  const page = await pageText(held, where, name);
  if (page !== null)
    return "problem" in page
      ? { understanding: null, problems: [page.problem] }
      : foretoldAttempt(name, foretoldByPage(name, page.text, said.issued, farm));
  const { table, problem } = held === null ? await openTable(where, path) : heldTable(held, name);
  if (table === null) return { understanding: null, problems: [problem] };
  const now = instant(context.io.now());
  const foretold = await foretoldByTable(name, table, said.issued, now, given, farm);
  return foretold === null ? understandLog(name, table, given, farm) : foretoldAttempt(name, foretold);
}

const text = (understanding: Understanding, farm: FarmSettings): string => {
  const look = { zone: farm.place.zone, units: farm.units };
  const { file } = understanding;
  return understanding.kind === "log"
    ? understoodText(file, understanding.sensor, understanding.separator, look, understanding.read)
    : forecastText(file, understanding.from, look, understanding.forecast, understanding.issuedBy);
};

const store = (dir: string, understood: readonly Understanding[], at: Instant): Promise<Stored> =>
  recordImport(
    dir,
    understood.map(({ file }) => file),
    at,
    async (batch) => {
      const written: Written[] = [];
      for (const one of understood) {
        const stored = await (one.kind === "forecast"
          ? storeForecast(batch, one.forecast)
          : storeHours(batch, one.sensor, one.hours));
        if (stored.problems.length > 0) return { written: [], problems: stored.problems };
        written.push(...stored.written);
      }
      return { written, problems: [] };
    },
  );

const json = (
  understood: readonly Understanding[],
  written: readonly Written[] | null,
  problems: readonly Problem[],
) =>
  `${JSON.stringify(
    {
      format: "leafpace import",
      version: 1,
      files: understood.map((one) => {
        const { hours, ...rest } = one as Understanding & { readonly hours?: readonly StoredHour[] };
        return hours === undefined ? rest : { ...rest, hours: hours.length };
      }),
      written,
      problems,
    },
    null,
    2,
  )}\n`;

const NO_FILE: Problem = {
  ...usage("import", "files to take in", "", "Name a log or a forecast, or write - for standard input."),
  received: "none",
};

/** Takes in temperature logs and forecasts: says what it understands of all of them, then stores all or none. */
export const run: Run = async (names, given, context) => {
  if (given.undo === true) return undoImport(names, given.dryRun === true, context);
  const service = given.fromService as ServiceId | undefined;
  if (names.length === 0 && service === undefined) return context.refuse([NO_FILE]);
  const { dir, value: farm, problems: own } = await openSettings(context);
  if (farm === null) return context.refuse(own);
  const zone = given.zone;
  if (typeof zone === "string" && Number.isNaN(localHour(zone, instant(0))))
    return context.refuse([
      usage(
        "--zone",
        "a time zone like America/New_York",
        zone,
        steadyExample(farm.place.zone, new Date(context.io.now()).getUTCFullYear()),
      ),
    ]);
  const understood: Understanding[] = [];
  const problems: Problem[] = [];
  for (const name of names) {
    const one = await understand(name, given, context, farm);
    problems.push(...one.problems);
    if (one.understanding !== null) understood.push(one.understanding);
  }
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
  const stops = problems.some(({ weight }) => weight === "stops");
  const lines = understood.map((one) => text(one, farm));
  if (stops) {
    if (!context.json) await context.result(lines.join("\n"));
    const code = await context.refuse(problems);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  }
  const dry = given.dryRun === true;
  const stored = dry
    ? { written: [], problems: [] }
    : await store(dir, understood, instant(context.io.now()));
  if (stored.problems.length > 0) return context.refuse(stored.problems);
  if (fetched !== null && !dry) await rememberFetched(dir, fetched);
  if (context.json) await context.result(json(understood, dry ? null : stored.written, problems));
  else {
    const end = dry ? ["Nothing stored: --dry-run."] : writtenLines(stored.written);
    await context.result(`${lines.join("\n")}\n${end.join("\n")}\n`);
    if (problems.length > 0) context.io.stderr.write(problemText(problems));
    if (!dry) context.say('See "leafpace week" for the schedule.\n');
  }
  return context.strict && problems.length > 0 ? NEEDS_YOU : DONE;
};
