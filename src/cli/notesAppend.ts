import { type NoteRow, noteColumns, type Row } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { encoded } from "./encode.ts";
import { decoded, type Encoding, textOrNot } from "./encoding.ts";
import { allRows, heldTable } from "./table.ts";

export const NOTES = "notes.csv";

const HEADER: readonly (keyof NoteRow)[] = ["when", "kind", "about", "value", "remark"];

/** What was put behind the bytes of a file, in parts that can be told again. */
export interface Appended {
  /** A line end that was missing, a header that was missing. */
  readonly before: string;
  /** Without their line ends. */
  readonly lines: readonly string[];
  readonly lineEnd: string;
}

/** The text that was put behind a file. */
export const appendedText = ({ before, lines, lineEnd }: Appended): string =>
  before + lines.map((line) => line + lineEnd).join("");

/** How a text file is written; one that is empty or not there as everything else here is. */
export function encodingOf(bytes: Uint8Array): Encoding {
  const kind = textOrNot(bytes);
  return "encoding" in kind ? kind.encoding : "utf-8";
}

const stop = (code: string, expected: string, received: string, hint: string): Problem => ({
  code,
  weight: "stops",
  file: NOTES,
  line: null,
  column: null,
  expected,
  received,
  hint,
});

/** A cell as a table of this separator holds it: in quotes where it must be. */
const cellText = (cell: string, separator: string): string =>
  cell.includes(separator) || /["\r\n]|^\s|\s$/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

async function rowsIn(
  bytes: Buffer,
): Promise<{ readonly separator: string; readonly rows: readonly Row[] } | Problem> {
  const { table, problem } = heldTable(bytes, NOTES);
  if (problem !== null) return problem;
  const problems: Problem[] = [];
  const rows = await allRows(table, problems);
  return problems[0] ?? { separator: table.separator, rows };
}

const cellsOf = (rows: readonly Row[]): string => JSON.stringify(rows.map(({ cells }) => cells));

/** The line end a file uses. The bytes are read as they are, since reading a table makes all line ends alike. */
const lineEndOf = (bytes: Buffer, encoding: Encoding): string =>
  /\r\n|\n|\r/u.exec(new TextDecoder(encoding).decode(bytes))?.[0] ?? "\n";

/**
 * Puts notes behind the bytes of notes.csv, in the form it has: separator, encoding, line ends and order of the columns.
 * What is there stays as it is, byte for byte.
 *
 * @param bytes - null: there is no such file yet.
 */
export async function withNotes(
  bytes: Buffer | null,
  notes: readonly NoteRow[],
): Promise<{ readonly bytes: Buffer; readonly appended: Appended } | { readonly problem: Problem }> {
  const own = bytes ?? Buffer.alloc(0);
  const read = await rowsIn(own);
  if ("code" in read) return { problem: read };
  const encoding = encodingOf(own);
  const lineEnd = lineEndOf(own, encoding);
  const columns = noteColumns({ file: NOTES, rows: read.rows });
  const headless = columns.size === 0;
  if (headless && read.rows.length > 0)
    return {
      problem: stop(
        "header-missing",
        "a first line that names the columns",
        "none",
        `Put this line on top: ${HEADER.join(",")}`,
      ),
    };
  const separator = headless ? "," : read.separator;
  const order = headless ? new Map<string, number>(HEADER.map((name, index) => [name, index])) : columns;
  if (!order.has("remark") && notes.some(({ remark }) => remark !== ""))
    return {
      problem: stop(
        "column-missing",
        'a column "remark"',
        "none",
        "Add it to the first line, or leave the remark out.",
      ),
    };
  const cells = notes.map((row) => {
    const line = new Array<string>(Math.max(...order.values()) + 1).fill("");
    for (const name of HEADER) if (order.has(name)) line[order.get(name)!] = row[name];
    return line;
  });
  const whole = decoded(own, encoding);
  const appended: Appended = {
    before: `${whole === "" || whole.endsWith("\n") ? "" : lineEnd}${headless ? HEADER.join(separator) + lineEnd : ""}`,
    lines: cells.map((line) => line.map((cell) => cellText(cell, separator)).join(separator)),
    lineEnd,
  };
  const more = encoded(appendedText(appended), encoding);
  if (more === null)
    return {
      problem: stop(
        "letters-missing",
        `remarks in the letters of ${encoding}, as the file is written`,
        "others",
        "Save the file as UTF-8, or write the remark in plain letters.",
      ),
    };
  const after = Buffer.concat([own, more]);
  const again = await rowsIn(after);
  const expected = [
    ...read.rows,
    ...(headless ? [{ line: 0, cells: HEADER }] : []),
    ...cells.map((line) => ({ line: 0, cells: line })),
  ];
  if ("code" in again || cellsOf(again.rows) !== cellsOf(expected))
    return {
      problem: stop(
        "notes-unlike",
        "a table to which a line can be added",
        "one that would then read otherwise",
        `Add by hand: ${appended.lines.join(lineEnd)}`,
      ),
    };
  return { bytes: after, appended };
}

/** Takes off the end of a file what was put there; null when it does not stand there unchanged. */
export function withoutNotes(bytes: Buffer, appended: Appended): Buffer | null {
  const encoding = encodingOf(bytes);
  const tail = encoded(appendedText(appended), encoding);
  if (tail === null || bytes.length < tail.length) return null;
  const rest = bytes.subarray(0, bytes.length - tail.length);
  if (!bytes.subarray(rest.length).equals(tail)) return null;
  const whole = decoded(rest, encoding);
  const atLineStart = whole === "" || whole.endsWith("\n") || /^[\r\n]/u.test(appended.before);
  return atLineStart ? rest : null;
}
