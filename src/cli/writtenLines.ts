import { basename } from "node:path";
import { CHANGES, dailyOf } from "../folder/index.ts";
import type { Written } from "./batch.ts";

const WRITTEN: Readonly<Record<Written["change"], string>> = {
  new: "written",
  changed: "brought up to date",
  same: "holds all of it already; nothing changed",
};

function differed({ file, differing = 0 }: Written): string {
  if (differing === 0) return "";
  const what = dailyOf(basename(file)) === null ? "hour" : "day";
  return ` ${differing} ${what}${differing === 1 ? "" : "s"} differed from before: the newer values count, and temperature/${CHANGES} keeps the others.`;
}

/** What an import wrote, one line a file. */
export const writtenLines = (written: readonly Written[]): readonly string[] =>
  written.map((one) => `${one.file} ${WRITTEN[one.change]}.${differed(one)}`);
