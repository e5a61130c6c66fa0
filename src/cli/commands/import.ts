import { basename, resolve } from "node:path";
import {
  type DateOrder,
  type FarmSettings,
  forecastFile,
  hangingPlaces,
  type IssuedBy,
  looksLikeForecast,
  parseMoment,
  type StoredHour,
  steadyExample,
  temperatureLog,
  type Understood,
  unknownName,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { type Instant, instant, localHour } from "../../quantity/index.ts";
import type { Doubtful, Forecast } from "../../weather/index.ts";
import { type Context, DONE, NEEDS_YOU, problemText, usage } from "../context.ts";
import { doubtfulHours, doubtfulLines } from "../doubtful.ts";
import { openSettings } from "../farmFolder.ts";
import { hangsGiven } from "../hangs.ts";
import { locked } from "../lock.ts";
import type { Given, Run } from "../spec.ts";
import { storeForecast, storeHours, storePlace, type Written } from "../store.ts";
import { allRows, heldTable, type OpenTable, openTable } from "../table.ts";
import { forecastText, understoodText } from "../understood.ts";

/** One file as understood, ready to be stored. */
type Understanding = { readonly file: string; readonly separator: string } & (
  | {
      readonly kind: "log";
      readonly sensor: string;
      readonly read: Understood;
      readonly hours: readonly StoredHour[];
      readonly doubtful: readonly Doubtful[];
    }
  | { readonly kind: "forecast"; readonly forecast: Forecast; readonly issuedBy: IssuedBy }
);

interface Attempt {
  readonly understanding: Understanding | null;
  readonly problems: readonly Problem[];
}

/** The sensor a log belongs to: the one named, else the only one there is. */
function sensorOf(
  given: Given,
  farm: FarmSettings,
): { readonly sensor: string } | { readonly problem: Problem } {
  const { sensors } = farm;
  const names = [...sensors.keys()];
  const places = hangingPlaces(farm)
    .slice(0, 2)
    .map((place) => `--hangs ${place}`);
  const asked = given.sensor;
  if (typeof asked === "string") {
    if (sensors.has(asked)) return { sensor: asked };
    const spot = { file: "--sensor", line: null, column: null };
    const problem = unknownName(spot, asked, "a sensor whose place is known", names, "sensor-unknown");
    const hint = `${problem.hint} For a new one say where it hangs, ${places.join(" or ")}: it is remembered.`;
    return { problem: { ...problem, hint } };
  }
  if (names.length === 1) return { sensor: names[0]! };
  return {
    problem: {
      ...usage(
        "--sensor",
        "the sensor the log belongs to",
        "",
        names.length === 0
          ? "Name it, and say where it hangs: --sensor outside --hangs outside."
          : `Say one of ${names.join(", ")}.`,
      ),
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
  for await (const row of table.rows()) log.feed(row);
  const { understood, hours, problems } = log.finish();
  if (understood === null) return { understanding: null, problems };
  const found = { file: name, separator: table.separator, kind: "log" as const, sensor: sensor.sensor };
  const doubtful = doubtfulHours(sensor.sensor, hours, farm);
  return { understanding: { ...found, read: understood, hours, doubtful }, problems };
}

async function understandForecast(
  name: string,
  table: OpenTable,
  issued: Instant | null,
  given: Given,
  farm: FarmSettings,
): Promise<Attempt> {
  const rows = await allRows(table);
  const { forecast, issuedBy, problems } = forecastFile({ file: name, rows }, farm.place.zone, issued, {
    dates: (given.dates as DateOrder | undefined) ?? null,
    units: farm.units,
  });
  if (forecast === null || issuedBy === null) return { understanding: null, problems };
  const found = { file: name, separator: table.separator, kind: "forecast" as const };
  return { understanding: { ...found, forecast, issuedBy }, problems };
}

async function understand(
  path: string,
  given: Given,
  context: Context,
  farm: FarmSettings,
): Promise<Attempt> {
  const name = path === "-" ? "standard input" : basename(path);
  let table: OpenTable;
  try {
    table =
      path === "-" ? heldTable(await context.io.input()) : await openTable(resolve(context.io.cwd, path));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    const received = code === "ENOENT" ? "no such file" : code === "EISDIR" ? "a folder" : code;
    const problem = {
      ...usage(path, "a file that can be read", "", "Look at the name and the folder."),
      received,
    };
    return { understanding: null, problems: [problem] };
  }
  if (!table.opening.some(looksLikeForecast)) return understandLog(name, table, given, farm);
  const text = given.issued;
  if (typeof text !== "string") return understandForecast(name, table, null, given, farm);
  const issued = parseMoment(text, { zone: farm.place.zone, walks: farm.walks }, 0);
  if (issued !== null) return understandForecast(name, table, issued, given, farm);
  const expected = "a moment like 2026-04-20T05:00";
  return {
    understanding: null,
    problems: [usage("--issued", expected, text, "Use year-month-day and the farm's clock.")],
  };
}

const text = (understanding: Understanding, farm: FarmSettings): string => {
  const look = { zone: farm.place.zone, units: farm.units };
  const { file, separator } = understanding;
  return understanding.kind === "log"
    ? understoodText(file, understanding.sensor, separator, look, understanding.read) +
        doubtfulLines(understanding.doubtful, farm)
    : forecastText(file, separator, look, understanding.forecast, understanding.issuedBy);
};

async function store(
  dir: string,
  understood: readonly Understanding[],
  farm: FarmSettings,
  place: readonly [string, string] | null,
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
  const { dir, value: known, problems: own } = await openSettings(context);
  if (known === null) return context.refuse(own);
  const hung = hangsGiven(given, known);
  if ("problem" in hung) return context.refuse([hung.problem]);
  const { farm, place } = hung;
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
  const stops = problems.some(({ weight }) => weight === "stops");
  const lines = understood.map((one) => text(one, farm));
  if (stops) {
    if (!context.json) await context.result(lines.join("\n"));
    const code = await context.refuse(problems);
    if (!context.json) context.say("Nothing was stored.\n");
    return code;
  }
  const dry = given.dryRun === true;
  const stored = dry ? { written: [], problems: [] } : await store(dir, understood, farm, place);
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
