import { access, realpath, stat } from "node:fs/promises";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { Option } from "commander";
import type { Problem } from "../problem/index.ts";
import { usage } from "./context.ts";
import type { Given, OptionSpec } from "./spec.ts";

/** Files of a farm that the grower types. */
const TYPED: readonly string[] = ["farm.yaml", "successions.csv", "pieces.csv", "notes.csv", "learned.csv"];

/** Folders of a farm for what is imported and issued. */
const KEPT: readonly string[] = ["temperature", "forecasts", "sheets"];

const isFolder = async (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** Where a name leads, through links, also when nothing stands there yet. */
async function led(path: string): Promise<string> {
  const parent = dirname(path);
  return realpath(path).catch(async () => (parent === path ? path : join(await led(parent), basename(path))));
}

/** The farm folder a path lies in; null: none. */
async function farmAround(path: string): Promise<string | null> {
  for (let dir = dirname(path); ; dir = dirname(dir)) {
    const there = await access(join(dir, "farm.yaml")).then(
      () => true,
      () => false,
    );
    if (there) return dir;
    if (dirname(dir) === dir) return null;
  }
}

/** What is wrong with a place, if it is the farm's own. Case does not count: on many disks it tells no two files apart. */
async function farmsOwn(path: string): Promise<string | null> {
  const name = basename(path).toLowerCase();
  if (TYPED.includes(name)) return "which holds your farm";
  if (name.startsWith(".leafpace")) return "which leafpace keeps for itself";
  const farm = await farmAround(path);
  const [folder, ...more] = farm === null ? [] : relative(farm, path).toLowerCase().split(sep);
  return more.length > 0 && KEPT.includes(folder!) ? "in a folder leafpace keeps for itself" : null;
}

/** What a result may be called, by the option that asks for it. */
const EXAMPLE: Readonly<Record<string, string>> = {
  "--html": "week.html",
  "--csv": "week.csv",
  "--crew": "crew.txt",
  "--promise": "promise.txt",
};

/** Why a result cannot be written under a name; null when it can. */
async function wrong(option: string, cwd: string, name: string): Promise<Problem | null> {
  const path = resolve(cwd, name);
  const problem = (received: string, hint: string): Problem => ({
    ...usage(option, "a file to write the result into", name, hint),
    received,
  });
  if (name === "") return problem("no name", "Give the file a name.");
  if (await isFolder(path))
    return problem(
      `"${name}", a folder`,
      `Name a file in it, like ${join(name, EXAMPLE[option] ?? "week.txt")}.`,
    );
  const own = (await farmsOwn(path)) ?? (await farmsOwn(await led(path)));
  return own === null
    ? null
    : problem(`"${name}", ${own}`, "Nothing was written. Give the result another name.");
}

/**
 * What keeps results from being written under the names given for them, before anything is done: none may lie over what
 * holds the farm or over another result. "-" is standard output.
 */
export async function wrongResults(
  given: Given,
  options: readonly OptionSpec[],
  cwd: string,
): Promise<readonly Problem[]> {
  const problems: Problem[] = [];
  const taken = new Set<string>();
  for (const { flags, writes } of options) {
    const option = new Option(flags);
    const name = given[option.attributeName()];
    if (!writes || typeof name !== "string") continue;
    const problem = name === "-" ? null : await wrong(`${option.long}`, cwd, name);
    const place = name === "-" ? name : await led(resolve(cwd, name));
    if (problem !== null) problems.push(problem);
    else if (taken.has(place))
      problems.push(
        usage(`${option.long}`, "a place of its own for each result", name, "Name another file."),
      );
    taken.add(place);
  }
  return problems;
}
