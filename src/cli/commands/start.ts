import { mkdir, writeFile } from "node:fs/promises";
import { join, relative, resolve } from "node:path";
import type { Problem } from "../../problem/index.ts";
import { instant, localHour, parseQuantity } from "../../quantity/index.ts";
import { DONE, usage } from "../context.ts";
import type { Given, Run } from "../spec.ts";
import { template, type Whereabouts } from "../template.ts";

/** Writes a file unless one of its name is there. */
const writeNew = async (path: string, text: string): Promise<boolean> =>
  writeFile(path, text, { flag: "wx" }).then(
    () => true,
    (error: unknown) => {
      if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
      throw error;
    },
  );

/** Where the farm is, as far as the options say; what they say must be right. */
function whereabouts(given: Given): { readonly where: Whereabouts; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const said = (
    name: keyof Whereabouts,
    right: (text: string) => boolean,
    expected: string,
    hint: string,
  ): string | null => {
    const text = given[name];
    if (typeof text !== "string") return null;
    if (!right(text)) problems.push(usage(`--${name}`, expected, text, hint));
    return text;
  };
  const within = (limit: number) => (text: string) => text.trim() !== "" && Math.abs(Number(text)) <= limit;
  const where: Whereabouts = {
    latitude: said("latitude", within(90), "degrees from -90 to 90", "South of the equator is negative."),
    longitude: said("longitude", within(180), "degrees from -180 to 180", "America is negative."),
    elevation: said(
      "elevation",
      (text) => parseQuantity(text, "length", null).fault === null,
      "a height above the sea like 620 ft",
      "Write a number and its unit, in quotes when there is a blank.",
    ),
    zone: said(
      "zone",
      (text) => !Number.isNaN(localHour(text, instant(0))),
      "a time zone like America/New_York",
      "Write continent and city, with a slash and underscores.",
    ),
  };
  return { where, problems };
}

/** Begins a farm folder. What is there stays as it is. */
export const run: Run = async (names, given, context) => {
  const dir = resolve(context.io.cwd, names[0] ?? ".");
  const { where, problems } = whereabouts(given);
  if (problems.length > 0) return context.refuse(problems);
  await mkdir(dir, { recursive: true });
  const written: string[] = [];
  const kept: string[] = [];
  for (const { name, text } of template(given.units === "metric" ? "metric" : "US", where))
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
