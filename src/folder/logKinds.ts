import type { DateOrder } from "./dialect.ts";
import type { LogSaid } from "./logReading.ts";
import type { Row } from "./row.ts";

/** What the grower said once of a kind of log, to be taken for said of the next. */
export interface LogKind extends LogSaid {
  /** The header's words, by which the kind is known. */
  readonly header: string;
  /** Letters of the file's name: another logger of the same make writes the same header. */
  readonly named: string;
}

const TITLE = "leafpace kinds of logs 1";
const COLUMNS = ["header", "files named", "unit", "dates", "zone", "column", "sensor"] as const;
const NOTHING: LogSaid = { unit: null, dates: null, zone: null, column: null, sensor: null };

/** @example nameLetters("Creek_2026-04.csv") // => "creek csv" */
export const nameLetters = (file: string): string =>
  file
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== "")
    .join(" ");

/**
 * What was said before of logs with a header. The sensor counts only for files of the same name, dates and numbers aside,
 * and only while no other was said of them: two loggers may well write alike.
 */
export function recalled(kinds: readonly LogKind[], header: string, file: string): LogSaid {
  const same = kinds.filter((kind) => kind.header === header);
  const own = same.filter(({ named }) => named === nameLetters(file));
  const { unit, dates, zone, column } = own.at(-1) ?? same.at(-1) ?? NOTHING;
  const sensors = new Set(own.map(({ sensor }) => sensor).filter((sensor) => sensor !== null));
  return { unit, dates, zone, column, sensor: sensors.size === 1 ? [...sensors][0]! : null };
}

/** Kinds with what was just said laid over them; what was not said stays. */
export function withKind(
  kinds: readonly LogKind[],
  said: LogSaid,
  header: string,
  file: string,
): readonly LogKind[] {
  if (Object.values(said).every((value) => value === null)) return kinds;
  const named = nameLetters(file);
  const before = kinds.findLast(
    (kind) =>
      kind.header === header &&
      kind.named === named &&
      (said.sensor === null || kind.sensor === null || kind.sensor === said.sensor),
  );
  const kind: LogKind = {
    header,
    named,
    unit: said.unit ?? before?.unit ?? null,
    dates: said.dates ?? before?.dates ?? null,
    zone: said.zone ?? before?.zone ?? null,
    column: said.column ?? before?.column ?? null,
    sensor: said.sensor ?? before?.sensor ?? null,
  };
  return [...kinds.filter((other) => other !== before), kind];
}

const cell = (text: string | null): string =>
  text === null ? "" : /[",\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** The kinds as a table for people to read; deleting a line, or all of it, only forgets. */
export function writeKinds(kinds: readonly LogKind[]): string {
  const lines = kinds.map(({ header, named, unit, dates, zone, column, sensor }) =>
    [header, named, unit, dates, zone, column, sensor].map(cell).join(","),
  );
  return `${TITLE},what was said of logs with these headers\n${COLUMNS.join(",")}\n${lines.join("\n")}\n`;
}

const oneOf = <Value extends string>(text: string, values: readonly Value[]): Value | null =>
  values.find((value) => value === text) ?? null;

/** Reads the kinds back. What cannot be read is forgotten: it only spares typing. */
export function readKinds(rows: readonly Row[]): readonly LogKind[] {
  if (!(rows[0]?.cells[0] ?? "").startsWith(TITLE)) return [];
  return rows.slice(2).map(({ cells }) => {
    const [header = "", named = "", unit = "", dates = "", zone = "", column = "", sensor = ""] = cells.map(
      (text) => text.trim(),
    );
    return {
      header,
      named,
      unit: oneOf(unit, ["C", "F"]),
      dates: oneOf<DateOrder>(dates, ["ymd", "mdy", "dmy"]),
      zone: zone === "" ? null : zone,
      column: column === "" ? null : column,
      sensor: sensor === "" ? null : sensor,
    };
  });
}
