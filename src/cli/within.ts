import { realpath } from "node:fs/promises";
import { basename, dirname, join, sep } from "node:path";
import type { Problem } from "../problem/index.ts";

const absent = (error: unknown): null => {
  if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
  throw error;
};

const ledOut = (file: string): Problem => ({
  code: "outside-folder",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected: "a file within the farm folder",
  received: "a link that leads out of it",
  hint: "Put the file itself in the place of the link.",
});

/**
 * Where a file of the farm folder stands, links followed; a problem when one leads out of the folder.
 *
 * @param file - Name within the folder, with / between its parts.
 */
export async function within(
  dir: string,
  file: string,
): Promise<{ readonly path: string } | { readonly problem: Problem }> {
  const root = await realpath(dir);
  const path = join(root, file);
  const real =
    (await realpath(path).catch(absent)) ??
    join((await realpath(dirname(path)).catch(absent)) ?? dirname(path), basename(path));
  return real.startsWith(root.endsWith(sep) ? root : root + sep) ? { path: real } : { problem: ledOut(file) };
}
