import { join } from "node:path";
import { type IssuedSheet, readIssuedSheet, sheetName, sheetNamed } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { openBatch } from "./batch.ts";
import { commit } from "./durable.ts";
import { locked } from "./lock.ts";
import { namesIn } from "./store.ts";
import { readText } from "./textFile.ts";
import { within } from "./within.ts";

const SHEETS = "sheets";

/** Where an issued sheet is kept; `new`: it was not there before. */
export interface Kept {
  readonly file: string;
  readonly isNew: boolean;
}

/**
 * Keeps a sheet as it was given out. One of the same moment that says something else stays and gets a neighbour with a
 * number: what was given out is never lost.
 */
export async function keepSheet(
  dir: string,
  on: Instant,
  text: string,
  at: Instant,
): Promise<Kept | { readonly problem: Problem }> {
  const done = await locked(dir, async () => {
    const batch = openBatch(dir, at);
    for (let copy = 1; ; copy++) {
      const file = `${SHEETS}/${sheetName(on, copy)}`;
      const found = await batch.text(file);
      if ("problem" in found) return found;
      if (found.text === text) return { file, isNew: false };
      if (found.text !== null) continue;
      await batch.put(file, text);
      await commit(
        dir,
        batch.replaced().map(({ file, after }) => ({ file, bytes: after })),
      );
      return { file, isNew: true };
    }
  });
  return "problem" in done ? done : done.value;
}

/** Names of issued sheets in the order of their moments and numbers. */
async function sheetNames(dir: string): Promise<readonly { readonly name: string; readonly on: Instant }[]> {
  const named = (await namesIn(join(dir, SHEETS))).flatMap((name) => {
    const key = sheetNamed(name);
    return key === null ? [] : [{ name, ...key }];
  });
  return named.sort((a, b) => a.on - b.on || a.copy - b.copy);
}

async function readSheet(
  dir: string,
  name: string,
): Promise<{ readonly sheet: IssuedSheet | null; readonly problems: readonly Problem[] }> {
  const file = `${SHEETS}/${name}`;
  const found = await within(dir, file);
  const text = "problem" in found ? found : await readText(found.path, file);
  if ("problem" in text) return { sheet: null, problems: [{ ...text.problem, weight: "needsYou" }] };
  return text.text === null ? { sheet: null, problems: [] } : readIssuedSheet(file, text.text);
}

/** The newest issued sheet made before a moment that can be read, and what is wrong with newer ones. */
export async function newestSheet(
  dir: string,
  before: Instant,
): Promise<{ readonly sheet: IssuedSheet | null; readonly problems: readonly Problem[] }> {
  const problems: Problem[] = [];
  const names = (await sheetNames(dir)).filter(({ on }) => on < before);
  for (const { name } of names.reverse()) {
    const read = await readSheet(dir, name);
    problems.push(...read.problems);
    if (read.sheet !== null) return { sheet: read.sheet, problems };
  }
  return { sheet: null, problems };
}

/** Every issued sheet that can be read, in the order of their moments and numbers, and what is wrong with the others. */
export async function readSheets(
  dir: string,
): Promise<{ readonly sheets: readonly IssuedSheet[]; readonly problems: readonly Problem[] }> {
  const sheets: IssuedSheet[] = [];
  const problems: Problem[] = [];
  for (const { name } of await sheetNames(dir)) {
    const read = await readSheet(dir, name);
    problems.push(...read.problems);
    if (read.sheet !== null) sheets.push(read.sheet);
  }
  return { sheets, problems };
}
