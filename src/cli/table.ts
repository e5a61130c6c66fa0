import { createReadStream } from "node:fs";
import { open, readFile, stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { parse } from "csv-parse";
import { PLAIN, type Row, separatorOf } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { decoded, decoderOf, type Encoding, textOrNot, wholeLetters } from "./encoding.ts";
import { changedMeanwhile, notText, refusedBySystem } from "./unreadable.ts";

/** Bytes looked at to tell how a file is written. */
const SAMPLE = 65_536;

/** No line people or loggers write is longer; only one that a stray quote opens and nothing closes. [bytes] */
const LONGEST = 131_072;

/** A table that is held whole: a farm's fill a small part of it. [cells] */
const MOST = 1_000_000;

/** What takes rows answers it when it wants no more of them. */
const ENOUGH = "enough";

/** A table opened, with what its first bytes tell. */
export interface OpenTable {
  /** Name people know it by. */
  readonly file: string;
  /** Between the cells; with a blank, columns are lined up and a row holds its whole line as one cell. */
  readonly separator: string;
  readonly encoding: Encoding;
  /** First lines, cut by the separator without regard to quotes: to tell what kind of file it is. */
  readonly opening: readonly (readonly string[])[];
  /**
   * Gives every row to `take`, blank ones too, until that answers "enough".
   *
   * @param problems - Receives what keeps the rest of the table from being cut into rows.
   * @param remarks - "remarks": lines that begin with # are passed over. In a logger's export they are not remarks.
   * @returns Whether the last line ends as lines do.
   */
  walk(take: (row: Row) => unknown, problems: Problem[], remarks?: "remarks"): Promise<boolean>;
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

const tooLong = (file: string, line: number): Problem => ({
  code: "table-too-long",
  weight: "stops",
  file,
  line,
  column: null,
  expected: `a table of at most ${MOST} cells`,
  received: "more from this line on",
  hint: "Look whether it is the right file.",
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

/** @param changed - Told after reading: what was written into it meanwhile. */
function tableOf(
  file: string,
  kind: ReturnType<typeof textOrNot>,
  sample: Uint8Array,
  read: () => Readable,
  changed: () => Promise<readonly Problem[]>,
): Opened {
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
    let enough = false;
    async function* texts(): AsyncGenerator<string> {
      const decode = decoderOf(encoding);
      for await (const piece of read() as AsyncIterable<Uint8Array>) {
        if (enough) return;
        const decodedPiece = decode(piece);
        if (decodedPiece !== "") ended = decodedPiece.endsWith("\n");
        yield decodedPiece;
      }
      const last = decode();
      if (last !== "") ended = last.endsWith("\n");
      yield last;
    }
    const each = (row: Row): void => {
      if (!enough) enough = take(row) === ENOUGH;
    };
    const source = { file, separator, pieces: texts() };
    const amiss: Problem[] = [];
    await (separator === " "
      ? walkLines(source, each)
      : walkCells(source, each, amiss, remarks !== undefined));
    if (!enough) problems.push(...amiss, ...(await changed()));
    return ended;
  };
  return { table: { file, separator, encoding, opening, walk }, problem: null };
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
      const { size, mtimeMs } = await opened.stat();
      // One that grows faster than it is read would have no end.
      const read = (): Readable => createReadStream(path, size > 0 ? { end: size - 1 } : {});
      const sample = bytesRead < SAMPLE ? buffer.subarray(0, bytesRead) : wholeLetters(buffer);
      const first = textOrNot(sample);
      // The first letter that tells how a file is written may stand far down.
      const doubtful = bytesRead === SAMPLE && "encoding" in first && first.encoding === "utf-8";
      const kind = doubtful && !(await isUniversalThroughout(path)) ? textOrNot(await readFile(path)) : first;
      return tableOf(file, kind, sample, read, async () => {
        const now = await stat(path).catch(() => null);
        return now?.size === size && now.mtimeMs === mtimeMs ? [] : [changedMeanwhile(file)];
      });
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
  tableOf(
    file,
    textOrNot(bytes),
    bytes.subarray(0, SAMPLE),
    () => Readable.from([bytes]),
    async () => [],
  );

/** All rows of a small table that people write, its remarks and blank lines left out. */
export async function allRows(table: OpenTable, problems: Problem[]): Promise<readonly Row[]> {
  const rows: Row[] = [];
  let cells = 0;
  const take = (row: Row): typeof ENOUGH | undefined => {
    if (row.cells.length === 1 && row.cells[0]!.trim() === "") return undefined;
    cells += row.cells.length;
    if (cells > MOST) {
      problems.push(tooLong(table.file, row.line));
      return ENOUGH;
    }
    rows.push(row);
    return undefined;
  };
  await table.walk(take, problems, "remarks");
  return rows;
}
