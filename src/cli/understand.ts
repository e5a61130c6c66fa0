import { basename } from "node:path";
import {
  type FarmSettings,
  type IssuedBy,
  type LogReading,
  type LogSaid,
  type SensorLog,
  temperatureLog,
  type Understood,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, instant, localDate } from "../quantity/index.ts";
import type { Doubtful, Forecast } from "../weather/index.ts";
import type { Context } from "./context.ts";
import { doubtfulHours } from "./doubtful.ts";
import type { Encoding } from "./encoding.ts";
import {
  type Foretold,
  foretoldByPage,
  foretoldByTable,
  formOf,
  pageText,
  type ReadFrom,
  saysIssued,
} from "./foretold.ts";
import type { Source } from "./sources.ts";
import type { Given } from "./spec.ts";
import { heldTable, type OpenTable, openTable } from "./table.ts";

/** How a table is written. */
export interface WrittenAs {
  readonly file: string;
  readonly separator: string;
  readonly encoding: Encoding;
}

/** One file as understood, ready to be stored. */
export type Understanding =
  | (WrittenAs & {
      readonly kind: "log";
      readonly read: Understood;
      readonly sensors: readonly SensorLog[];
      readonly doubtful: readonly Doubtful[];
    })
  | {
      readonly kind: "forecast";
      readonly file: string;
      readonly from: ReadFrom;
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
  /** As --issued says. */
  readonly issued: Instant | null;
  readonly recall: (header: string, file: string) => LogSaid;
}

/** Codes of what is no log at all: in a folder such files are passed over. */
const NO_LOG = new Set([
  "log-not-text",
  "log-workbook",
  "log-not-a-table",
  "log-header-missing",
  "log-empty",
  "forecast-json-unknown",
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

async function readLog(written: WrittenAs, table: OpenTable, around: Around): Promise<LogReading> {
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

/** A forecast as read, as an attempt. */
export const foretoldAttempt = (file: string, { forecast, issuedBy, problems, from }: Foretold): Attempt =>
  forecast === null || issuedBy === null
    ? { understanding: null, problems }
    : { understanding: { kind: "forecast", file, from, forecast, issuedBy }, problems };

function logAttempt(
  written: WrittenAs,
  { understood, sensors, problems }: LogReading,
  farm: FarmSettings,
): Attempt {
  if (understood === null) return { understanding: null, problems };
  const doubtful = sensors.flatMap(({ sensor, hours }) => doubtfulHours(sensor, hours, farm));
  return { understanding: { ...written, kind: "log", read: understood, sensors, doubtful }, problems };
}

async function understandTable(file: string, table: OpenTable, around: Around): Promise<Attempt> {
  const { given, context, farm, issued } = around;
  const now = instant(context.io.now());
  const form = formOf(table, issued ?? now, given, farm);
  if (form === null || (form === "days" && issued === null && !saysIssued(table))) {
    const written: WrittenAs = { file, separator: table.separator, encoding: table.encoding };
    const read = await readLog(written, table, around);
    // Lows and highs of days that lie behind are a record, and no forecast.
    const behind = read.lastDay !== null && read.lastDay < localDate(farm.place.zone, now);
    if (form === null || behind) return logAttempt(written, read, farm);
  }
  return foretoldAttempt(file, await foretoldByTable(file, table, form, issued, now, given, farm));
}

/** Recognises a file by what it holds, and reads it. */
export async function understand({ path, name }: Source, around: Around): Promise<Attempt> {
  const { context, farm, issued } = around;
  const held = path === "-" ? await context.io.input() : null;
  const file = held === null ? basename(path) : name;
  const page = await pageText(held, path, file);
  if (page !== null)
    return "problem" in page
      ? { understanding: null, problems: [page.problem] }
      : foretoldAttempt(file, foretoldByPage(file, page.text, issued, farm));
  const { table, problem } = held === null ? await openTable(path, name) : heldTable(held, file);
  return table === null
    ? { understanding: null, problems: [noText(problem)] }
    : understandTable(file, table, around);
}
