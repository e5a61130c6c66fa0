import type { Problem } from "../problem/index.ts";
import { bytesIn } from "./batch.ts";
import { type Context, DONE, usage } from "./context.ts";
import { type Change, commit } from "./durable.ts";
import { openSettings } from "./farmFolder.ts";
import { type PastImport, pastImports, remembering } from "./importMemory.ts";
import { locked } from "./lock.ts";
import { digest, type Splice, spliced } from "./splice.ts";
import { within } from "./within.ts";

interface TakenBack {
  readonly last: PastImport | null;
  readonly problems: readonly Problem[];
}

const stop = (file: string, expected: string, received: string, hint: string): Problem => ({
  code: "import-not-last",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected,
  received,
  hint,
});

const NONE = stop(
  "temperature",
  "an import that is remembered",
  "none",
  'Only what "leafpace import" wrote can be taken back, and only the last twenty.',
);

async function asItWas(dir: string, splice: Splice, at: string): Promise<Change | Problem> {
  const { file, after } = splice;
  const found = await within(dir, file);
  if ("problem" in found) return found.problem;
  const now = await bytesIn(found.path);
  const old = digest(now) === after ? spliced(now, splice) : "lost";
  if (old !== "lost") return { file, bytes: old };
  const expected = `this file as the import of ${at.slice(0, 16).replace("T", " ")} UTC left it`;
  const received = now === null ? "no such file" : "changes since";
  return stop(file, expected, received, "Nothing is taken back, so that those changes are not lost.");
}

async function takeBack(dir: string, dry: boolean): Promise<TakenBack> {
  const past = await pastImports(dir);
  const last = past.at(-1) ?? null;
  if (last === null) return { last, problems: [NONE] };
  const changes: Change[] = [];
  const problems: Problem[] = [];
  for (const splice of last.splices) {
    const one = await asItWas(dir, splice, last.at);
    if ("code" in one) problems.push(one);
    else changes.push(one);
  }
  if (problems.length === 0 && !dry) await commit(dir, [...changes, remembering(past.slice(0, -1))]);
  return { last, problems };
}

const told = ({ at, names, splices }: PastImport, dry: boolean): string =>
  [
    `${dry ? "Would be taken" : "Taken"} back: the import of ${names.join(", ")}, ${at.slice(0, 16).replace("T", " ")} UTC.`,
    ...splices.map(({ file, before }) => `  ${file} ${before === null ? "taken away" : "as it was before"}`),
  ].join("\n");

/** Takes the last import back: store, forecast and journal as they were before it. */
export async function undoImport(names: readonly string[], dry: boolean, context: Context): Promise<number> {
  if (names.length > 0)
    return context.refuse([
      usage("--undo", "no file beside it", names.join(" "), "Take back first, then import anew."),
    ]);
  const { dir, value: farm, problems } = await openSettings(context);
  if (farm === null) return context.refuse(problems);
  const done = await (dry
    ? takeBack(dir, true).then((value) => ({ value }))
    : locked(dir, () => takeBack(dir, false)));
  if ("problem" in done) return context.refuse([done.problem]);
  const { last, problems: kept } = done.value;
  if (last === null || kept.length > 0) return context.refuse(kept);
  if (!context.json) {
    await context.result(`${told(last, dry)}\n`);
    if (!dry) context.say('See "leafpace week" for the schedule.\n');
    return DONE;
  }
  const files = last.splices.map(({ file, before }) => ({ file, gone: before === null }));
  const result = {
    format: "leafpace import undo",
    version: 1,
    takenBack: !dry,
    at: last.at,
    names: last.names,
    files,
  };
  await context.result(`${JSON.stringify(result, null, 2)}\n`);
  return DONE;
}
