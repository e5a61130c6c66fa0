import { basename, resolve } from "node:path";
import {
  type DateOrder,
  type FarmSettings,
  forecastFile,
  type IssuedBy,
  looksLikeForecast,
  looksTyped,
  parseMoment,
  type StoredHour,
  steadyExample,
  temperatureLog,
  typedForecast,
  type Understood,
  unknownName,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { type Instant, instant, localHour } from "../../quantity/index.ts";
import { type Forecast, unlikelyForecast } from "../../weather/index.ts";
import { type Context, DONE, NEEDS_YOU, problemText, usage } from "../context.ts";
import { openSettings } from "../farmFolder.ts";
import { outsideOf } from "../knownAt.ts";
import { locked } from "../lock.ts";
import { otherMoment } from "../moment.ts";
import type { Given, Run } from "../spec.ts";
import { readSensors, storeForecast, storeHours, type Written } from "../store.ts";
import { allRows, heldTable, type OpenTable, openTable } from "../table.ts";
import { forecastText, understoodText } from "../understood.ts";

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
      /** null: typed lines, no table. */
      readonly separator: string | null;
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

const isTable = ({ opening }: OpenTable): boolean => opening.some(looksLikeForecast);

async function understandForecast(
  name: string,
  table: OpenTable,
  issued: Instant | null,
  now: Instant,
  given: Given,
  farm: FarmSettings,
): Promise<Attempt> {
  const cut: Problem[] = [];
  const rows = await allRows(table, cut);
  if (cut.length > 0) return { understanding: null, problems: cut };
  const { forecast, issuedBy, problems } = isTable(table)
    ? forecastFile({ file: name, rows }, farm.place.zone, issued, {
        dates: (given.dates as DateOrder | undefined) ?? null,
        units: farm.units,
      })
    : typedForecast({ file: name, rows }, table.separator, farm.place.zone, issued, now, farm.units);
  if (forecast === null || issuedBy === null) return { understanding: null, problems };
  const found = { file: name, separator: isTable(table) ? table.separator : null, kind: "forecast" as const };
  return { understanding: { ...found, forecast, issuedBy }, problems };
}

async function understand(
  path: string,
  given: Given,
  context: Context,
  farm: FarmSettings,
): Promise<Attempt> {
  const name = path === "-" ? "standard input" : basename(path);
  const { table, problem } =
    path === "-"
      ? heldTable(await context.io.input(), name)
      : await openTable(resolve(context.io.cwd, path), path);
  if (table === null) return { understanding: null, problems: [problem] };
  if (!isTable(table) && !looksTyped(table.opening, table.separator))
    return understandLog(name, table, given, farm);
  const now = instant(context.io.now());
  const text = given.issued;
  if (typeof text !== "string") return understandForecast(name, table, null, now, given, farm);
  const issued = parseMoment(text, { zone: farm.place.zone, walks: farm.walks }, 0);
  if (issued !== null) return understandForecast(name, table, issued, now, given, farm);
  const expected = "a moment like 2026-04-20T05:00";
  return {
    understanding: null,
    problems: [otherMoment("--issued", expected, text, farm, context.io.now())],
  };
}

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

const text = (understanding: Understanding, farm: FarmSettings): string => {
  const look = { zone: farm.place.zone, units: farm.units };
  const { file } = understanding;
  return understanding.kind === "log"
    ? understoodText(file, understanding.sensor, understanding.separator, look, understanding.read)
    : forecastText(file, understanding.separator, look, understanding.forecast, understanding.issuedBy);
};

async function store(
  dir: string,
  understood: readonly Understanding[],
): Promise<{ readonly written: readonly Written[]; readonly problems: readonly Problem[] }> {
  const done = await locked(dir, async () => {
    const written: Written[] = [];
    for (const one of understood) {
      if (one.kind === "forecast") written.push(await storeForecast(dir, one.forecast));
      else {
        const stored = await storeHours(dir, one.sensor, one.hours);
        if (stored.problems.length > 0) return { written, problems: stored.problems };
        written.push(...stored.written);
      }
    }
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

/** Takes in temperature logs and forecasts: says what it understands of all of them, then stores all or none. */
export const run: Run = async (names, given, context) => {
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
  problems.push(...(await unlikely(dir, understood, farm, instant(context.io.now()))));
  const stops = problems.some(({ weight }) => weight === "stops");
  const lines = understood.map((one) => text(one, farm));
  if (stops) {
    if (!context.json) await context.result(lines.join("\n"));
    const code = await context.refuse(problems);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  }
  const dry = given.dryRun === true;
  const stored = dry ? { written: [], problems: [] } : await store(dir, understood);
  if (stored.problems.length > 0) return context.refuse(stored.problems);
  if (context.json) await context.result(json(understood, dry ? null : stored.written, problems));
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
