import type { Problem } from "../problem/index.ts";

/** What the machine refuses, in words. */
const REFUSED: Readonly<Record<string, { readonly received: string; readonly hint: string }>> = {
  EACCES: { received: "no permission", hint: "Look at its permissions." },
  EPERM: { received: "no permission", hint: "Close it in other programs, and look at its permissions." },
  EBUSY: { received: "one another program holds open", hint: "Close it there and try again." },
  EROFS: { received: "a disk that cannot be written", hint: "Choose another folder." },
  ENOSPC: { received: "a full disk", hint: "Make room and try again." },
  EDQUOT: { received: "a full share of the disk", hint: "Make room and try again." },
  EFBIG: { received: "no room for a file of this size", hint: "Make room and try again." },
  EIO: { received: "a disk that fails", hint: "Look at the disk, and keep a copy of the folder." },
  ENOENT: { received: "no such file or folder", hint: "Look at the name." },
  ENOTDIR: { received: "a file in the place of a folder", hint: "Move it, or choose another name." },
  EISDIR: { received: "a folder", hint: "Give the folder another name." },
};

const stop = (file: string, expected: string, received: string, hint: string): Problem => ({
  code: "system",
  weight: "stops",
  file,
  line: null,
  column: null,
  expected,
  received,
  hint,
});

/**
 * What the machine refuses is no fault of ours: a full disk, a folder nobody may write. null: an error of another kind.
 *
 * @param file - Name people know the file by that was to be read; without it the error's own path is told.
 */
export function refusedBySystem(error: unknown, file?: string): Problem | null {
  const { code, path } = error as NodeJS.ErrnoException;
  const refused = code === undefined ? undefined : REFUSED[code];
  const name = file ?? path;
  if (refused === undefined || name === undefined) return null;
  const expected = file === undefined ? "a file or folder that can be used" : "a file that can be read";
  return stop(name, expected, refused.received, refused.hint);
}

/** @param bytes - Its size. @param most - The most that is read of such a file. [bytes] */
export const tooLarge = (file: string, bytes: number, most: number): Problem => ({
  ...stop(
    file,
    `a file of at most ${most / 1000} kB`,
    `one of ${Math.ceil(bytes / 1000)} kB`,
    "Look whether it is the right file.",
  ),
  code: "file-too-large",
});

/** A file that was written while it was read. */
export const changedMeanwhile = (file: string): Problem => ({
  ...stop(
    file,
    "a file nobody writes into while it is read",
    "one that changed",
    "Wait until the other program has finished, then run this again.",
  ),
  code: "file-changed",
});

/** @param looksLike - What the file is instead, as "a picture". */
export const notText = (file: string, looksLike: string): Problem => ({
  ...stop(
    file,
    "plain text",
    looksLike,
    looksLike.includes("spreadsheet") && file.endsWith(".csv")
      ? "Open it in the spreadsheet and save it as CSV under this name."
      : "Put the right file in its place.",
  ),
  code: "file-not-text",
});
