import {
  CHANGES,
  type DayRange,
  type Differing,
  type DifferingDay,
  dailyName,
  differingDays,
  type FarmSettings,
  forecastName,
  type LogKind,
  mergeDays,
  mergeHours,
  PLACES_NAME,
  readDaily,
  readPlaces,
  readStore,
  type StoredHour,
  storeName,
  tidyHour,
  withChanges,
  writeDaily,
  writeForecast,
  writeKinds,
  writePlaces,
  writeStore,
  yearOf,
} from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Forecast } from "../weather/index.ts";
import type { Batch, Written } from "./batch.ts";
import type { Stored } from "./recordImport.ts";
import { FORECASTS, KINDS, kindsIn, TEMPERATURE } from "./store.ts";
import { heldTable } from "./table.ts";

/** No logger is older, and no clock that is right is ahead of the second. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

/** A year that no file of the store can be of; null: there is none. */
function strangeYear(file: string, years: readonly number[]): Problem | null {
  const strange = years.find((year) => year < FIRST_YEAR || year > LAST_YEAR);
  if (strange === undefined) return null;
  return {
    code: "log-year",
    weight: "stops",
    file,
    line: null,
    column: null,
    expected: `readings of the years ${FIRST_YEAR} to ${LAST_YEAR}`,
    received: `some of ${strange}`,
    hint: "Look at the logger's clock, and at the order of the dates.",
  };
}

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
  const strange = strangeYear(hours[0]?.origin ?? "", years);
  if (strange !== null) return { written: [], problems: [strange] };
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
  differing: readonly (Differing | DifferingDay)[],
): Promise<Problem | null> {
  if (differing.length === 0) return null;
  const file = `${TEMPERATURE}/${CHANGES}`;
  const found = await batch.text(file);
  const journal = "problem" in found ? found : withChanges(found.text, batch.at, sensor, differing);
  if ("problem" in journal) return journal.problem;
  await batch.put(file, journal.text);
  return null;
}

/** Remembers where a sensor hangs. */
export async function storePlace(
  batch: Batch,
  farm: FarmSettings,
  [sensor, hangs]: readonly [string, string],
): Promise<Stored> {
  const file = `${TEMPERATURE}/${PLACES_NAME}`;
  const found = await batch.text(file);
  if ("problem" in found) return { written: [], problems: [found.problem] };
  const { places } = readPlaces(file, found.text ?? "", farm);
  const text = writePlaces(new Map([...places, [sensor, hangs]]));
  return { written: [await batch.put(file, text)], problems: [] };
}

/** Lays days over what a sensor's files of daily records hold, as {@link storeHours} does with hours. @param origin - Name of the file they came from. */
export async function storeDays(
  batch: Batch,
  sensor: string,
  days: readonly DayRange[],
  origin: string,
): Promise<Stored> {
  const years = [...new Set(days.map(({ date }) => Number(date.slice(0, 4))))];
  const strange = strangeYear(origin, years);
  if (strange !== null) return { written: [], problems: [strange] };
  const written: Written[] = [];
  for (const year of years) {
    const file = `${TEMPERATURE}/${dailyName(sensor, year)}`;
    const found = await batch.text(file);
    if ("problem" in found) return { written: [], problems: [found.problem] };
    const stands = found.text === null ? { days: [], problems: [] } : readDaily(file, found.text);
    if (stands.problems.length > 0) return { written: [], problems: stands.problems };
    const own = days.filter(({ date }) => date.startsWith(String(year)));
    const differing = differingDays(stands.days, own, origin);
    const journal = await storeChanges(batch, sensor, differing);
    if (journal !== null) return { written: [], problems: [journal] };
    const laid = await batch.put(file, writeDaily(sensor, mergeDays(stands.days, own)));
    written.push({ ...laid, differing: differing.length });
  }
  return { written, problems: [] };
}

/** Remembers what is said of kinds of logs. @param say - Lays it over what was said before. */
export async function storeLogKinds(
  batch: Batch,
  say: (before: readonly LogKind[]) => readonly LogKind[],
): Promise<Stored> {
  const file = `${TEMPERATURE}/${KINDS}`;
  const found = await batch.text(file);
  if ("problem" in found) return { written: [], problems: [found.problem] };
  const before = await kindsIn(heldTable(Buffer.from(found.text ?? ""), file));
  const kinds = say(before);
  if (kinds === before) return { written: [], problems: [] };
  return { written: [await batch.put(file, writeKinds(kinds))], problems: [] };
}

/** Keeps a forecast beside the earlier ones. */
export async function storeForecast(batch: Batch, forecast: Forecast): Promise<Stored> {
  const file = `${FORECASTS}/${forecastName(forecast.issued)}`;
  const found = await batch.text(file);
  if ("problem" in found) return { written: [], problems: [found.problem] };
  return { written: [await batch.put(file, writeForecast(forecast))], problems: [] };
}
