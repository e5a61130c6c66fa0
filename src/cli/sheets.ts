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

/** Every issued sheet that can be read, in the order of their moments and numbers, and what is wrong with the others. */
export async function readSheets(
  dir: string,
): Promise<{ readonly sheets: readonly IssuedSheet[]; readonly problems: readonly Problem[] }> {
  const sheets: IssuedSheet[] = [];
  const problems: Problem[] = [];
  const named = (await namesIn(join(dir, SHEETS))).flatMap((name) => {
    const key = sheetNamed(name);
    return key === null ? [] : [{ name, ...key }];
  });
  for (const { name } of named.sort((a, b) => a.on - b.on || a.copy - b.copy)) {
    const file = `${SHEETS}/${name}`;
    const found = await within(dir, file);
    const text = "problem" in found ? found : await readText(found.path, file);
    if ("problem" in text) problems.push({ ...text.problem, weight: "needsYou" });
    else if (text.text !== null) {
      const read = readIssuedSheet(file, text.text);
      problems.push(...read.problems);
      if (read.sheet !== null) sheets.push(read.sheet);
    }
  }
  return { sheets, problems };
}
