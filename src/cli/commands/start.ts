import { mkdir, writeFile } from "node:fs/promises";
import { join, relative, resolve } from "node:path";
import { DONE } from "../context.ts";
import type { Run } from "../spec.ts";
import { template } from "../template.ts";

/** Writes a file unless one of its name is there. */
const writeNew = async (path: string, text: string): Promise<boolean> =>
  writeFile(path, text, { flag: "wx" }).then(
    () => true,
    (error: unknown) => {
      if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
      throw error;
    },
  );

/** Begins a farm folder. What is there stays as it is. */
export const run: Run = async (names, given, context) => {
  const dir = resolve(context.io.cwd, names[0] ?? ".");
  await mkdir(dir, { recursive: true });
  const written: string[] = [];
  const kept: string[] = [];
  for (const { name, text } of template(given.units === "metric" ? "metric" : "US"))
    ((await writeNew(join(dir, name), text)) ? written : kept).push(name);
  const shown = relative(context.io.cwd, dir) || ".";
  if (context.json) {
    await context.result(
      `${JSON.stringify({ format: "leafpace start", version: 1, dir, written, kept }, null, 2)}\n`,
    );
    return DONE;
  }
  const lines = [
    ...(written.length > 0
      ? [`Written in ${shown}: ${written.join(", ")}.`]
      : [`Nothing written in ${shown}.`]),
    ...(kept.length > 0 ? [`Already there and left alone: ${kept.join(", ")}.`] : []),
  ];
  await context.result(`${lines.join("\n")}\n`);
  context.say(
    `Next: fill in farm.yaml and successions.csv, then run "leafpace ${shown === "." ? "" : `--farm ${shown} `}check".\n`,
  );
  return DONE;
};
