import { mkdir, readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import {
  type FarmSettings,
  forecastName,
  issuedOf,
  mergeHours,
  PLACES_NAME,
  type Places,
  readForecast,
  readPlaces,
  readStore,
  recordOf,
  type StoredHour,
  storeName,
  storeOf,
  tidyHour,
  writeForecast,
  writePlaces,
  writeStore,
  yearOf,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, startOf } from "../quantity/index.ts";
import type { Forecast, SensorRecords } from "../weather/index.ts";
import { allRows, openTable } from "./table.ts";

const TEMPERATURE = "temperature";
const FORECASTS = "forecasts";

const missing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

const namesIn = async (dir: string): Promise<readonly string[]> =>
  readdir(dir).then(
    (names) => names.sort(),
    (error: unknown) => {
      if (missing(error)) return [];
      throw error;
    },
  );

const textOf = async (path: string): Promise<string | null> =>
  readFile(path, "utf8").catch((error: unknown) => {
    if (missing(error)) return null;
    throw error;
  });

/** What the store holds of every sensor up to a moment: nothing measured later is known then. */
export async function readSensors(
  dir: string,
  before: Instant,
): Promise<{ readonly sensors: readonly SensorRecords[]; readonly problems: readonly Problem[] }> {
  const problems: Problem[] = [];
  const bySensor = new Map<string, StoredHour[]>();
  for (const name of await namesIn(join(dir, TEMPERATURE))) {
    const stored = storeOf(name);
    if (stored === null) continue;
    const text = (await textOf(join(dir, TEMPERATURE, name))) ?? "";
    const read = readStore(`${TEMPERATURE}/${name}`, text);
    problems.push(...read.problems);
    const hours = bySensor.get(stored.sensor) ?? [];
    for (const hour of read.hours) if (startOf(hour.hour) + HOUR <= before) hours.push(hour);
    bySensor.set(stored.sensor, hours);
  }
  const sensors = [...bySensor].map(([sensor, hours]) => ({
    sensor,
    hours: hours.sort((a, b) => a.hour - b.hour).map(recordOf),
  }));
  return { sensors, problems };
}

/** The newest forecast issued by a moment, or null. */
export async function readNewestForecast(
  dir: string,
  before: Instant,
): Promise<{ readonly forecast: Forecast | null; readonly problems: readonly Problem[] }> {
  const newest = (await namesIn(join(dir, FORECASTS)))
    .map((name) => ({ name, issued: issuedOf(name) }))
    .filter(
      (file): file is { name: string; issued: Instant } => file.issued !== null && file.issued <= before,
    )
    .sort((a, b) => b.issued - a.issued)[0];
  if (newest === undefined) return { forecast: null, problems: [] };
  const rows = await allRows(await openTable(join(dir, FORECASTS, newest.name)));
  const { forecast, problems } = readForecast({ file: `${FORECASTS}/${newest.name}`, rows });
  return { forecast: forecast === null ? null : { ...forecast, issued: newest.issued }, problems };
}

/** What writing changed. */
export interface Written {
  /** Name within the farm folder. */
  readonly file: string;
  readonly change: "new" | "changed" | "same";
}

async function writeWhole(dir: string, folder: string, name: string, text: string): Promise<Written> {
  const path = join(dir, folder, name);
  const file = `${folder}/${name}`;
  const before = await textOf(path);
  if (before === text) return { file, change: "same" };
  const { default: writeFileAtomic } = await import("write-file-atomic");
  await mkdir(join(dir, folder), { recursive: true });
  await writeFileAtomic(path, text);
  return { file, change: before === null ? "new" : "changed" };
}

/**
 * Lays hours over what a sensor's files hold. Every file is replaced whole or not at all.
 *
 * @returns Problems when a file of the store cannot be read: then nothing of this sensor is written.
 */
export async function storeHours(
  dir: string,
  sensor: string,
  hours: readonly StoredHour[],
): Promise<{ readonly written: readonly Written[]; readonly problems: readonly Problem[] }> {
  const years = new Map<number, StoredHour[]>();
  for (const hour of hours) {
    const year = yearOf(hour.hour);
    const sameYear = years.get(year);
    if (sameYear === undefined) years.set(year, [hour]);
    else sameYear.push(hour);
  }
  const texts: { readonly name: string; readonly text: string }[] = [];
  const problems: Problem[] = [];
  for (const [year, imported] of years) {
    const name = storeName(sensor, year);
    const before = await textOf(join(dir, TEMPERATURE, name));
    const read = before === null ? { hours: [], problems: [] } : readStore(`${TEMPERATURE}/${name}`, before);
    problems.push(...read.problems);
    texts.push({ name, text: writeStore(sensor, mergeHours(read.hours, imported.map(tidyHour))) });
  }
  if (problems.length > 0) return { written: [], problems };
  const written: Written[] = [];
  for (const { name, text } of texts) written.push(await writeWhole(dir, TEMPERATURE, name, text));
  return { written, problems };
}

/** Where sensors hang that an import placed. */
export const readPlacesIn = async (
  dir: string,
  farm: FarmSettings,
): Promise<{ readonly places: Places; readonly problems: readonly Problem[] }> =>
  readPlaces(
    `${TEMPERATURE}/${PLACES_NAME}`,
    (await textOf(join(dir, TEMPERATURE, PLACES_NAME))) ?? "",
    farm,
  );

/** Remembers where a sensor hangs. */
export async function storePlace(
  dir: string,
  farm: FarmSettings,
  [sensor, hangs]: readonly [string, string],
): Promise<Written> {
  const { places } = await readPlacesIn(dir, farm);
  return writeWhole(dir, TEMPERATURE, PLACES_NAME, writePlaces(new Map([...places, [sensor, hangs]])));
}

/** Keeps a forecast beside the earlier ones. */
export const storeForecast = (dir: string, forecast: Forecast): Promise<Written> =>
  writeWhole(dir, FORECASTS, forecastName(forecast.issued), writeForecast(forecast));
