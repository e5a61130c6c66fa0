import { createReadStream } from "node:fs";
import { open, readFile } from "node:fs/promises";
import { pipeline, Readable } from "node:stream";
import { type Options, parse } from "csv-parse";
import { PLAIN, type Row, separatorOf } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { decoded, decoderOf, type Encoding, textOrNot, wholeLetters } from "./encoding.ts";
import { notText, refusedBySystem } from "./unreadable.ts";

/** Bytes looked at to tell how a file is written. */
const SAMPLE = 65_536;

/** No line people or loggers write is longer; only one that a stray quote opens and nothing closes. [bytes] */
const LONGEST = 131_072;

/** A table opened, with what its first bytes tell. */
export interface OpenTable {
  readonly separator: string;
  /** First lines, cut by the separator without regard to quotes: to tell what kind of file it is. */
  readonly opening: readonly (readonly string[])[];
  /** @param problems - Receives what keeps the rest of the table from being cut into rows. */
  rows(problems: Problem[]): AsyncGenerator<Row>;
  /** The same, with lines that begin with # passed over. In a logger's export they are not remarks. */
  rowsWithoutRemarks(problems: Problem[]): AsyncGenerator<Row>;
}

/** A table, or why there is none. */
export type Opened =
  | { readonly table: OpenTable; readonly problem: null }
  | { readonly table: null; readonly problem: Problem };

/** Where the parser stands: lines read, and those of them that belong to no row. */
interface Progress {
  readonly lines: number;
  readonly comment_lines: number;
  readonly empty_lines: number;
}

/** Line on which the row begins that follows what was read before. */
const beginning = (before: Progress, now: Progress): number =>
  before.lines + 1 + (now.comment_lines - before.comment_lines) + (now.empty_lines - before.empty_lines);

/** A cell that has swallowed rows: a line within it has at least half of the header's separators. */
const swallowed = (cells: readonly string[], separator: string, columns: number): boolean =>
  cells.some((cell) =>
    cell
      .split("\n")
      .slice(1)
      .some((line) => line.split(separator).length > Math.max(2, columns / 2)),
  );

const strayQuote = (file: string, line: number, received: string): Problem => ({
  code: "quote-stray",
  weight: "stops",
  file,
  line,
  column: null,
  expected: "a quote that is closed again on its line",
  received,
  hint: 'Take the stray " out; for inches write in.',
});

/** The separator a spreadsheet states on a line of its own, as sep=; */
const statedSeparator = (text: string): string | null => /^sep=(.)\s*(?:\n|$)/iu.exec(text)?.[1] ?? null;

/** How the parser knows a remark; none without. */
type Remarks = Pick<Options, "comment" | "comment_no_infix">;

async function* rowsOf(
  file: string,
  input: Readable,
  encoding: Encoding,
  separator: string,
  problems: Problem[],
  remarks: Remarks,
): AsyncGenerator<Row> {
  const parser = parse({
    delimiter: separator,
    info: true,
    max_record_size: LONGEST,
    record_delimiter: "\n",
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    ...remarks,
  });
  async function* texts(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
    const decode = decoderOf(encoding);
    for await (const piece of pieces) yield decode(piece);
    yield decode();
  }
  // An error of the input ends the parser with it, and so comes out of the loop below.
  pipeline(input, texts, parser, () => {});
  let before: Progress = { lines: 0, comment_lines: 0, empty_lines: 0 };
  let columns = 0;
  try {
    for await (const { info, record } of parser as AsyncIterable<{ info: Progress; record: string[] }>) {
      const line = beginning(before, info);
      if (columns === 0 && statedSeparator(record.join(separator)) !== null) {
        before = info;
        continue;
      }
      columns = Math.max(columns, record.length);
      if (info.lines > line && swallowed(record, separator, columns)) {
        problems.push(strayQuote(file, line, `one that runs on to line ${info.lines}`));
        return;
      }
      before = info;
      yield { line, cells: record };
    }
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== "CSV_QUOTE_NOT_CLOSED" && code !== "CSV_MAX_RECORD_SIZE") throw error;
    const line = beginning(before, error as unknown as Progress);
    problems.push(strayQuote(file, line, "one that runs on to the end of the file"));
  }
}

function tableOf(
  file: string,
  kind: ReturnType<typeof textOrNot>,
  sample: Uint8Array,
  read: () => Readable,
): Opened {
  if ("looksLike" in kind) return { table: null, problem: notText(file, kind.looksLike) };
  const { encoding } = kind;
  const text = decoded(sample, encoding);
  const separator = statedSeparator(text) ?? separatorOf(text, PLAIN);
  const opening = text
    .split("\n", 60)
    .map((line) => line.split(separator).map((cell) => cell.replace(/^\s*"|"\s*$/gu, "")));
  const cut = (problems: Problem[], remarks: Remarks): AsyncGenerator<Row> =>
    rowsOf(file, read(), encoding, separator, problems, remarks);
  return {
    table: {
      separator,
      opening,
      rows: (problems) => cut(problems, {}),
      rowsWithoutRemarks: (problems) => cut(problems, { comment: "#", comment_no_infix: true }),
    },
    problem: null,
  };
}

/** Does all of a file read as its first bytes do, which are universal? */
async function isUniversalThroughout(path: string): Promise<boolean> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  try {
    for await (const piece of createReadStream(path) as AsyncIterable<Uint8Array>)
      decoder.decode(piece, { stream: true });
    decoder.decode();
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ERR_ENCODING_INVALID_ENCODED_DATA") return false;
    throw error;
  }
}

/**
 * Opens a table on disk; it is read in pieces, however long it is.
 *
 * @param file - Name people know it by, as in problems.
 */
export async function openTable(path: string, file: string): Promise<Opened> {
  try {
    const opened = await open(path);
    try {
      const { bytesRead, buffer } = await opened.read(Buffer.alloc(SAMPLE), 0, SAMPLE, 0);
      const sample = bytesRead < SAMPLE ? buffer.subarray(0, bytesRead) : wholeLetters(buffer);
      const first = textOrNot(sample);
      // The first letter that tells how a file is written may stand far down.
      const doubtful = bytesRead === SAMPLE && "encoding" in first && first.encoding === "utf-8";
      const kind = doubtful && !(await isUniversalThroughout(path)) ? textOrNot(await readFile(path)) : first;
      return tableOf(file, kind, sample, () => createReadStream(path));
    } finally {
      await opened.close();
    }
  } catch (error) {
    const problem = refusedBySystem(error, file);
    if (problem === null) throw error;
    return { table: null, problem };
  }
}

/** A table that is in memory already, as from standard input. */
export const heldTable = (bytes: Buffer, file: string): Opened =>
  tableOf(file, textOrNot(bytes), bytes.subarray(0, SAMPLE), () => Readable.from([bytes]));

/** All rows of a small table that people write, its remarks left out. */
export async function allRows(table: OpenTable, problems: Problem[]): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for await (const row of table.rowsWithoutRemarks(problems)) rows.push(row);
  return rows;
}
