import type { Problem } from "../problem/index.ts";

/** What the machine refuses, in words. */
const REFUSED: Readonly<Record<string, { readonly received: string; readonly hint: string }>> = {
  EACCES: { received: "no permission", hint: "Look at its permissions." },
  EPERM: { received: "no permission", hint: "Close it in other programs, and look at its permissions." },
  EBUSY: { received: "one another program holds open", hint: "Close it there and try again." },
  EROFS: { received: "a disk that cannot be written", hint: "Choose another folder." },
  ENOSPC: { received: "a full disk", hint: "Make room and try again." },
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
