import { access, readFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { catalogue, type Farm } from "../farm/index.ts";
import {
  type FarmSettings,
  type FolderFiles,
  farmFile,
  readFolder,
  type Table,
  withPlaces,
} from "../folder/index.ts";
import type { Problem, Read } from "../problem/index.ts";
import type { OtherUnits } from "../quantity/index.ts";
import type { Context } from "./context.ts";
import { readPlacesIn } from "./store.ts";
import { allRows, openTable } from "./table.ts";

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

async function tableIn(dir: string, file: string): Promise<Table | null> {
  const path = join(dir, file);
  if (!(await there(path))) return null;
  const { table } = await openTable(path, file);
  return table === null ? null : { file, rows: await allRows(table, []) };
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
  return { dir, ...(await read(dir)) };
}

/** A farm with the sensors that imports placed. */
async function placed<Known extends FarmSettings>(
  dir: string,
  { value, problems }: Read<Known>,
): Promise<Read<Known>> {
  if (value === null) return { value, problems };
  const known = await readPlacesIn(dir, value);
  return { value: withPlaces(value, known.places), problems: [...problems, ...known.problems] };
}

/** Finds and reads the whole farm folder. */
export const openFarm = (context: Context): Promise<FarmFolder<Farm>> =>
  inFolder(context, async (dir) => {
    const [text, successions, pieces, notes] = await Promise.all([
      readFile(join(dir, "farm.yaml"), "utf8"),
      tableIn(dir, "successions.csv"),
      tableIn(dir, "pieces.csv"),
      tableIn(dir, "notes.csv"),
    ]);
    const files: FolderFiles = { farm: { file: "farm.yaml", text }, successions, pieces, notes };
    const known = catalogue();
    return placed(dir, await withUnits((other) => readFolder(files, known, other)));
  });

/** Finds the folder and reads farm.yaml alone: enough to know the zone and the sensors. */
export const openSettings = (context: Context): Promise<FarmFolder<FarmSettings>> =>
  inFolder(context, async (dir) => {
    const text = await readFile(join(dir, "farm.yaml"), "utf8");
    const known = catalogue();
    const { farm, problems } = await withUnits((other) => farmFile("farm.yaml", text, known, other));
    return farm === null ? { value: null, problems } : placed(dir, { value: farm, problems });
  });
