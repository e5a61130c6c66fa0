import { readFile, unlink } from "node:fs/promises";
import { join } from "node:path";
import type { NoteRow } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { decoded } from "./encoding.ts";
import { encodingOf, NOTES, withNotes, withoutNotes } from "./notesAppend.ts";
import { type Remembered, remember, remembered } from "./notesMemory.ts";

/** What a file holds; null when it is not there. */
export const bytesIn = async (path: string): Promise<Buffer | null> =>
  readFile(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return null;
    throw error;
  });

async function replace(path: string, bytes: Buffer): Promise<void> {
  const { default: writeFileAtomic } = await import("write-file-atomic");
  await writeFileAtomic(path, bytes);
}

/**
 * Appends notes to notes.csv and remembers that it did. The folder must be locked.
 *
 * @returns What keeps them from being appended, or null.
 */
export async function appendNotes(
  dir: string,
  rows: readonly NoteRow[],
  now: number,
): Promise<Problem | null> {
  const path = join(dir, NOTES);
  const before = await bytesIn(path);
  const after = await withNotes(before, rows);
  if ("problem" in after) return after.problem;
  const last: Remembered = { at: new Date(now).toISOString(), created: before === null, ...after.appended };
  // Remembered first: what then cannot be written is not found again, and passed over.
  await remember(dir, [...(await remembered(dir)), last]);
  await replace(path, after.bytes);
  return null;
}

const problem = (line: number | null, expected: string, received: string, hint: string): Problem => ({
  code: "notes-changed",
  weight: "stops",
  file: NOTES,
  line,
  column: null,
  expected,
  received,
  hint,
});

/**
 * Takes the last notes appended off the end of notes.csv again. The folder must be locked.
 *
 * @param dry - Only say which.
 * @returns The lines taken out, or those to take out by hand because the file has changed since.
 */
export async function takeBackNotes(
  dir: string,
  dry: boolean,
): Promise<{ readonly lines: readonly string[]; readonly problems: readonly Problem[] }> {
  const path = join(dir, NOTES);
  const bytes = (await bytesIn(path)) ?? Buffer.alloc(0);
  const there = decoded(bytes, encodingOf(bytes)).split("\n");
  const runs = await remembered(dir);
  // What the grower has taken out by hand is taken back already.
  const index = runs.findLastIndex(({ lines }) => lines.some((line) => there.includes(line)));
  const last = runs[index];
  if (last === undefined)
    return {
      lines: [],
      problems: [
        problem(
          null,
          'a line that "leafpace note" has written',
          "none that is remembered",
          "Take lines out by hand.",
        ),
      ],
    };
  const rest = withoutNotes(bytes, last);
  if (rest === null)
    return {
      lines: [],
      problems: last.lines
        .filter((line) => there.includes(line))
        .map((line) =>
          problem(
            there.lastIndexOf(line) + 1,
            "the last notes at its end, as they were written",
            `changes since; there is still "${line}"`,
            "Take this line out by hand.",
          ),
        ),
    };
  if (!dry) {
    if (last.created && rest.length === 0) await unlink(path);
    else await replace(path, rest);
    await remember(dir, runs.slice(0, index));
  }
  return { lines: last.lines, problems: [] };
}
