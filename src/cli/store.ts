import { readdir } from "node:fs/promises";
import { join } from "node:path";
import {
  type DayRange,
  dailyOf,
  dailyRecordOf,
  type FarmSettings,
  issuedOf,
  type LogKind,
  PLACES_NAME,
  type Places,
  readDaily,
  readForecast,
  readKinds,
  readPlaces,
  readStore,
  recordOf,
  type StoredHour,
  storeOf,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { HOUR, type Instant, startOf } from "../quantity/index.ts";
import type { Forecast, SensorRecords } from "../weather/index.ts";
import { allRows, type Opened, openTable } from "./table.ts";
import { readText } from "./textFile.ts";
import { within } from "./within.ts";

export const TEMPERATURE = "temperature";
export const FORECASTS = "forecasts";
export const KINDS = "kinds.csv";

const missing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

/** Names in a folder, in order; none when there is no such folder. */
export const namesIn = async (dir: string): Promise<readonly string[]> =>
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
  const found = await within(dir, file);
  if ("problem" in found) return { problems: [found.problem] };
  const text = await readText(found.path, file);
  if ("problem" in text) return { problems: [text.problem] };
  return text.text === null ? null : read(file, text.text);
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

/** Where sensors hang that an import placed. */
export async function readPlacesIn(
  dir: string,
  farm: Pick<FarmSettings, "tunnels">,
): Promise<{ readonly places: Places; readonly problems: readonly Problem[] }> {
  const read = await storedIn(dir, PLACES_NAME, (file, text) => readPlaces(file, text, farm));
  return { places: new Map(), problems: [], ...read };
}

/** What a file of kinds holds; nothing when it is none. */
export const kindsIn = async ({ table }: Opened): Promise<readonly LogKind[]> =>
  table === null ? [] : readKinds(await allRows(table, []));

/** What was said of kinds of logs before; nothing when the file is missing or spoiled. */
export async function readLogKinds(dir: string): Promise<readonly LogKind[]> {
  const file = `${TEMPERATURE}/${KINDS}`;
  const found = await within(dir, file);
  return "problem" in found ? [] : kindsIn(await openTable(found.path, file));
}
