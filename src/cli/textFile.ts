import { readFile, stat } from "node:fs/promises";
import type { Problem } from "../problem/index.ts";
import { decoded, textOrNot } from "./encoding.ts";
import { notText, refusedBySystem, tooLarge } from "./unreadable.ts";

/** Files that are read whole hold far less: a year of hours is half of a thousand kB. [bytes] */
const LARGEST = 16_000_000;

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
 * @param most - What is longer is not read. [bytes]
 */
export async function readText(
  path: string,
  file: string,
  most: number = LARGEST,
): Promise<{ readonly text: string | null } | { readonly problem: Problem }> {
  try {
    const { size } = await stat(path);
    return size > most ? { problem: tooLarge(file, size, most) } : heldText(await readFile(path), file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return { text: null };
    const problem = refusedBySystem(error, file);
    if (problem === null) throw error;
    return { problem };
  }
}
