// One command of leafpace in a process of its own, with a fixed clock, that ends itself with SIGKILL where it is told to:
//   node killChild.mjs '{"dir", "argv", "at", "vanishing", "waits"}'
// at: the number of the step at which it dies, a step being one call that changes the disk; null: never. vanishing: a
// folder that is taken away at that step, instead of dying. waits: with
// "begin" on standard input it starts working, so that two can begin at once. At its end it tells its steps and exit code.

import { rmSync } from "node:fs";
import fs from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";

export interface Errand {
  readonly dir: string;
  readonly argv: readonly string[];
  readonly at: number | null;
  readonly vanishing: string | null;
  readonly waits: boolean;
}

const errand = JSON.parse(process.argv[2]!) as Errand;
let steps = 0;

function step(): void {
  if (steps++ !== errand.at) return;
  if (errand.vanishing === null) process.kill(process.pid, "SIGKILL");
  else rmSync(errand.vanishing, { recursive: true, force: true });
}

/** Every call that changes the disk is a step, and so is every one on a file opened to be written. */
type Call = (...parameters: readonly unknown[]) => Promise<unknown>;
const calls = fs as unknown as Record<string, Call>;
for (const name of ["mkdir", "rename", "rm", "rmdir", "unlink", "writeFile"]) {
  const real = calls[name]!;
  calls[name] = async (...parameters) => {
    step();
    return real(...parameters);
  };
}
const realOpen = calls.open!;
calls.open = async (...parameters) => {
  step();
  const handle = (await realOpen(...parameters)) as unknown as Record<string, Call>;
  for (const name of ["writeFile", "sync", "close"]) {
    const real = handle[name]!.bind(handle);
    handle[name] = async (...given) => {
      step();
      return real(...given);
    };
  }
  return handle;
};
syncBuiltinESMExports();

const { run } = await import("../../src/cli/run.ts");
const none = { terminal: false, columns: undefined, write: () => {} };
const told: string[] = [];
const io = {
  stdout: none,
  stderr: { ...none, write: (text: string) => void told.push(text) },
  env: {},
  cwd: errand.dir,
  zone: "America/New_York",
  now: () => Date.parse("2026-04-20T15:00:00Z"),
  input: async () => Buffer.alloc(0),
};
// Loaded before the clock of a run begins, so that a run is its reading and writing and not the start of Node.
await Promise.all([
  import("../../src/cli/commands/import.ts"),
  import("../../src/cli/commands/note.ts"),
  import("../../src/cli/commands/week.ts"),
]);
if (errand.waits) {
  process.stdout.write("ready\n");
  await new Promise((done) => process.stdin.once("data", done));
}
const begun = performance.now();
const code = await run(errand.argv, io);
process.stdout.write(
  `${JSON.stringify({ code, steps, told: told.join(""), ms: performance.now() - begun })}\n`,
);
process.exit(0);
