import type { NoteRow } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { bytesIn } from "./batch.ts";
import { commit } from "./durable.ts";
import { decoded } from "./encoding.ts";
import { encodingOf, NOTES, withNotes, withoutNotes } from "./notesAppend.ts";
import { type Remembered, remembered, remembering } from "./notesMemory.ts";
import { within } from "./within.ts";

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
  const found = await within(dir, NOTES);
  if ("problem" in found) return found.problem;
  const before = await bytesIn(found.path);
  const after = await withNotes(before, rows);
  if ("problem" in after) return after.problem;
  const last: Remembered = { at: new Date(now).toISOString(), created: before === null, ...after.appended };
  await commit(dir, [{ file: NOTES, bytes: after.bytes }, remembering([...(await remembered(dir)), last])]);
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
  const found = await within(dir, NOTES);
  if ("problem" in found) return { lines: [], problems: [found.problem] };
  const bytes = (await bytesIn(found.path)) ?? Buffer.alloc(0);
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
    await commit(dir, [
      { file: NOTES, bytes: last.created && rest.length === 0 ? null : rest },
      remembering(runs.slice(0, index)),
    ]);
  }
  return { lines: last.lines, problems: [] };
}
