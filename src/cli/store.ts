import { mkdir, readdir } from "node:fs/promises";
import { join } from "node:path";
import {
  type DayRange,
  dailyName,
  dailyOf,
  dailyRecordOf,
  type FarmSettings,
  forecastName,
  issuedOf,
  type LogKind,
  mergeDays,
  mergeHours,
  PLACES_NAME,
  type Places,
  readDaily,
  readForecast,
  readKinds,
  readPlaces,
  readStore,
  recordOf,
  type StoredHour,
  storeName,
  storeOf,
  tidyHour,
  writeDaily,
  writeForecast,
  writeKinds,
  writePlaces,
  writeStore,
  yearOf,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, startOf } from "../quantity/index.ts";
import type { Forecast, SensorRecords } from "../weather/index.ts";
import { allRows, openTable } from "./table.ts";
import { readText } from "./textFile.ts";

const TEMPERATURE = "temperature";
const FORECASTS = "forecasts";
const KINDS = "kinds.csv";

const missing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

const namesIn = async (dir: string): Promise<readonly string[]> =>
  readdir(dir).then(
    (names) => names.sort(),
    (error: unknown) => {
      if (missing(error)) return [];
      throw error;
    },
  );

/** What one file of the store holds; null when there is no such file. */
async function storedIn<Stored extends { readonly problems: readonly Problem[] }>(
  dir: string,
  name: string,
  read: (file: string, text: string) => Stored,
): Promise<Stored | { readonly problems: readonly Problem[] } | null> {
  const file = `${TEMPERATURE}/${name}`;
  const found = await readText(join(dir, file), file);
  if ("problem" in found) return { problems: [found.problem] };
  return found.text === null ? null : read(file, found.text);
}

const hoursIn = async (dir: string, name: string): Promise<ReturnType<typeof readStore>> => ({
  hours: [],
  problems: [],
  ...(await storedIn(dir, name, readStore)),
});

const daysIn = async (dir: string, name: string): Promise<ReturnType<typeof readDaily>> => ({
  days: [],
  problems: [],
  ...(await storedIn(dir, name, readDaily)),
});

/** What the store holds of every sensor up to a moment: nothing measured later is known then. */
export async function readSensors(
  dir: string,
  before: Instant,
): Promise<{ readonly sensors: readonly SensorRecords[]; readonly problems: readonly Problem[] }> {
  const problems: Problem[] = [];
  const bySensor = new Map<string, { readonly hours: StoredHour[]; readonly days: DayRange[] }>();
  const recordsOf = (sensor: string): { readonly hours: StoredHour[]; readonly days: DayRange[] } => {
    const records = bySensor.get(sensor) ?? { hours: [], days: [] };
    bySensor.set(sensor, records);
    return records;
  };
  for (const name of await namesIn(join(dir, TEMPERATURE))) {
    const [hourly, daily] = [storeOf(name), dailyOf(name)];
    if (hourly !== null) {
      const read = await hoursIn(dir, name);
      problems.push(...read.problems);
      const { hours } = recordsOf(hourly.sensor);
      for (const hour of read.hours) if (startOf(hour.hour) + HOUR <= before) hours.push(hour);
    } else if (daily !== null) {
      const read = await daysIn(dir, name);
      problems.push(...read.problems);
      recordsOf(daily.sensor).days.push(...read.days);
    }
  }
  const sensors = [...bySensor].map(([sensor, { hours, days }]) => ({
    sensor,
    hours: hours.sort((a, b) => a.hour - b.hour).map(recordOf),
    days: days.map(dailyRecordOf),
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
  const file = `${FORECASTS}/${newest.name}`;
  const opened = await openTable(join(dir, file), file);
  if (opened.table === null) return { forecast: null, problems: [opened.problem] };
  const cut: Problem[] = [];
  const rows = await allRows(opened.table, cut);
  const { forecast, problems } = readForecast({ file, rows });
  return {
    forecast: forecast === null ? null : { ...forecast, issued: newest.issued },
    problems: [...cut, ...problems],
  };
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
  const stands = await readText(path, file);
  const before = "text" in stands ? stands.text : "";
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
    const read = await hoursIn(dir, name);
    problems.push(...read.problems);
    texts.push({ name, text: writeStore(sensor, mergeHours(read.hours, imported.map(tidyHour))) });
  }
  if (problems.length > 0) return { written: [], problems };
  const written: Written[] = [];
  for (const { name, text } of texts) written.push(await writeWhole(dir, TEMPERATURE, name, text));
  return { written, problems };
}

/** Where sensors hang that an import placed. */
export async function readPlacesIn(
  dir: string,
  farm: FarmSettings,
): Promise<{ readonly places: Places; readonly problems: readonly Problem[] }> {
  const read = await storedIn(dir, PLACES_NAME, (file, text) => readPlaces(file, text, farm));
  return { places: new Map(), problems: [], ...read };
}

/** Remembers where a sensor hangs. */
export async function storePlace(
  dir: string,
  farm: FarmSettings,
  [sensor, hangs]: readonly [string, string],
): Promise<Written> {
  const { places } = await readPlacesIn(dir, farm);
  return writeWhole(dir, TEMPERATURE, PLACES_NAME, writePlaces(new Map([...places, [sensor, hangs]])));
}

/** Lays days over what a sensor's files of daily records hold, as {@link storeHours} does with hours. */
export async function storeDays(
  dir: string,
  sensor: string,
  days: readonly DayRange[],
): Promise<{ readonly written: readonly Written[]; readonly problems: readonly Problem[] }> {
  const years = [...new Set(days.map(({ date }) => Number(date.slice(0, 4))))];
  const stored = await Promise.all(
    years.map(async (year) => ({ year, ...(await daysIn(dir, dailyName(sensor, year))) })),
  );
  const problems = stored.flatMap((each) => each.problems);
  const written: Written[] = [];
  if (problems.length > 0) return { written, problems };
  for (const { year, days: before } of stored) {
    const own = days.filter(({ date }) => Number(date.slice(0, 4)) === year);
    const text = writeDaily(sensor, mergeDays(before, own));
    written.push(await writeWhole(dir, TEMPERATURE, dailyName(sensor, year), text));
  }
  return { written, problems };
}

/** What was said of kinds of logs before; nothing when the file is missing or spoiled. */
export async function readLogKinds(dir: string): Promise<readonly LogKind[]> {
  const file = `${TEMPERATURE}/${KINDS}`;
  const { table } = await openTable(join(dir, file), file);
  return table === null ? [] : readKinds(await allRows(table, []));
}

export const storeLogKinds = (dir: string, kinds: readonly LogKind[]): Promise<Written> =>
  writeWhole(dir, TEMPERATURE, KINDS, writeKinds(kinds));

/** Keeps a forecast beside the earlier ones. */
export const storeForecast = (dir: string, forecast: Forecast): Promise<Written> =>
  writeWhole(dir, FORECASTS, forecastName(forecast.issued), writeForecast(forecast));
