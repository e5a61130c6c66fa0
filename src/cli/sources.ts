import { readdir, stat } from "node:fs/promises";
import { join, resolve } from "node:path";

/** A file the grower names, or one of a folder's, which need not be a log. */
export interface Source {
  readonly path: string;
  readonly name: string;
  readonly inFolder: boolean;
}

/** Files named, and those in folders named, without those whose names begin with a point. */
export async function sources(names: readonly string[], cwd: string): Promise<readonly Source[]> {
  const all: Source[] = [];
  for (const name of names) {
    const path = resolve(cwd, name);
    const isFolder =
      name !== "-" &&
      (await stat(path).then(
        (found) => found.isDirectory(),
        () => false,
      ));
    if (!isFolder) {
      all.push({
        path: name === "-" ? "-" : path,
        name: name === "-" ? "standard input" : name,
        inFolder: false,
      });
      continue;
    }
    const entries = await readdir(path, { withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile() && !entry.name.startsWith("."));
    for (const file of files.map((entry) => entry.name).sort())
      all.push({ path: join(path, file), name: join(name, file), inFolder: true });
  }
  return all;
}
