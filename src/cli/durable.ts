import { access, mkdir, open, readdir, readFile, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/** A file of the farm folder as it is to be; `bytes` null: gone. */
export interface Change {
  /** Name within the folder, with / between its parts. */
  readonly file: string;
  readonly bytes: Uint8Array | null;
}

/** A new file waits beside its place under its name with this before it. */
const WAITING = ".leafpace-new.";

/** What is to be put in place; with it on the disk, all of it counts as written. */
const INTENT = ".leafpace.intent.json";
const FORMAT = "leafpace intent";

/** Folders anything is written into. */
const FOLDERS = ["", "temperature", "forecasts", "sheets"];

/** Names anything is written under: an intent that names others is none of ours. */
const OWN = /^(?:notes\.csv|\.leafpace\.\w+\.json|(?:temperature|forecasts|sheets)\/[\w-][\w.-]*)$/u;

type Step = Pick<Change, "file"> & { readonly gone: boolean };

const waiting = (path: string): string => join(dirname(path), WAITING + basename(path));

const unlessAbsent = (error: unknown): null => {
  if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
  throw error;
};

/** Codes of systems on which a folder cannot be flushed, and need not be. */
const NO_FLUSH = ["EISDIR", "EPERM", "EACCES", "EINVAL", "ENOTSUP", "EBADF"];

/** Flushes the names in a folder to the disk, so that a renaming outlives a power cut. */
async function flushFolder(path: string): Promise<void> {
  try {
    const folder = await open(path);
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch (error) {
    if (!NO_FLUSH.includes((error as NodeJS.ErrnoException).code ?? "")) throw error;
  }
}

/** Writes a file beside its place and flushes it, with the permissions of what stands there. */
async function put(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const before = await stat(path).catch(unlessAbsent);
  const file = await open(waiting(path), "w");
  try {
    await file.writeFile(bytes);
    if (before !== null) {
      await file.chmod(before.mode);
      await file.chown(before.uid, before.gid).catch(() => {});
    }
    await file.sync();
  } finally {
    await file.close();
  }
}

/** An error of the system with the name people know the file by. */
export const about = (error: unknown, file: string): unknown =>
  error instanceof Error && "code" in error ? Object.assign(error, { path: file }) : error;

/** Puts what waits in its place. `again`: some of it may be there already. */
async function place(dir: string, steps: readonly Step[], again: boolean): Promise<void> {
  for (const { file, gone } of steps) {
    const path = join(dir, file);
    try {
      if (gone) await unlink(path).catch(unlessAbsent);
      else if (again) await rename(waiting(path), path).catch(unlessAbsent);
      else await rename(waiting(path), path);
    } catch (error) {
      throw about(error, file);
    }
  }
  for (const folder of new Set(steps.map(({ file }) => dirname(join(dir, file)))))
    await flushFolder(folder).catch(unlessAbsent);
}

/** Flushed, so that the list never comes back to take away what was written later. */
async function forget(dir: string): Promise<void> {
  await unlink(join(dir, INTENT));
  await flushFolder(dir);
}

/** Takes away what waits and was never meant to be put in place. */
async function clear(dir: string): Promise<void> {
  for (const folder of FOLDERS) {
    const names = (await readdir(join(dir, folder)).catch(() => null)) ?? [];
    for (const name of names)
      if (name.startsWith(WAITING)) await unlink(join(dir, folder, name)).catch(unlessAbsent);
  }
}

/**
 * Writes files so that after a kill or a power cut, and the next run, all of them are as they are to be or all as they
 * were. The folder must be locked.
 *
 * All are written beside their places and flushed, which takes the room they need; then the list of them is put in place
 * by one renaming, and from there on they count as written: whoever comes next finishes what is left.
 */
export async function commit(dir: string, changes: readonly Change[]): Promise<void> {
  const steps = changes.map(({ file, bytes }) => ({ file, gone: bytes === null }));
  const intent = join(dir, INTENT);
  try {
    for (const { file, bytes } of changes) {
      if (bytes === null) continue;
      await put(join(dir, file), bytes).catch((error: unknown) => {
        throw about(error, file);
      });
    }
    if (steps.length > 1) {
      const list = Buffer.from(JSON.stringify({ format: FORMAT, version: 1, steps }));
      await put(intent, list).catch((error: unknown) => {
        throw about(error, steps[0]!.file);
      });
      await rename(waiting(intent), intent);
      await flushFolder(dir);
    }
  } catch (error) {
    await clear(dir).catch(() => {});
    throw error;
  }
  await place(dir, steps, false);
  if (steps.length > 1) await forget(dir);
}

const isStep = (value: unknown): value is Step => {
  const { file, gone } = value as Partial<Step>;
  return typeof file === "string" && OWN.test(file) && typeof gone === "boolean";
};

/** What was being put in place when a run ended; nothing when the list is not as it was written. */
function stepsIn(text: string): readonly Step[] {
  try {
    const { format, steps } = JSON.parse(text);
    return format === FORMAT && Array.isArray(steps) && steps.every(isStep) ? steps : [];
  } catch {
    return [];
  }
}

/** Is there something that a run had begun to put in place? */
export const unfinished = (dir: string): Promise<boolean> =>
  access(join(dir, INTENT)).then(
    () => true,
    () => false,
  );

/** Finishes or clears away what a run had begun to write that was killed. The folder must be locked. */
export async function recover(dir: string): Promise<void> {
  const text = await readFile(join(dir, INTENT), "utf8").catch(unlessAbsent);
  if (text !== null) {
    await place(dir, stepsIn(text), true);
    await forget(dir);
  }
  await clear(dir);
}
