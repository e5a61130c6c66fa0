import { join } from "node:path";
import { bytesIn } from "./batch.ts";
import type { Change } from "./durable.ts";
import type { Splice } from "./splice.ts";

/**
 * What imports changed, for --undo: hidden, so that nobody takes it for something to fill in. Losing it loses nothing but
 * the taking back.
 */
const MEMORY = ".leafpace.imports.json";

const FORMAT = "leafpace imports";
const REMARK =
  'What "leafpace import" changed, the last at the end, so that "leafpace import --undo" can take it back. It may be deleted.';

/** How far back imports can be taken back: so many, and no more than this in all of what they replaced. [bytes] */
const KEPT = 20;
const ROOM = 8_000_000;

/** One run of the command. */
export interface PastImport {
  /** As 2026-04-20T15:00:00.000Z. */
  readonly at: string;
  /** Names of the files taken in. */
  readonly names: readonly string[];
  readonly splices: readonly Splice[];
}

const isText = (value: unknown): value is string => typeof value === "string";
const isPlace = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= 0;
const isDigest = (value: unknown): boolean => value === null || isText(value);

/** The store alone is an import's to take back. */
const isStored = (file: unknown): boolean =>
  isText(file) && /^(?:temperature|forecasts)\/[\w-][\w.-]*$/u.test(file);

function isSplice(value: unknown): value is Splice {
  const { file, before, after, from, length, stood } = value as Partial<Splice>;
  return (
    isStored(file) && isDigest(before) && isDigest(after) && isPlace(from) && isPlace(length) && isText(stood)
  );
}

function isPastImport(value: unknown): value is PastImport {
  const { at, names, splices } = value as Partial<PastImport>;
  return (
    isText(at) &&
    Array.isArray(names) &&
    names.every(isText) &&
    Array.isArray(splices) &&
    splices.every(isSplice)
  );
}

/** What is remembered, the last import at the end; nothing when the file is not there or not as it was written. */
export async function pastImports(dir: string): Promise<readonly PastImport[]> {
  const bytes = await bytesIn(join(dir, MEMORY));
  if (bytes === null) return [];
  try {
    const { format, imports } = JSON.parse(bytes.toString());
    return format === FORMAT && Array.isArray(imports) && imports.every(isPastImport) ? imports : [];
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof TypeError) return [];
    throw error;
  }
}

const room = ({ splices }: PastImport): number => splices.reduce((sum, { stood }) => sum + stood.length, 0);

/** The newest imports that fit. */
function fitting(imports: readonly PastImport[]): readonly PastImport[] {
  const newest = imports.slice(-KEPT);
  while (newest.length > 0 && newest.reduce((sum, each) => sum + room(each), 0) > ROOM) newest.shift();
  return newest;
}

/** The memory as it is to be; no file for nothing. */
export function remembering(imports: readonly PastImport[]): Change {
  const kept = fitting(imports);
  if (kept.length === 0) return { file: MEMORY, bytes: null };
  const text = JSON.stringify({ format: FORMAT, version: 1, remark: REMARK, imports: kept });
  return { file: MEMORY, bytes: Buffer.from(`${text}\n`) };
}
