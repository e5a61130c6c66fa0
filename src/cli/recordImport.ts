import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { type Batch, openBatch, type Written } from "./batch.ts";
import { commit } from "./durable.ts";
import { pastImports, remembering } from "./importMemory.ts";
import { locked } from "./lock.ts";
import { spliceOf } from "./splice.ts";

/** What an import wrote, or what keeps it from being written. */
export interface Stored {
  readonly written: readonly Written[];
  readonly problems: readonly Problem[];
}

/**
 * Writes what an import lays into a batch, all of it or none, and remembers it for --undo.
 *
 * @param names - Names of the files taken in.
 */
export async function recordImport(
  dir: string,
  names: readonly string[],
  at: Instant,
  fill: (batch: Batch) => Promise<Stored>,
): Promise<Stored> {
  const done = await locked(dir, async () => {
    const batch = openBatch(dir, at);
    const stored = await fill(batch);
    const replaced = batch.replaced();
    if (stored.problems.length > 0 || replaced.length === 0) return stored;
    const splices = replaced.map(({ file, before, after }) => spliceOf(file, before, after));
    const last = { at: new Date(at).toISOString(), names, splices };
    await commit(dir, [
      ...replaced.map(({ file, after }) => ({ file, bytes: after })),
      remembering([...(await pastImports(dir)), last]),
    ]);
    return stored;
  });
  return "value" in done ? done.value : { written: [], problems: [done.problem] };
}
