import { readdir } from "node:fs/promises";
import { join } from "node:path";
import {
  CHANGES,
  type Differing,
  forecastName,
  issuedOf,
  mergeHours,
  readForecast,
  readStore,
  recordOf,
  type StoredHour,
  storeName,
  storeOf,
  tidyHour,
  withChanges,
  writeForecast,
  writeStore,
  yearOf,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, startOf } from "../quantity/index.ts";
import type { Forecast, SensorRecords } from "../weather/index.ts";
import type { Batch, Written } from "./batch.ts";
import type { Stored } from "./recordImport.ts";
import { allRows, openTable } from "./table.ts";
import { readText } from "./textFile.ts";
import { within } from "./within.ts";

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

/** Hours of one file of the store; none when there is no such file. */
async function storedIn(dir: string, name: string): Promise<ReturnType<typeof readStore>> {
  const file = `${TEMPERATURE}/${name}`;
  const found = await within(dir, file);
  if ("problem" in found) return { hours: [], problems: [found.problem] };
  const read = await readText(found.path, file);
  if ("problem" in read) return { hours: [], problems: [read.problem] };
  return read.text === null ? { hours: [], problems: [] } : readStore(file, read.text);
}

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
    const read = await storedIn(dir, name);
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

interface Kept {
  readonly name: string;
  readonly issued: Instant;
}

/** Forecasts kept that were issued by a moment, the newest first. */
const keptBy = async (dir: string, before: Instant): Promise<readonly Kept[]> =>
  (await namesIn(join(dir, FORECASTS)))
    .map((name) => ({ name, issued: issuedOf(name) }))
    .filter((file): file is Kept => file.issued !== null && file.issued <= before)
    .sort((a, b) => b.issued - a.issued);

interface ReadKept {
  readonly forecast: Forecast | null;
  readonly problems: readonly Problem[];
}

/** The newest forecast issued by a moment, or null. */
export async function readNewestForecast(dir: string, before: Instant): Promise<ReadKept> {
  const newest = (await keptBy(dir, before))[0];
  return newest === undefined ? { forecast: null, problems: [] } : readKept(dir, newest);
}

/** Forecasts issued from one moment to another, those that cannot be read left out: they say nothing of what lies ahead. */
export async function readForecasts(
  dir: string,
  from: Instant,
  before: Instant,
): Promise<readonly Forecast[]> {
  const read: Forecast[] = [];
  for (const kept of await keptBy(dir, before)) {
    if (kept.issued < from) break;
    const { forecast } = await readKept(dir, kept);
    if (forecast !== null) read.push(forecast);
  }
  return read;
}

async function readKept(dir: string, { name, issued }: Kept): Promise<ReadKept> {
  const file = `${FORECASTS}/${name}`;
  const found = await within(dir, file);
  if ("problem" in found) return { forecast: null, problems: [found.problem] };
  const opened = await openTable(found.path, file);
  if (opened.table === null) return { forecast: null, problems: [opened.problem] };
  const cut: Problem[] = [];
  const rows = await allRows(opened.table, cut);
  const { forecast, problems } = readForecast({ file, rows });
  return {
    forecast: forecast === null ? null : { ...forecast, issued },
    problems: [...cut, ...problems],
  };
}

/** No logger is older, and no clock that is right is ahead of the second. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

const strangeYear = (file: string, year: number): Problem => ({
  code: "log-year",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected: `readings of the years ${FIRST_YEAR} to ${LAST_YEAR}`,
  received: `some of ${year}`,
  hint: "Look at the logger's clock, and at the order of the dates.",
});

/**
 * Lays hours over what a sensor's files hold, and those that differed before into the journal.
 *
 * @returns Problems when a file of the store cannot be read: then nothing of this sensor is laid.
 */
export async function storeHours(
  batch: Batch,
  sensor: string,
  hours: readonly StoredHour[],
): Promise<Stored> {
  const stood: StoredHour[] = [];
  const years = [...new Set(hours.map(({ hour }) => yearOf(hour)))];
  const strange = years.find((year) => year < FIRST_YEAR || year > LAST_YEAR);
  if (strange !== undefined) return { written: [], problems: [strangeYear(hours[0]!.origin, strange)] };
  for (const year of years) {
    const file = `${TEMPERATURE}/${storeName(sensor, year)}`;
    const found = await batch.text(file);
    if ("problem" in found) return { written: [], problems: [found.problem] };
    const stands = found.text === null ? { hours: [], problems: [] } : readStore(file, found.text);
    if (stands.problems.length > 0) return { written: [], problems: stands.problems };
    for (const hour of stands.hours) stood.push(hour);
  }
  const merged = mergeHours(stood, hours.map(tidyHour));
  const journal = await storeChanges(batch, sensor, merged.differing);
  if (journal !== null) return { written: [], problems: [journal] };
  const written: Written[] = [];
  for (const year of years) {
    const own = merged.hours.filter(({ hour }) => yearOf(hour) === year);
    const differing = merged.differing.filter(({ after }) => yearOf(after.hour) === year).length;
    const laid = await batch.put(`${TEMPERATURE}/${storeName(sensor, year)}`, writeStore(sensor, own));
    written.push({ ...laid, differing });
  }
  return { written, problems: [] };
}

async function storeChanges(
  batch: Batch,
  sensor: string,
  differing: readonly Differing[],
): Promise<Problem | null> {
  if (differing.length === 0) return null;
  const file = `${TEMPERATURE}/${CHANGES}`;
  const found = await batch.text(file);
  const journal = "problem" in found ? found : withChanges(found.text, batch.at, sensor, differing);
  if ("problem" in journal) return journal.problem;
  await batch.put(file, journal.text);
  return null;
}

/** Keeps a forecast beside the earlier ones. */
export async function storeForecast(batch: Batch, forecast: Forecast): Promise<Stored> {
  const file = `${FORECASTS}/${forecastName(forecast.issued)}`;
  const found = await batch.text(file);
  if ("problem" in found) return { written: [], problems: [found.problem] };
  return { written: [await batch.put(file, writeForecast(forecast))], problems: [] };
}
