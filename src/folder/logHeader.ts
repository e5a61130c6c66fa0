import { didYouMean, type Problem } from "../problem/index.ts";
import { type Dialect, plainWords, unitNamed } from "./dialect.ts";
import { shown } from "./faults.ts";
import type { Row } from "./row.ts";

/** Columns of a log found in its header. */
export interface LogHeader {
  readonly line: number;
  /** Date, or date and time together. */
  readonly moment: number;
  /** Time of day in a column of its own. */
  readonly clock: number | null;
  readonly temperature: number;
  readonly names: readonly string[];
  readonly unit: "C" | "F" | null;
  /** Offset from universal time the header states. [min] */
  readonly offset: number | null;
}

export type FoundHeader = { readonly header: LogHeader } | { readonly problem: Problem } | null;

const baseOf = (cell: string): string =>
  plainWords(cell)
    .replace(/[([].*$/u, "")
    .replace(/,.*$/u, "")
    .trim();

function statedOffset(cell: string): number | null {
  const match = /(?:utc|gmt)\s*(?:([+-])\s*(\d{1,2})(?::?(\d{2}))?)?\b/iu.exec(cell);
  if (match === null) return null;
  const [, sign, hours = "0", minutes = "0"] = match;
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

/** Temperature columns: by a word for temperature, or, without one, by a unit of temperature alone. */
function temperatureColumns(names: readonly string[], dialect: Dialect): readonly number[] {
  const indices = names.map((_, index) => index);
  const other = (name: string): boolean =>
    dialect.notTemperature.some((word) => plainWords(name).includes(word));
  const worded = indices.filter((index) => {
    const words = plainWords(names[index]!).split(/[^\p{L}.]+/u);
    return !other(names[index]!) && words.some((word) => dialect.temperature.includes(word));
  });
  if (worded.length > 0) return worded;
  return indices.filter((index) => !other(names[index]!) && unitNamed(names[index]!, dialect) !== null);
}

/**
 * Looks at one line of a log for its header.
 *
 * @param column - Name of the temperature column the grower asks for, or null.
 * @returns null when the line is no header.
 */
export function logHeader(row: Row, file: string, column: string | null, dialect: Dialect): FoundHeader {
  const names = row.cells.map((cell) => cell.replace(/^\uFEFF/u, "").trim());
  const bases = names.map(baseOf);
  const find = (words: readonly string[]): number => bases.findIndex((base) => words.includes(base));
  const [dateTime, date, time] = [find(dialect.dateTime), find(dialect.date), find(dialect.time)];
  const moment = [dateTime, date, time].find((index) => index >= 0);
  if (moment === undefined) return null;
  const temperatures = temperatureColumns(names, dialect).filter((index) => index !== moment);
  const asked = column === null ? -1 : names.findIndex((name) => plainWords(name) === plainWords(column));
  if (temperatures.length === 0 && asked < 0) return null;
  const problem = (code: string, expected: string, received: string, hint: string): FoundHeader => ({
    problem: { code, weight: "stops", file, line: row.line, column: null, expected, received, hint },
  });
  if (column !== null && asked < 0) {
    const near = didYouMean(column, names);
    const hint =
      near === null
        ? `The file has: ${names.filter((name) => name !== "").join(", ")}.`
        : `Did you mean "${near}"?`;
    return problem("log-column-unknown", "a column of this file behind --column", shown(column), hint);
  }
  if (asked < 0 && temperatures.length > 1) {
    const list = temperatures.map((index) => `"${names[index]}"`).join(", ");
    return problem(
      "log-columns-several",
      "one temperature column",
      list,
      `Name the one to take, as in --column ${JSON.stringify(names[temperatures[0]!])}.`,
    );
  }
  const temperature = asked >= 0 ? asked : temperatures[0]!;
  const clock = dateTime < 0 && date >= 0 && time >= 0 ? time : null;
  const unit = unitNamed(names[temperature]!, dialect);
  return {
    header: {
      line: row.line,
      moment,
      clock,
      temperature,
      names,
      unit,
      offset: statedOffset(names[clock ?? moment]!),
    },
  };
}
