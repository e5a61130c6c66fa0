import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach } from "vitest";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];

/** The little farm in a folder of its own, gone after the test. */
export const begin = (): Shell => {
  const here = shell("little");
  open.push(here);
  return here;
};

afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

export const at = (here: Shell, ...path: readonly string[]): string => join(here.dir, ...path);
export const read = (here: Shell, ...path: readonly string[]): string =>
  readFileSync(at(here, ...path), "utf8");
