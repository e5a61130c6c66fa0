import { mkdir, writeFile } from "node:fs/promises";
import { join, relative, resolve } from "node:path";
import type { Problem } from "../../problem/index.ts";
import { instant, localDate } from "../../quantity/index.ts";
import { DONE } from "../context.ts";
import { firstFarm } from "../firstFarm.ts";
import type { Run } from "../spec.ts";
import { template } from "../template.ts";
import { whereabouts } from "../whereabouts.ts";

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
  const units = given.units === "metric" ? "metric" : "US";
  const problems: Problem[] = [];
  const where = whereabouts(given, context, problems);
  const today = localDate(where.zone?.text ?? context.io.zone, instant(context.io.now()));
  const first = firstFarm(given, units, today, problems);
  if (problems.length > 0) return context.refuse(problems);
  await mkdir(dir, { recursive: true });
  const written: string[] = [];
  const kept: string[] = [];
  for (const { name, text } of template(units, where, first))
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
  const leafpace = shown === "." ? "leafpace" : `leafpace --farm ${shown}`;
  const ready = where.longitude !== null && where.latitude !== null && first.beds.length > 0;
  const line = units === "US" ? "Mon 62 41 sun" : "Mon 17 5 sun";
  context.say(
    ready
      ? `Next: type a forecast, one line a day like "${line}", into\n  ${leafpace} import -\nthen run\n  ${leafpace} week\n`
      : `Next: fill in farm.yaml and successions.csv, then run "${leafpace} check".\n`,
  );
  return DONE;
};
