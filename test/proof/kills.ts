// Runs of leafpace killed with SIGKILL, at moments and at steps of their writing, and what the next run makes of the folder.

import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { shell } from "../cli/shell.ts";
import type { Errand } from "./killChild.ts";

const little = join(dirname(fileURLToPath(import.meta.url)), "..", "cli", "folders", "little");

/** Mulberry32: the same seed, the same moments. */
export function randomOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A log of half-hours over the turn of the year, its readings moved by some degrees. */
function log(from: string, days: number, moved: number): string {
  const start = Date.parse(`${from}T00:00:00Z`);
  const lines = Array.from({ length: days * 48 }, (_, i) => {
    const at = new Date(start + i * 1_800_000).toISOString();
    const reading = 40 + moved + 10 * Math.sin((i * Math.PI) / 24);
    return `${at.slice(0, 10)} ${at.slice(11, 16)},${reading.toFixed(1)}`;
  });
  return `Date Time,Temp (F)\n${lines.join("\n")}\n`;
}

const FILES: Readonly<Record<string, string>> = {
  "first.csv": log("2025-12-20", 14, 0),
  "second.csv": log("2025-12-28", 8, 1),
  "other.csv": log("2026-02-01", 8, 0),
};

export interface Scenario {
  readonly name: string;
  /** Run undisturbed before. */
  readonly before: readonly string[];
  readonly line: string;
}

export const SCENARIOS: readonly Scenario[] = [
  { name: "a first import of a log and a forecast", before: [], line: "import first.csv forecast.csv" },
  {
    name: "an import over two years that differs from the store",
    before: ["import first.csv"],
    line: "import second.csv forecast.csv",
  },
  { name: "a first note", before: [], line: "note S01 4in yesterday 7am" },
  {
    name: "one more note",
    before: ["note S01 3in Apr 17 7am"],
    line: "note S01 4in 3.5in 4.2in yesterday 7am",
  },
  { name: "an import taken back", before: ["import first.csv forecast.csv"], line: "import --undo" },
  { name: "a note taken back", before: ["note S01 4in yesterday 7am"], line: "note --undo" },
  {
    name: "a sheet kept",
    before: ["import first.csv forecast.csv"],
    line: "week --issue --days 1 --members 2 --on 2026-04-20",
  },
];

export const PAIRS: readonly (readonly [string, string])[] = [
  ["import first.csv forecast.csv", "import other.csv"],
  ["import first.csv", "note S01 4in yesterday 7am"],
  ["note S01 4in yesterday 7am", "note S02 3in yesterday 7am"],
];

/** A farm folder with files to take in, after some runs. */
export async function begin(before: readonly string[]): Promise<string> {
  const dir = mkdtempSync(join(tmpdir(), "leafpace-kill-"));
  cpSync(little, dir, { recursive: true });
  for (const [name, text] of Object.entries(FILES)) writeFileSync(join(dir, name), text);
  for (const line of before) await next(dir, line);
  return dir;
}

export const end = (dir: string): void => rmSync(dir, { recursive: true, force: true });

/** Every file of a folder with its content. */
export function snapshot(dir: string): string {
  const files = readdirSync(dir, { recursive: true, encoding: "utf8" }).sort();
  return JSON.stringify(
    files.map((name) => [
      name,
      statSync(join(dir, name)).isDirectory() ? null : readFileSync(join(dir, name), "latin1"),
    ]),
  );
}

/** An undisturbed run in this process. [ms] */
export async function next(dir: string, line: string): Promise<number> {
  const here = shell(null);
  const begun = performance.now();
  await here.run(line, { cwd: dir });
  here.end();
  return performance.now() - begun;
}

/** The folder after undisturbed runs. */
export async function undisturbed(before: readonly string[], lines: readonly string[]): Promise<string> {
  const dir = await begin([...before, ...lines]);
  const found = snapshot(dir);
  end(dir);
  return found;
}

/** How a run of its own process ended; null when it was killed. */
export type Ended = {
  readonly code: number;
  readonly steps: number;
  readonly ms: number;
  readonly told: string;
} | null;

export interface Process {
  readonly ready: Promise<unknown>;
  begin(): void;
  kill(): void;
  readonly ended: Promise<Ended>;
}

export function start(child: string, errand: Errand): Process {
  const running = spawn(process.execPath, [child, JSON.stringify(errand)], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  let told = "";
  running.stdin.on("error", () => {});
  const ready = new Promise((resolve) => {
    running.stdout.on("data", (piece: Buffer) => {
      told += piece.toString();
      if (told.includes("ready\n")) resolve(null);
    });
  });
  const ended = new Promise<Ended>((resolve) => {
    running.on("close", (code) =>
      resolve(code === 0 ? (JSON.parse(told.replace("ready\n", "")) as Ended) : null),
    );
  });
  return {
    ready,
    begin: () => void running.stdin.write("begin\n"),
    kill: () => void running.kill("SIGKILL"),
    ended,
  };
}

const words = (line: string): readonly string[] => line.split(" ");

/** One run, killed at a step. */
export const killedAt = (child: string, dir: string, line: string, at: number | null): Promise<Ended> =>
  start(child, { dir, argv: words(line), at, vanishing: null, waits: false }).ended;

/** One run, at a step of which a folder goes. */
export const bereftAt = (
  child: string,
  dir: string,
  line: string,
  vanishing: string,
  at: number,
): Promise<Ended> => start(child, { dir, argv: words(line), at, vanishing, waits: false }).ended;

/** Runs that begin at once, killed some time later [ms]; null: not killed. */
export async function killedAfter(
  child: string,
  dir: string,
  lines: readonly string[],
  after: readonly (number | null)[],
): Promise<readonly Ended[]> {
  const all = lines.map((line) =>
    start(child, { dir, argv: words(line), at: null, vanishing: null, waits: true }),
  );
  await Promise.all(all.map(({ ready }) => ready));
  for (const one of all) one.begin();
  for (const [i, ms] of after.entries()) if (ms !== null) setTimeout(() => all[i]!.kill(), ms);
  return Promise.all(all.map(({ ended }) => ended));
}
