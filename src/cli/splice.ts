import { createHash } from "node:crypto";

/** How a file becomes again what it was: where it differed, what stood there. */
export interface Splice {
  readonly file: string;
  /** Digests of the whole file; null: there was none, or there is none. */
  readonly before: string | null;
  readonly after: string | null;
  /** First byte that differs, number of bytes there now, and in base 64 those that stood there. */
  readonly from: number;
  readonly length: number;
  readonly stood: string;
}

export const digest = (bytes: Uint8Array | null): string | null =>
  bytes === null ? null : createHash("sha256").update(bytes).digest("hex");

const EMPTY = Buffer.alloc(0);

export function spliceOf(file: string, before: Buffer | null, after: Buffer | null): Splice {
  const [old, now] = [before ?? EMPTY, after ?? EMPTY];
  const shorter = Math.min(old.length, now.length);
  let from = 0;
  while (from < shorter && old[from] === now[from]) from++;
  let behind = 0;
  while (behind < shorter - from && old.at(-1 - behind) === now.at(-1 - behind)) behind++;
  return {
    file,
    before: digest(before),
    after: digest(after),
    from,
    length: now.length - from - behind,
    stood: old.subarray(from, old.length - behind).toString("base64"),
  };
}

/** The file as it was; "lost" when what is remembered does not make it. */
export function spliced(now: Buffer | null, { before, from, length, stood }: Splice): Buffer | null | "lost" {
  if (before === null) return null;
  const bytes = now ?? EMPTY;
  const old = Buffer.concat([
    bytes.subarray(0, from),
    Buffer.from(stood, "base64"),
    bytes.subarray(from + length),
  ]);
  return digest(old) === before ? old : "lost";
}
