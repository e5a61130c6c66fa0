#!/usr/bin/env node
import * as nodeModule from "node:module";
import { formatProblem } from "../problem/index.ts";
import { refusedBySystem } from "./unreadable.ts";
import { version } from "./version.ts";

const COULD_NOT = 2;
const BUG = 70;

// Later versions of Node keep compiled code between runs; the first ones this runs on do not know how.
(nodeModule as { enableCompileCache?: () => unknown }).enableCompileCache?.();

/** A reader that has seen enough, as head, is no error. */
function quietPipe(error: NodeJS.ErrnoException): void {
  if (error.code === "EPIPE") process.exit();
  throw error;
}

/** What the machine refuses on the way out, as a full disk, is told; anything else is ours. */
function bug(error: unknown): void {
  const refused = refusedBySystem(error);
  if (refused !== null) {
    process.exitCode = COULD_NOT;
    process.stderr.write(`${formatProblem(refused)}\n`);
    return;
  }
  process.exitCode = BUG;
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(
    `${trace}\n\nThis is a fault in leafpace ${version}, not in your folder. Nothing you typed was changed.\nPlease report it with the lines above and the command you ran.\n`,
  );
}

process.stdout.on("error", quietPipe);
process.stderr.on("error", quietPipe);
process.on("uncaughtException", bug);

const argv = process.argv.slice(2);
if (argv.length === 1 && (argv[0] === "--version" || argv[0] === "-V")) process.stdout.write(`${version}\n`);
else {
  try {
    const [{ run }, { processIo }] = await Promise.all([import("./run.ts"), import("./io.ts")]);
    process.exitCode = await run(argv, processIo());
  } catch (error) {
    bug(error);
  }
}
