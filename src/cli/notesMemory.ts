import { readFile, unlink } from "node:fs/promises";
import { join } from "node:path";
import type { Appended } from "./notesAppend.ts";

/**
 * What "leafpace note" appended to notes.csv, for --undo: beside the lock, hidden as it is, so that nobody takes it for
 * something to fill in. Losing it loses nothing but the taking back.
 */
const MEMORY = ".leafpace.undo.json";

const FORMAT = "leafpace undo";
const REMARK =
  'What "leafpace note" appended to notes.csv, the last at the end, so that "leafpace note --undo" can take it back. It may be deleted.';

/** How many runs can be taken back. judgement */
const KEPT = 20;

/** One run of the command. */
export interface Remembered extends Appended {
  /** As 2026-04-20T15:00:00.000Z. */
  readonly at: string;
  /** There was no notes.csv before. */
  readonly created: boolean;
}

const isText = (value: unknown): value is string => typeof value === "string";

function isRemembered(value: unknown): value is Remembered {
  const { at, before, lines, lineEnd, created } = value as Partial<Remembered>;
  return (
    [at, before, lineEnd].every(isText) &&
    typeof created === "boolean" &&
    Array.isArray(lines) &&
    lines.every(isText)
  );
}

/** What is remembered, the last run at the end; nothing when the file is not there or not as it was written. */
export async function remembered(dir: string): Promise<readonly Remembered[]> {
  try {
    const { format, appended } = JSON.parse(await readFile(join(dir, MEMORY), "utf8"));
    return format === FORMAT && Array.isArray(appended) && appended.every(isRemembered) ? appended : [];
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return [];
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
    throw error;
  }
}

export async function remember(dir: string, appended: readonly Remembered[]): Promise<void> {
  const path = join(dir, MEMORY);
  if (appended.length === 0) return unlink(path).catch(() => {});
  const { default: writeFileAtomic } = await import("write-file-atomic");
  await writeFileAtomic(
    path,
    `${JSON.stringify({ format: FORMAT, version: 1, remark: REMARK, appended: appended.slice(-KEPT) }, null, 2)}\n`,
  );
}
