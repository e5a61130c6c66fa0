import { createReadStream } from "node:fs";
import { open } from "node:fs/promises";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { parse } from "csv-parse";
import { PLAIN, type Row, separatorOf } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { decoded, decoderOf, type Encoding, textOrNot } from "./encoding.ts";
import { notText, refusedBySystem } from "./unreadable.ts";

/** Bytes looked at to tell how a file is written. */
const SAMPLE = 65_536;

/** No line people or loggers write is longer; only one that a stray quote opens and nothing closes. [bytes] */
const LONGEST = 131_072;

/** A table opened, with what its first bytes tell. */
export interface OpenTable {
  /** Between the cells; with a blank, columns are lined up and a row holds its whole line as one cell. */
  readonly separator: string;
  readonly encoding: Encoding;
  /** First lines, cut by the separator without regard to quotes: to tell what kind of file it is. */
  readonly opening: readonly (readonly string[])[];
  /**
   * Gives every row to `take`, blank ones too.
   *
   * @param problems - Receives what keeps the rest of the table from being cut into rows.
   * @param remarks - "remarks": lines that begin with # are passed over. In a logger's export they are not remarks.
   * @returns Whether the last line ends as lines do.
   */
  walk(take: (row: Row) => void, problems: Problem[], remarks?: "remarks"): Promise<boolean>;
}

/** A table, or why there is none. */
export type Opened =
  | { readonly table: OpenTable; readonly problem: null }
  | { readonly table: null; readonly problem: Problem };

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

/** Lines a row takes up besides its first. */
function linesWithin(cells: readonly string[]): number {
  let lines = 0;
  for (const cell of cells)
    for (let at = cell.indexOf("\n"); at >= 0; at = cell.indexOf("\n", at + 1)) lines += 1;
  return lines;
}

interface Source {
  readonly file: string;
  readonly separator: string;
  readonly pieces: AsyncIterable<string>;
}

/** Cuts lines whose columns are lined up with blanks: each is one cell. */
async function walkLines({ pieces }: Source, take: (row: Row) => void): Promise<void> {
  let rest = "";
  let line = 0;
  for await (const piece of pieces) {
    const lines = (rest + piece).split("\n");
    rest = lines.pop()!;
    for (const text of lines) take({ line: ++line, cells: [text] });
  }
  if (rest !== "") take({ line: line + 1, cells: [rest] });
}

async function walkCells(
  { file, separator, pieces }: Source,
  take: (row: Row) => void,
  problems: Problem[],
  remarks: boolean,
): Promise<void> {
  let line = 1;
  let columns = 0;
  let stray = false;
  const each = (cells: string[]): void => {
    const own = line;
    const within = linesWithin(cells);
    line += 1 + within;
    if (stray || (own === 1 && statedSeparator(cells.join(separator)) !== null)) return;
    if (remarks && cells[0]!.startsWith("#")) return;
    columns ||= cells.length;
    // A logger's remark may hold what looks like a row, and its quotes are closed; people leave some open.
    if (within > 0 && (remarks || cells.length !== columns) && swallowed(cells, separator, columns)) {
      stray = true;
      problems.push(strayQuote(file, own, `one that runs on to line ${own + within}`));
    } else take({ line: own, cells });
  };
  const parser = parse({
    delimiter: separator,
    max_record_size: LONGEST,
    record_delimiter: "\n",
    relax_column_count: true,
    relax_quotes: true,
  });
  try {
    // Counting lines here is several times faster than asking the parser for them with every row.
    await pipeline(pieces, parser.on("data", each));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== "CSV_QUOTE_NOT_CLOSED" && code !== "CSV_MAX_RECORD_SIZE") throw error;
    problems.push(strayQuote(file, line, "one that runs on to the end of the file"));
  }
}

function tableOf(file: string, sample: Uint8Array, read: () => Readable): Opened {
  const kind = textOrNot(sample);
  if ("looksLike" in kind) return { table: null, problem: notText(file, kind.looksLike) };
  const { encoding } = kind;
  const text = decoded(sample, encoding);
  const separator = statedSeparator(text) ?? separatorOf(text, PLAIN);
  const opening = text
    .split("\n", 60)
    .map((line) =>
      line.split(separator === " " ? /\s+/u : separator).map((cell) => cell.replace(/^\s*"|"\s*$/gu, "")),
    );
  const walk: OpenTable["walk"] = async (take, problems, remarks) => {
    let ended = true;
    async function* texts(): AsyncGenerator<string> {
      const decode = decoderOf(encoding);
      for await (const piece of read() as AsyncIterable<Uint8Array>) {
        const decodedPiece = decode(piece);
        if (decodedPiece !== "") ended = decodedPiece.endsWith("\n");
        yield decodedPiece;
      }
      const last = decode();
      if (last !== "") ended = last.endsWith("\n");
      yield last;
    }
    const source = { file, separator, pieces: texts() };
    await (separator === " "
      ? walkLines(source, take)
      : walkCells(source, take, problems, remarks !== undefined));
    return ended;
  };
  return { table: { separator, encoding, opening, walk }, problem: null };
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
      return tableOf(file, buffer.subarray(0, bytesRead), () => createReadStream(path));
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
  tableOf(file, bytes.subarray(0, SAMPLE), () => Readable.from([bytes]));

/** All rows of a small table that people write, its remarks and blank lines left out. */
export async function allRows(table: OpenTable, problems: Problem[]): Promise<readonly Row[]> {
  const rows: Row[] = [];
  const take = (row: Row): void => {
    if (row.cells.length > 1 || row.cells[0]!.trim() !== "") rows.push(row);
  };
  await table.walk(take, problems, "remarks");
  return rows;
}
