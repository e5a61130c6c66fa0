import { access } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Catalogue, catalogue, type Farm } from "../farm/index.ts";
import {
  type FarmSettings,
  type FolderFiles,
  farmFile,
  LEARNED_NAME,
  readFolder,
  readLoosely,
  type Table,
  withPlaces,
} from "../folder/index.ts";
import type { Problem, Read } from "../problem/index.ts";
import type { OtherUnits } from "../quantity/index.ts";
import type { Context } from "./context.ts";
import { settled } from "./lock.ts";
import { NOTES } from "./notesAppend.ts";
import { readPlacesIn } from "./store.ts";
import { allRows, openTable } from "./table.ts";
import { readText } from "./textFile.ts";
import { within } from "./within.ts";

/** Twenty tunnels with everything said take 10 kB; the time to read settings grows with the square of their length. [bytes] */
const LARGEST_SETTINGS = 100_000;

/** A folder with its farm, or with what keeps it from being read. */
export type FarmFolder<Value> = { readonly dir: string } & Read<Value>;

const there = async (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** The folder named with --farm, else the nearest one upward that holds a farm.yaml. */
async function findFolder({ farm, io }: Context): Promise<string | null> {
  if (farm !== null) return (await there(join(farm, "farm.yaml"))) ? farm : null;
  for (let dir = io.cwd; ; dir = dirname(dir)) {
    if (await there(join(dir, "farm.yaml"))) return dir;
    if (dirname(dir) === dir) return null;
  }
}

/** A table of the folder; null when it is not there or cannot be opened, which is a problem. */
async function tableIn(dir: string, file: string, problems: Problem[]): Promise<Table | null> {
  const path = join(dir, file);
  if (!(await there(path))) return null;
  const { table, problem } = await openTable(path, file);
  if (problem !== null) problems.push(problem);
  return table === null ? null : { file, rows: await allRows(table, problems) };
}

/** What the program writes into must stand in the folder itself. */
async function notesIn(dir: string, problems: Problem[]): Promise<Table | null> {
  const found = await within(dir, NOTES);
  if ("path" in found) return tableIn(dir, NOTES, problems);
  problems.push(found.problem);
  return null;
}

async function settingsIn(dir: string, problems: Problem[]): Promise<string | null> {
  const read = await readText(join(dir, "farm.yaml"), "farm.yaml", LARGEST_SETTINGS);
  if ("text" in read) return read.text;
  problems.push(read.problem);
  return null;
}

const noFolder = ({ farm, io }: Context): Problem => ({
  code: "farm-missing",
  weight: "stops",
  file: "farm.yaml",
  line: null,
  column: null,
  expected: farm === null ? `this file in ${io.cwd} or in a folder above` : `this file in ${farm}`,
  received: "no such file",
  hint: 'Begin a folder with "leafpace start my-farm", or name one with --farm.',
});

/** Reads with the trade's units; only when a file holds another one, with the library that knows them all. */
async function withUnits<Value extends { readonly problems: readonly Problem[] }>(
  read: (other?: OtherUnits) => Value,
): Promise<Value> {
  const first = read();
  if (!first.problems.some(({ code }) => code === "unit-unknown")) return first;
  const { otherUnits } = await import("./otherUnits.ts");
  return read(otherUnits);
}

async function inFolder<Value>(
  context: Context,
  read: (dir: string) => Promise<Read<Value>>,
): Promise<FarmFolder<Value>> {
  const dir = await findFolder(context);
  if (dir === null) return { dir: context.io.cwd, value: null, problems: [noFolder(context)] };
  if (context.verbose) context.say(`Reading ${join(dir, "farm.yaml")}\n`);
  const unsettled = await settled(dir);
  return unsettled.length > 0 ? { dir, value: null, problems: unsettled } : { dir, ...(await read(dir)) };
}

/** A farm with the sensors that imports placed. */
async function placed<Known extends Pick<FarmSettings, "sensors" | "tunnels">>(
  dir: string,
  { value, problems }: Read<Known>,
): Promise<Read<Known>> {
  if (value === null) return { value, problems };
  const known = await readPlacesIn(dir, value);
  return { value: withPlaces(value, known.places), problems: [...problems, ...known.problems] };
}

/** Finds the farm folder and reads its texts. */
const withFiles = (
  context: Context,
  read: (files: FolderFiles, known: Catalogue, other?: OtherUnits) => Read<Farm>,
): Promise<FarmFolder<Farm>> =>
  inFolder(context, async (dir) => {
    const unread: Problem[] = [];
    const [text, successions, pieces, notes, normals, learned] = await Promise.all([
      settingsIn(dir, unread),
      tableIn(dir, "successions.csv", unread),
      tableIn(dir, "pieces.csv", unread),
      notesIn(dir, unread),
      tableIn(dir, "normals.csv", unread),
      tableIn(dir, LEARNED_NAME, unread),
    ]);
    const farm = text === null ? null : { file: "farm.yaml", text };
    const files: FolderFiles = { farm, successions, pieces, notes, normals, learned, unread };
    const known = catalogue();
    return placed(dir, await withUnits((other) => read(files, known, other)));
  });

/** Finds and reads the whole farm folder. */
export const openFarm = (context: Context): Promise<FarmFolder<Farm>> => withFiles(context, readFolder);

/** Finds the farm folder and reads of it what can be read: enough for a note about what is known. */
export const openLoosely = (context: Context): Promise<FarmFolder<Farm>> => withFiles(context, readLoosely);

/** Finds the folder and reads farm.yaml alone: enough to know the zone and the sensors. */
export const openSettings = (context: Context): Promise<FarmFolder<FarmSettings>> =>
  inFolder(context, async (dir) => {
    const unread: Problem[] = [];
    const text = await settingsIn(dir, unread);
    if (text === null) return { value: null, problems: unread };
    const known = catalogue();
    const { farm, problems } = await withUnits((other) => farmFile("farm.yaml", text, known, other));
    return farm === null ? { value: null, problems } : placed(dir, { value: farm, problems });
  });
