import { readFile } from "node:fs/promises";
import type { Problem } from "../problem/index.ts";
import { decoded, textOrNot } from "./encoding.ts";
import { notText, refusedBySystem } from "./unreadable.ts";

/** The text in bytes that are in memory already, as from standard input. */
export function heldText(
  bytes: Uint8Array,
  file: string,
): { readonly text: string } | { readonly problem: Problem } {
  const kind = textOrNot(bytes);
  return "looksLike" in kind
    ? { problem: notText(file, kind.looksLike) }
    : { text: decoded(bytes, kind.encoding) };
}

/**
 * The whole text of a small file, however it is encoded; null when there is no such file.
 *
 * @param file - Name people know it by, as in problems.
 */
export async function readText(
  path: string,
  file: string,
): Promise<{ readonly text: string | null } | { readonly problem: Problem }> {
  try {
    return heldText(await readFile(path), file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return { text: null };
    const problem = refusedBySystem(error, file);
    if (problem === null) throw error;
    return { problem };
  }
}
