import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readSensors } from "../../src/cli/store.ts";
import { hourText } from "../../src/folder/storeFile.ts";
import { instant } from "../../src/quantity/index.ts";

/** What a farm folder's store holds, by sensor. [°C] */
export interface Stored {
  /** UTC hour, mean, readings, lowest, highest. */
  readonly hours: Readonly<Record<string, readonly (readonly [string, number, number, number, number])[]>>;
  /** Date, low, high. */
  readonly days: Readonly<Record<string, readonly (readonly [string, number, number])[]>>;
}

const FOREVER = instant(8.64e15);

/** Daily records by sensor, from files like outside-2026-daily.csv: lines that begin with date,low,high. */
function daysIn(dir: string): Stored["days"] {
  const folder = join(dir, "temperature");
  const days: Record<string, (readonly [string, number, number])[]> = {};
  for (const name of existsSync(folder) ? readdirSync(folder).sort() : []) {
    const sensor = /^(.+)-\d{4}-daily\.csv$/u.exec(name)?.[1];
    if (sensor === undefined) continue;
    for (const line of readFileSync(join(folder, name), "utf8").split("\n")) {
      const [date, low, high] = line.split(",");
      if (!/^\d{4}-\d\d-\d\d$/u.test(date!)) continue;
      days[sensor] ??= [];
      days[sensor].push([date!, Number(low), Number(high)]);
    }
  }
  return days;
}

/** Reads a store as the other commands do. */
export async function readBack(dir: string): Promise<Stored> {
  const { sensors } = await readSensors(dir, FOREVER);
  const hourly = sensors.filter(({ hours }) => hours.length > 0);
  const hours = hourly.map(({ sensor, hours }) => [
    sensor,
    hours.map(
      ({ hour, mean, count, lowest, highest }) =>
        [hourText(hour).slice(0, 13), mean, count, lowest, highest] as const,
    ),
  ]);
  return { hours: Object.fromEntries(hours), days: daysIn(dir) };
}
