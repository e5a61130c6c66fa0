import { mkdir, readdir, rename, rm, rmdir, stat, unlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { Problem } from "../problem/index.ts";
import { about, recover, unfinished } from "./durable.ts";
import { fateOf, ownerOf, ownName } from "./owner.ts";

/** A folder that holds one file, named after who holds the lock. */
const LOCK = ".leafpace.lock";

/** How long one that runs is waited for. [ms] */
const PATIENCE = 10_000;
const STEP = 40;

/** Where nobody can tell whether the holder runs: a sign of life this often, and without one for this long it is gone. [ms] */
const BEAT = 5000;
const SILENT = 60_000;

const refusedWith =
  (...codes: readonly string[]) =>
  (error: unknown): false => {
    if (codes.includes((error as NodeJS.ErrnoException).code ?? "")) return false;
    throw error;
  };

const done = (work: Promise<unknown>): Promise<true> => work.then(() => true);

/** Has the holder gone? `now`: a file just made in the same folder, so that both times come from one clock. */
async function isGone(path: string, name: string, now: number): Promise<boolean> {
  const owner = ownerOf(name);
  const fate = owner === null ? "unknown" : await fateOf(owner);
  if (fate !== "unknown") return fate === "gone";
  const seen = await stat(path).catch(() => null);
  return seen !== null && now - seen.mtimeMs > SILENT;
}

/**
 * Takes the lock, or gives the name of who holds it.
 *
 * Free to taken is the renaming of a folder onto a name that is not there or empty; gone to taken the renaming of the
 * file that bears the gone one's name. The system lets only one of several succeed at either, so that the lock passes
 * to one process alone and never from one that runs.
 */
async function take(dir: string, me: string): Promise<null | string> {
  const lock = join(dir, LOCK);
  const mine = join(dir, `${LOCK}-${me}`);
  try {
    await mkdir(mine).catch((error: unknown) => {
      throw about(error, dir);
    });
    await writeFile(join(mine, me), "");
    const made = (await stat(join(mine, me))).mtimeMs;
    for (const begun = performance.now(); ; await sleep(STEP)) {
      if (await done(rename(mine, lock)).catch(refusedWith("ENOTEMPTY", "EEXIST", "EPERM", "EACCES")))
        return null;
      const waited = performance.now() - begun;
      const held = await readdir(lock).catch(refusedWith("ENOENT"));
      if (held === false) continue;
      const holder = held.find((name) => ownerOf(name) !== null) ?? held[0];
      if (holder === undefined) await rmdir(lock).catch(() => {});
      else if (await isGone(join(lock, holder), holder, made + waited)) {
        if (await done(rename(join(lock, holder), join(lock, me))).catch(refusedWith("ENOENT"))) return null;
      }
      if (waited > PATIENCE) return holder ?? "";
    }
  } finally {
    await rm(mine, { recursive: true, force: true });
  }
}

/** Takes away what processes left that went while they were about to take the lock. */
async function tidy(dir: string): Promise<void> {
  const now = (await stat(join(dir, LOCK))).mtimeMs;
  for (const name of await readdir(dir)) {
    if (!name.startsWith(`${LOCK}-`)) continue;
    const path = join(dir, name);
    if (await isGone(path, name.slice(LOCK.length + 1), now))
      await rm(path, { recursive: true, force: true });
  }
}

const inUse = (holder: string): Problem => ({
  code: "folder-locked",
  weight: "stops",
  file: LOCK,
  line: null,
  column: null,
  expected: "no other leafpace writing into this folder",
  received: `one that still is${ownerOf(holder) === null ? "" : `, process ${ownerOf(holder)!.pid}`}`,
  hint: "Wait until it has finished, then run this again.",
});

/**
 * Runs `work` while no other leafpace writes into the folder; a problem when one does for too long.
 * What a run that was killed had begun to write is finished or cleared away first.
 */
export async function locked<Value>(
  dir: string,
  work: () => Promise<Value>,
): Promise<{ readonly value: Value } | { readonly problem: Problem }> {
  const me = await ownName();
  const holder = await take(dir, me);
  if (holder !== null) return { problem: inUse(holder) };
  const own = join(dir, LOCK, me);
  const alive = setInterval(() => void writeFile(own, ".", { flag: "r+" }).catch(() => {}), BEAT).unref();
  try {
    await tidy(dir);
    await recover(dir);
    return { value: await work() };
  } finally {
    clearInterval(alive);
    await unlink(own).catch(refusedWith("ENOENT"));
    await rmdir(join(dir, LOCK)).catch(refusedWith("ENOENT", "ENOTEMPTY", "EEXIST"));
  }
}

/** Before the folder is read: finishes what a run had begun to write, or waits for the one that does. */
export async function settled(dir: string): Promise<readonly Problem[]> {
  if (!(await unfinished(dir))) return [];
  const done = await locked(dir, async () => {});
  return "problem" in done ? [done.problem] : [];
}
