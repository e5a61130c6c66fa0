import { join } from "node:path";
import type { Problem } from "../problem/index.ts";

/** A lock without a heartbeat for this long was left by a process that is gone. [ms] */
const STALE = 2000;

/** Runs `work` while no other leafpace writes into the folder; a problem when one does for too long. */
export async function locked<Value>(
  dir: string,
  work: () => Promise<Value>,
): Promise<{ readonly value: Value } | { readonly problem: Problem }> {
  const { default: lockfile } = await import("proper-lockfile");
  const options = {
    lockfilePath: join(dir, ".leafpace.lock"),
    stale: STALE,
    update: STALE / 2,
    retries: { retries: 12, factor: 1.3, minTimeout: 200, maxTimeout: 1000 },
  };
  let release: () => Promise<void>;
  try {
    release = await lockfile.lock(dir, options);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ELOCKED") throw error;
    return {
      problem: {
        code: "folder-locked",
        weight: "stops",
        file: ".leafpace.lock",
        line: null,
        column: null,
        expected: "no other leafpace writing into this folder",
        received: "one that still is",
        hint: "Wait until it has finished, then run this again.",
      },
    };
  }
  try {
    return { value: await work() };
  } finally {
    await release();
  }
}
