import type { Problem } from "../problem/index.ts";
import { celsius, HOUR, type UtcHour, utcHour } from "../quantity/index.ts";
import type { HourlyRecord } from "../weather/index.ts";
import { shown } from "./faults.ts";

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

/** An hour as the store keeps it: thousandths of a degree, and no line break or comma in the origin. */
export const tidyHour = (hour: StoredHour): StoredHour => ({
  ...hour,
  sum: rounded(hour.sum),
  lowest: rounded(hour.lowest),
  highest: rounded(hour.highest),
  origin: hour.origin.replace(/[",;\s]+/gu, " ").trim(),
});

/** One sensor's year as text. The first line says what the numbers are; a spreadsheet shows it as one more row. */
export function writeStore(sensor: string, hours: readonly StoredHour[]): string {
  const lines = hours.map(
    ({ hour, sum, count, lowest, highest, origin }) =>
      `${hourText(hour)},${sum},${count},${lowest},${highest},${origin}`,
  );
  return `leafpace temperature 1,sensor ${sensor},UTC hours,degrees Celsius\n${HEADER}\n${lines.join("\n")}\n`;
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
  if (!title.startsWith("leafpace temperature 1")) {
    const newer = title.startsWith("leafpace temperature");
    const hint = newer
      ? "A newer leafpace wrote it; use that one."
      : "This folder is written by leafpace import; keep other files elsewhere.";
    problem(1, "store-version", 'a first line "leafpace temperature 1"', title, hint);
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

/**
 * Stored hours with an import laid over them: the later import wins. Only at the two ends of the import,
 * where its first and last hour may be cut, the hour with more readings stays.
 */
export function mergeHours(
  stored: readonly StoredHour[],
  imported: readonly StoredHour[],
): readonly StoredHour[] {
  const merged = new Map(stored.map((hour) => [hour.hour, hour]));
  imported.forEach((hour, index) => {
    const before = merged.get(hour.hour);
    const cut = index === 0 || index === imported.length - 1;
    if (before === undefined || !cut || before.count <= hour.count) merged.set(hour.hour, hour);
  });
  return [...merged.values()].sort((a, b) => a.hour - b.hour);
}

/** A stored hour as the model reads it. */
export const recordOf = ({ hour, sum, count, lowest, highest }: StoredHour): HourlyRecord => ({
  hour,
  mean: celsius(sum / count),
  lowest: celsius(lowest),
  highest: celsius(highest),
  count,
});
