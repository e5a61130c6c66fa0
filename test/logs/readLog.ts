import { heldTable } from "../../src/cli/table.ts";
import { temperatureLog } from "../../src/folder/index.ts";
import type { Problem } from "../../src/problem/index.ts";
import { instant } from "../../src/quantity/index.ts";
import type { Hour } from "./series.ts";

/** What the reader makes of a log. */
export interface LogRead {
  /** null: it is refused. */
  readonly hours: readonly Hour[] | null;
  readonly problems: readonly Problem[];
}

const FILE = "log.csv";
const NOW = instant(Date.UTC(2027, 0, 1));

/** Reads a log as the import does, for a farm with one sensor and without a folder. */
export async function readLog(
  bytes: Buffer,
  { zone, unit }: { readonly zone: string; readonly unit: "C" | "F" | null },
): Promise<LogRead> {
  const { table, problem } = heldTable(bytes, FILE);
  if (table === null) return { hours: null, problems: [problem] };
  const log = temperatureLog({
    file: FILE,
    unit,
    dates: null,
    zone: null,
    column: null,
    sensor: null,
    farm: { zone, sensors: ["outside"], units: "US" },
    now: NOW,
    separator: table.separator,
  });
  const problems: Problem[] = [];
  const ended = await table.walk(log.feed, problems);
  const read = log.finish(ended);
  const all = [...problems, ...read.problems];
  const refused = read.understood === null || all.some(({ weight }) => weight === "stops");
  return { hours: refused ? null : read.sensors.flatMap(({ hours }) => hours), problems: all };
}
