// What a full disk, a folder that cannot be written and one that vanishes do to an import: the problem in words, the store
// as it was, and all of it there once the trouble is over. With the rights for it on a small disk of its own (tmpfs) and a
// read-only mount of the folder (mount --bind); in any case with a limit on the size of files (ulimit -f).

import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { shell } from "../cli/shell.ts";
import type { withBundle as WithBundle } from "./bundle.d.mts";
import { begin, bereftAt, end, next, SCENARIOS, snapshot, undisturbed } from "./kills.ts";

const { before, line } = SCENARIOS[1]!;

type Entry = readonly [name: string, content: string | null];
/** The files of a folder; an empty folder more is no harm. */
const filesIn = (found: string): string =>
  JSON.stringify((JSON.parse(found) as readonly Entry[]).filter(([, content]) => content !== null));
const files = (dir: string): string => filesIn(snapshot(dir));

const whole = filesIn(await undisturbed(before, [line]));
const untouched = filesIn(await undisturbed(before, []));
let wrong = 0;

function check(holds: boolean, what: string): void {
  if (holds) return;
  wrong += 1;
  process.stdout.write(`not so: ${what}\n`);
}

const inWords = (told: string): boolean =>
  told !== "" && !/\bat .+:\d+:\d+|undefined|NaN|leafpace-new/u.test(told);

async function run(dir: string): Promise<{ readonly code: number; readonly stderr: string }> {
  const here = shell(null);
  const ended = await here.run(line, { cwd: dir });
  here.end();
  return ended;
}

const mounted = (...parameters: readonly string[]): boolean => spawnSync("mount", parameters).status === 0;

/** A disk with less and less room left, down to none. */
async function fullDisk(): Promise<string> {
  const disk = mkdtempSync(join(tmpdir(), "leafpace-disk-"));
  if (!mounted("-t", "tmpfs", "-o", "size=512k", "tmpfs", disk)) {
    rmSync(disk, { recursive: true });
    return "Full disk: no right to mount one here.";
  }
  const told = new Set<string>();
  let full = 0;
  const from = await begin(before);
  for (let room = 0; room <= 240_000; room += 8192) {
    const dir = join(disk, "farm");
    cpSync(from, dir, { recursive: true });
    const { bsize, bavail } = statfsSync(disk);
    writeFileSync(join(disk, "filler"), Buffer.alloc(Math.max(0, bsize * bavail - room)));
    const { code, stderr } = await run(dir);
    if (code !== 0) {
      full += 1;
      told.add(stderr);
      check(inWords(stderr), `words with ${room} bytes left: ${stderr}`);
      check(files(dir) === untouched, `the store as it was with ${room} bytes left`);
    }
    rmSync(join(disk, "filler"));
    await next(dir, line);
    check(files(dir) === whole, `all of it there after ${room} bytes were left`);
    rmSync(dir, { recursive: true });
  }
  end(from);
  spawnSync("umount", [disk]);
  rmSync(disk, { recursive: true });
  return `Full disk: ${full} imports refused with little room, the rest done. ${[...told].join("")}`.trimEnd();
}

async function readOnly(): Promise<string> {
  const dir = await begin(before);
  const seen = mkdtempSync(join(tmpdir(), "leafpace-seen-"));
  if (!mounted("--bind", dir, seen) || !mounted("-o", "remount,ro,bind", seen)) {
    end(dir);
    rmSync(seen, { recursive: true });
    return "Folder that cannot be written: no right to mount one here.";
  }
  const { code, stderr } = await run(seen);
  check(code === 2 && inWords(stderr) && files(seen) === untouched, `a refusal: ${stderr}`);
  spawnSync("umount", [seen]);
  rmSync(seen, { recursive: true });
  end(dir);
  return `Folder that cannot be written: ${stderr}`.trimEnd();
}

async function sizeLimit(child: string): Promise<string> {
  let refused = 0;
  let told = "";
  for (let blocks = 0; blocks <= 64; blocks += 4) {
    const dir = await begin(before);
    const errand = JSON.stringify({ dir, argv: line.split(" "), at: null, vanishing: null, waits: false });
    const limited = `ulimit -f ${blocks}; exec "$0" "$1" "$2"`;
    const { stdout } = spawnSync("bash", ["-c", limited, process.execPath, child, errand], {
      encoding: "utf8",
    });
    const ended = JSON.parse(stdout) as { readonly code: number; readonly told: string };
    if (ended.code !== 0) {
      refused += 1;
      told = ended.told;
      check(inWords(told), `words under ulimit -f ${blocks}: ${told}`);
      check(files(dir) === untouched, `the store as it was under ulimit -f ${blocks}`);
    }
    await next(dir, line);
    check(files(dir) === whole, `all of it there after ulimit -f ${blocks}`);
    end(dir);
  }
  check(refused > 0, "a limit that was met");
  return `No room for files: ${refused} imports refused. ${told}`.trimEnd();
}

/** The folder of temperatures goes at one step after the other of an import. */
async function vanishing(child: string): Promise<string> {
  const told = new Set<string>();
  let refused = 0;
  const first = SCENARIOS[0]!.line;
  const sound = filesIn(await undisturbed([], [first]));
  for (let at = 0, steps = 1; at < steps; at++) {
    const dir = await begin([]);
    const ended = await bereftAt(child, dir, first, join(dir, "temperature"), at);
    steps = ended!.steps;
    if (ended!.code !== 0) {
      refused += 1;
      told.add(ended!.told);
      check(inWords(ended!.told), `words for a folder that vanished: ${ended!.told}`);
    }
    await next(dir, first);
    const stored = (found: string): string =>
      JSON.stringify((JSON.parse(found) as readonly Entry[]).filter(([name]) => !name.startsWith(".")));
    check(stored(files(dir)) === stored(sound), `the store whole after the folder vanished at step ${at}`);
    end(dir);
  }
  return `Folder that vanishes at any step: ${refused} imports refused, the next one whole. ${[...told].join("")}`.trimEnd();
}

process.stdout.write(`${await fullDisk()}\n${await readOnly()}\n`);
const { withBundle } = (await import(new URL("./bundle.mjs", import.meta.url).href)) as {
  withBundle: typeof WithBundle;
};
await withBundle("killChild", async (child) => {
  process.stdout.write(`${await sizeLimit(child)}\n${await vanishing(child)}\n`);
});
process.stdout.write(`${wrong} not as they should be\n`);
if (wrong > 0) process.exitCode = 1;
