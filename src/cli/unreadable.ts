import type { Problem } from "../problem/index.ts";

/** What the machine refuses, in words. */
const REFUSED: Readonly<Record<string, { readonly received: string; readonly hint: string }>> = {
  EACCES: { received: "no permission", hint: "Look at its permissions." },
  EPERM: { received: "no permission", hint: "Close it in other programs, and look at its permissions." },
  EBUSY: { received: "one another program holds open", hint: "Close it there and try again." },
  EROFS: { received: "a disk that cannot be written", hint: "Choose another folder." },
  ENOSPC: { received: "a full disk", hint: "Make room and try again." },
  ENOENT: { received: "no such file or folder", hint: "Look at the name and the folder it stands in." },
  ENOTDIR: { received: "a file in the place of a folder", hint: "Move it, or choose another name." },
  EEXIST: { received: "a file in the place of a folder", hint: "Move it, or choose another name." },
  EISDIR: { received: "a folder", hint: "Give the folder another name." },
  ENOTEMPTY: { received: "a folder that is not empty", hint: "Give the folder another name." },
  ENAMETOOLONG: { received: "a name that is too long", hint: "Choose a shorter one." },
  EINVAL: { received: "a name this machine does not allow", hint: "Use plain letters and digits." },
  ELOOP: { received: "a link that leads back to itself", hint: "Take the link out, or choose another name." },
  EXDEV: { received: "a link to another disk", hint: "Name the file on that disk itself." },
  EMFILE: { received: "too many open files", hint: "Close other programs and try again." },
  ENFILE: { received: "too many open files", hint: "Close other programs and try again." },
  ETXTBSY: { received: "a program that is running", hint: "Choose another name." },
  EDQUOT: { received: "no room left for you on the disk", hint: "Make room and try again." },
  EFBIG: { received: "a file that would be too large for the disk", hint: "Choose another disk." },
  EIO: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  ENXIO: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  ENODEV: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  ETIMEDOUT: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  ESTALE: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  EHOSTDOWN: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
  ENOTCONN: { received: "a disk that does not answer", hint: "Look whether it is still connected." },
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
 * @param file - Name people know the file by that was to be read; without it the error's own path is told, and where it has none, that
 * it was the result on its way out.
 */
export function refusedBySystem(error: unknown, file?: string): Problem | null {
  const { code, path } = error as NodeJS.ErrnoException;
  const refused = code === undefined ? undefined : REFUSED[code];
  if (refused === undefined) return null;
  const name = file ?? path ?? "the result";
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
