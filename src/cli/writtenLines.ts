import { CHANGES } from "../folder/index.ts";
import type { Written } from "./batch.ts";

const WRITTEN: Readonly<Record<Written["change"], string>> = {
  new: "written",
  changed: "brought up to date",
  same: "holds all of it already; nothing changed",
};

const differed = (hours: number): string =>
  hours === 0
    ? ""
    : ` ${hours} ${hours === 1 ? "hour" : "hours"} differed from before: the newer values count, and temperature/${CHANGES} keeps the others.`;

/** What an import wrote, one line a file. */
export const writtenLines = (written: readonly Written[]): readonly string[] =>
  written.map(({ file, change, differing }) => `${file} ${WRITTEN[change]}.${differed(differing ?? 0)}`);
