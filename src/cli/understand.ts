import { readdir, stat } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import {
  type DateOrder,
  type FarmSettings,
  forecastFile,
  type IssuedBy,
  type LogReading,
  type LogSaid,
  looksLikeForecast,
  looksTyped,
  namesTemperature,
  parseMoment,
  type SensorLog,
  temperatureLog,
  typedForecast,
  type Understood,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, instant, localDate } from "../quantity/index.ts";
import type { Doubtful, Forecast } from "../weather/index.ts";
import { type Context, usage } from "./context.ts";
import { doubtfulHours } from "./doubtful.ts";
import type { Encoding } from "./encoding.ts";
import type { Given } from "./spec.ts";
import { allRows, heldTable, type OpenTable, openTable } from "./table.ts";

/** How a table is written. */
export interface Written {
  readonly file: string;
  readonly separator: string;
  readonly encoding: Encoding;
}

/** One file as understood, ready to be stored. */
export type Understanding =
  | (Written & {
      readonly kind: "log";
      readonly read: Understood;
      readonly sensors: readonly SensorLog[];
      readonly doubtful: readonly Doubtful[];
    })
  | {
      readonly kind: "forecast";
      readonly file: string;
      /** null: typed lines, no table. */
      readonly separator: string | null;
      readonly forecast: Forecast;
      readonly issuedBy: IssuedBy;
    };

export interface Attempt {
  readonly understanding: Understanding | null;
  readonly problems: readonly Problem[];
}

export interface Around {
  readonly given: Given;
  readonly context: Context;
  readonly farm: FarmSettings;
  readonly recall: (header: string, file: string) => LogSaid;
}

/** A file the grower names, or one of a folder's, which need not be a log. */
export interface Source {
  readonly path: string;
  readonly name: string;
  readonly inFolder: boolean;
}

/** Codes of what is no log at all: in a folder such files are passed over. */
const NO_LOG = new Set([
  "log-not-text",
  "log-workbook",
  "log-not-a-table",
  "log-header-missing",
  "log-empty",
]);

export const isNoLog = ({ problems }: Attempt): boolean => problems.some(({ code }) => NO_LOG.has(code));

const said = (given: Given, name: string): string | null => {
  const value = given[name];
  return typeof value === "string" ? value : null;
};

/** What the grower says of the logs on the command line. */
export const saidOf = (given: Given): LogSaid => ({
  unit: said(given, "unit") as LogSaid["unit"],
  dates: said(given, "dates") as LogSaid["dates"],
  zone: said(given, "zone"),
  column: said(given, "column"),
  sensor: said(given, "sensor"),
});

/** Files named, and those in folders named, without those whose names begin with a point. */
export async function sources(names: readonly string[], cwd: string): Promise<readonly Source[]> {
  const all: Source[] = [];
  for (const name of names) {
    const path = resolve(cwd, name);
    const isFolder =
      name !== "-" &&
      (await stat(path).then(
        (found) => found.isDirectory(),
        () => false,
      ));
    if (!isFolder) {
      all.push({
        path: name === "-" ? "-" : path,
        name: name === "-" ? "standard input" : name,
        inFolder: false,
      });
      continue;
    }
    const entries = await readdir(path, { withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile() && !entry.name.startsWith("."));
    for (const file of files.map((entry) => entry.name).sort())
      all.push({ path: join(path, file), name: join(name, file), inFolder: true });
  }
  return all;
}

/** A file that is no text, in the words of an import. */
function noText(problem: Problem): Problem {
  if (problem.code !== "file-not-text") return problem;
  const isWorkbook = problem.received.includes("workbook");
  return {
    ...problem,
    code: isWorkbook ? "log-workbook" : "log-not-text",
    expected: "a log as plain text",
    hint: isWorkbook ? "Open it in the spreadsheet and save it as CSV." : "Export the log as CSV.",
  };
}

async function readLog(written: Written, table: OpenTable, around: Around): Promise<LogReading> {
  const { given, context, farm, recall } = around;
  const { file } = written;
  const log = temperatureLog({
    ...saidOf(given),
    file,
    farm: { zone: farm.place.zone, sensors: [...farm.sensors.keys()], units: farm.units },
    now: instant(context.io.now()),
    separator: table.separator,
    recall: (header) => recall(header, file),
  });
  const cut: Problem[] = [];
  const ended = await table.walk(log.feed, cut);
  const read = log.finish(ended);
  return cut.length === 0
    ? read
    : { ...read, understood: null, sensors: [], problems: [...read.problems, ...cut] };
}

const isTyped = ({ opening }: OpenTable): boolean => looksTyped(opening) && !opening.some(namesTemperature);

const isTable = ({ opening }: OpenTable): boolean => opening.some(looksLikeForecast);

async function readForecast(
  { file, separator }: Written,
  table: OpenTable,
  issued: Instant | null,
  { given, context, farm }: Around,
): Promise<Attempt> {
  const cut: Problem[] = [];
  const rows = await allRows(table, cut);
  if (cut.length > 0) return { understanding: null, problems: cut };
  const { forecast, issuedBy, problems } = isTable(table)
    ? forecastFile({ file, rows }, farm.place.zone, issued, {
        dates: (given.dates as DateOrder | undefined) ?? null,
        units: farm.units,
      })
    : typedForecast({ file, rows }, farm.place.zone, issued, instant(context.io.now()), farm.units);
  if (forecast === null || issuedBy === null) return { understanding: null, problems };
  const found = { kind: "forecast", file, separator: isTable(table) ? separator : null } as const;
  return { understanding: { ...found, forecast, issuedBy }, problems };
}

function logAttempt(
  written: Written,
  { understood, sensors, problems }: LogReading,
  farm: FarmSettings,
): Attempt {
  if (understood === null) return { understanding: null, problems };
  const doubtful = sensors.flatMap(({ sensor, hours }) => doubtfulHours(sensor, hours, farm));
  return { understanding: { ...written, kind: "log", read: understood, sensors, doubtful }, problems };
}

const saysIssued = ({ opening }: OpenTable): boolean =>
  opening.some((cells) => /\bissued\b/iu.test(cells.join(" ")));

/** Recognises a file by what it holds, and reads it. */
export async function understand({ path, name }: Source, around: Around): Promise<Attempt> {
  const { given, context, farm } = around;
  const file = path === "-" ? name : basename(path);
  const { table, problem } =
    path === "-" ? heldTable(await context.io.input(), file) : await openTable(path, name);
  if (table === null) return { understanding: null, problems: [noText(problem)] };
  const written: Written = { file, separator: table.separator, encoding: table.encoding };
  const text = said(given, "issued");
  const isForecast = isTable(table) || isTyped(table);
  if (!isForecast || (isTable(table) && text === null && !saysIssued(table))) {
    const read = await readLog(written, table, around);
    const today = localDate(farm.place.zone, instant(context.io.now()));
    // Lows and highs of days that lie behind are a record, and no forecast.
    if (!isForecast || (read.lastDay !== null && read.lastDay < today))
      return logAttempt(written, read, farm);
  }
  if (text === null) return readForecast(written, table, null, around);
  const issued = parseMoment(text, { zone: farm.place.zone, walks: farm.walks }, 0);
  if (issued !== null) return readForecast(written, table, issued, around);
  const expected = "a moment like 2026-04-20T05:00";
  return {
    understanding: null,
    problems: [usage("--issued", expected, text, "Use year-month-day and the farm's clock.")],
  };
}
