import type { Problem } from "../problem/index.ts";
import { celsius, HOUR, type UtcHour, utcHour } from "../quantity/index.ts";
import type { HourlyRecord } from "../weather/index.ts";
import { shown } from "./faults.ts";
import { guarded } from "./guarded.ts";

/** One hour of one sensor in the store. */
export interface StoredHour {
  readonly hour: UtcHour;
  /** Sum of the readings. [°C] */
  readonly sum: number;
  readonly count: number;
  /** [°C] */
  readonly lowest: number;
  readonly highest: number;
  /** The file the readings came from. */
  readonly origin: string;
}

const HEADER = "hour,sum,count,lowest,highest,origin";

/** The form this version writes. Earlier ones are read for good; how a later one comes in, DEVELOPERS.md says. */
const VERSION = 1;

/** Name of a store file. @example storeName("outside", 2026) // => "outside-2026.csv" */
export const storeName = (sensor: string, year: number): string => `${sensor}-${year}.csv`;

/** Sensor and year a file name stands for, or null: leftovers and strangers in the folder are no store. */
export function storeOf(name: string): { readonly sensor: string; readonly year: number } | null {
  const match = /^([\w-]+)-(\d{4})\.csv$/u.exec(name);
  return match === null ? null : { sensor: match[1]!, year: Number(match[2]) };
}

/** @example hourText(utcHour(0)) // => "1970-01-01T00Z" */
export const hourText = (hour: UtcHour): string => `${new Date(hour * HOUR).toISOString().slice(0, 13)}Z`;

/** @example yearOf(utcHour(0)) // => 1970 */
export const yearOf = (hour: UtcHour): number => new Date(hour * HOUR).getUTCFullYear();

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

/** A name as a cell of the store: no separator, no line break, nothing a spreadsheet would run. */
export const tidyName = (name: string): string => guarded(name.replace(/[",;\s\p{C}]+/gu, " ").trim());

/** An hour as the store keeps it: to thousandths of a degree. */
export const tidyHour = (hour: StoredHour): StoredHour => ({
  ...hour,
  sum: rounded(hour.sum),
  lowest: rounded(hour.lowest),
  highest: rounded(hour.highest),
  origin: tidyName(hour.origin),
});

/** One sensor's year as text. The first line says what the numbers are; a spreadsheet shows it as one more row. */
export function writeStore(sensor: string, hours: readonly StoredHour[]): string {
  const lines = hours.map(
    ({ hour, sum, count, lowest, highest, origin }) =>
      `${hourText(hour)},${sum},${count},${lowest},${highest},${origin}`,
  );
  return `leafpace temperature ${VERSION},sensor ${sensor},UTC hours,degrees Celsius\n${HEADER}\n${lines.join("\n")}\n`;
}

/** A date's first hour, so that a day's hours need its date read only once. */
function hourReader(): (text: string) => number {
  let day = "";
  let start = Number.NaN;
  return (text) => {
    if (!/^\d{4}-\d\d-\d\dT\d\dZ$/u.test(text)) return Number.NaN;
    if (!text.startsWith(day) || day === "") {
      day = text.slice(0, 11);
      start = Date.parse(`${day}00:00Z`) / HOUR;
    }
    return start + Number(text.slice(11, 13));
  };
}

/**
 * Reads one store file. Forgives what a spreadsheet does to a file on saving: quotes, semicolons, line ends.
 * A line that cannot be read is a problem and left out.
 */
export function readStore(
  file: string,
  text: string,
): { readonly hours: readonly StoredHour[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const hours: StoredHour[] = [];
  const lines = text.replace(/^\uFEFF/u, "").split(/\r?\n/u);
  const problem = (line: number, code: string, expected: string, received: string, hint: string): void => {
    problems.push({
      code,
      weight: "stops",
      file,
      line,
      column: null,
      expected,
      received: shown(received),
      hint,
    });
  };
  const title = lines[0]!.replace(/^"/u, "");
  const version = Number(/^leafpace temperature (\d+)\b/u.exec(title)?.[1] ?? 0);
  if (version < 1 || version > VERSION) {
    const hint =
      version > VERSION
        ? "A newer leafpace wrote it; use that one."
        : "This folder is written by leafpace import; keep other files elsewhere.";
    problem(1, "store-version", `a first line "leafpace temperature ${VERSION}"`, title, hint);
    return { hours, problems };
  }
  const readHour = hourReader();
  for (let index = 2; index < lines.length; index++) {
    const line = lines[index]!;
    if (/^[\s,;"]*$/u.test(line)) continue;
    const cells = line.includes('"') ? line.replaceAll('"', "").split(/[,;\t]/u) : line.split(/[,;\t]/u);
    const hour = readHour(cells[0]!);
    const [sum, count, lowest, highest] = [cells[1], cells[2], cells[3], cells[4]].map((cell) =>
      cell === undefined || cell === "" ? Number.NaN : Number(cell),
    ) as [number, number, number, number];
    const sound = Number.isInteger(hour) && count >= 1 && Number.isFinite(sum) && lowest <= highest;
    if (sound)
      hours.push({ hour: utcHour(hour), sum, count, lowest, highest, origin: cells[5]?.trim() ?? "" });
    else
      problem(
        index + 1,
        "store-line-unreadable",
        "an hour like 2026-04-20T13Z with sum, count, lowest and highest",
        line,
        "Delete the line, then import the log again.",
      );
  }
  return { hours, problems };
}

/** A stored hour as the model reads it. */
export const recordOf = ({ hour, sum, count, lowest, highest }: StoredHour): HourlyRecord => ({
  hour,
  mean: celsius(sum / count),
  lowest: celsius(lowest),
  highest: celsius(highest),
  count,
});
