import { createReadStream } from "node:fs";
import { open } from "node:fs/promises";
import { pipeline, Readable } from "node:stream";
import { parse } from "csv-parse";
import { PLAIN, type Row, separatorOf } from "../folder/index.ts";

/** Bytes looked at to tell how a file is written. */
const SAMPLE = 65_536;

type Encoding = "utf8" | "utf16le" | "latin1";

/** A table opened, with what its first bytes tell. */
export interface OpenTable {
  readonly separator: string;
  /** First lines, cut by the separator without regard to quotes: to tell what kind of file it is. */
  readonly opening: readonly (readonly string[])[];
  /** `remarks`: lines that begin with # are passed over. In a logger's export they are not remarks. */
  rows(remarks?: "remarks"): AsyncGenerator<Row>;
}

/** Universal, unless the bytes are not: older loggers write one byte a letter, some spreadsheets two. */
function encodingOf(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf16le";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: true });
    return "utf8";
  } catch {
    return "latin1";
  }
}

async function* rowsOf(input: Readable, delimiter: string, remarks: boolean): AsyncGenerator<Row> {
  const parser = parse({
    delimiter,
    bom: true,
    info: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    ...(remarks ? { comment: "#", comment_no_infix: true } : {}),
  });
  // An error of the input ends the parser with it, and so comes out of the loop below.
  pipeline(input, parser, () => {});
  for await (const { info, record } of parser as AsyncIterable<{ info: { lines: number }; record: string[] }>)
    yield { line: info.lines, cells: record };
}

function tableOf(sample: Uint8Array, read: (encoding: Encoding) => Readable): OpenTable {
  const encoding = encodingOf(sample);
  const text = Buffer.from(sample)
    .toString(encoding)
    .replace(/^\uFEFF/u, "");
  const separator = separatorOf(text, PLAIN);
  const opening = text
    .split(/\r?\n/u, 60)
    .map((line) => line.split(separator).map((cell) => cell.replace(/^\s*"|"\s*$/gu, "")));
  return { separator, opening, rows: (remarks) => rowsOf(read(encoding), separator, remarks !== undefined) };
}

/** Opens a table on disk; it is read in pieces, however long it is. */
export async function openTable(path: string): Promise<OpenTable> {
  const file = await open(path);
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(SAMPLE), 0, SAMPLE, 0);
    return tableOf(buffer.subarray(0, bytesRead), (encoding) => createReadStream(path, { encoding }));
  } finally {
    await file.close();
  }
}

/** A table that is in memory already, as from standard input. */
export const heldTable = (bytes: Buffer): OpenTable =>
  tableOf(bytes.subarray(0, SAMPLE), (encoding) => Readable.from([bytes.toString(encoding)]));

/** All rows of a small table that people write, its remarks left out. */
export async function allRows(table: OpenTable): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for await (const row of table.rows("remarks")) rows.push(row);
  return rows;
}
