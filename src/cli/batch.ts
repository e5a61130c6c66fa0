import { readFile } from "node:fs/promises";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { heldText } from "./textFile.ts";
import { within } from "./within.ts";

/** One file before and after; null: not there. */
export interface Replaced {
  readonly file: string;
  readonly before: Buffer | null;
  readonly after: Buffer | null;
}

/** What writing changes. */
export interface Written {
  /** Name within the farm folder. */
  readonly file: string;
  readonly change: "new" | "changed" | "same";
  /** Hours, or days of a daily record, that had other readings before. */
  readonly differing?: number;
}

/** What a run is going to write into the farm folder, gathered before any of it is written. */
export interface Batch {
  /** The moment of the run. */
  readonly at: Instant;
  /** A file as it will be; null: there is none. */
  text(file: string): Promise<{ readonly text: string | null } | { readonly problem: Problem }>;
  put(file: string, text: string): Promise<Written>;
  /** Only what differs. */
  replaced(): readonly Replaced[];
}

export const bytesIn = async (path: string): Promise<Buffer | null> =>
  readFile(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return null;
    throw error;
  });

const same = (a: Buffer | null, b: Buffer | null): boolean =>
  a === null || b === null ? a === b : a.equals(b);

export function openBatch(dir: string, at: Instant): Batch {
  const files = new Map<string, Replaced>();
  const held = async (file: string): Promise<Replaced | Problem> => {
    const known = files.get(file);
    if (known !== undefined) return known;
    const found = await within(dir, file);
    if ("problem" in found) return found.problem;
    const bytes = await bytesIn(found.path);
    const read = { file, before: bytes, after: bytes };
    files.set(file, read);
    return read;
  };
  return {
    at,
    async text(file) {
      const one = await held(file);
      if ("code" in one) return { problem: one };
      return one.after === null ? { text: null } : heldText(one.after, file);
    },
    async put(file, text) {
      const one = await held(file);
      if ("code" in one) throw new Error(`${file} was not read before it is written`);
      const after = Buffer.from(text);
      files.set(file, { ...one, after });
      if (same(one.after, after)) return { file, change: "same" };
      return { file, change: one.before === null ? "new" : "changed" };
    },
    replaced: () => [...files.values()].filter(({ before, after }) => !same(before, after)),
  };
}
