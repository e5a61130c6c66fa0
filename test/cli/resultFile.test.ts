import { existsSync, mkdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];
const begin = (folder: string): Shell => {
  const here = shell(folder);
  open.push(here);
  return here;
};
afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

const OWN = "which holds your farm. Nothing was written. Give the result another name.";

test("a link to a file of the farm, or to its folder, leads to the farm all the same", async () => {
  const here = begin("stocked");
  mkdirSync(join(here.dir, "out"));
  symlinkSync(join(here.dir, "farm.yaml"), join(here.dir, "out", "week.txt"));
  symlinkSync(here.dir, join(here.dir, "out", "back"));
  for (const name of ["out/week.txt", "out/back/notes.csv", "Notes.CSV", "out/back/Temperature/new.csv"]) {
    const { code, stderr } = await here.run(["week", "-o", name]);
    expect([name, code, stderr.split('"').length > 2]).toEqual([name, 2, true]);
  }
  const { stderr } = await here.run(["week", "-o", "out/week.txt"]);
  expect(stderr).toBe(
    `--output: expected a file to write the result into, received "out/week.txt", ${OWN}\n`,
  );
  expect(readFileSync(join(here.dir, "farm.yaml"), "utf8")).toContain("name: Little Field");
});

test("a page and a text are both written where both are asked for", async () => {
  const here = begin("stocked");
  const { code, stdout, stderr } = await here.run(
    "week --on 2026-04-20T06:30 -o a.txt --html b.html --csv -",
  );
  expect([code, stderr]).toEqual([0, "Wrote b.html.\n"]);
  expect(readFileSync(join(here.dir, "a.txt"), "utf8")).toMatch(/^Little Field, Mon Apr 20/u);
  expect(readFileSync(join(here.dir, "b.html"), "utf8")).toMatch(/^<!doctype html>/iu);
  expect(stdout).toMatch(/^\uFEFF?date,/u);
});

test("without a file of its own the text is not written beside a page", async () => {
  const here = begin("stocked");
  expect((await here.run("week --on 2026-04-20T06:30 --html b.html")).stdout).toBe("");
  expect(existsSync(join(here.dir, "b.html"))).toBe(true);
});

test("two results on standard output are refused, in JSON as well", async () => {
  const here = begin("stocked");
  const { code, stdout } = await here.run("week --json --html - --csv -");
  expect([code, JSON.parse(stdout).problems]).toEqual([
    2,
    [
      {
        code: "usage",
        weight: "stops",
        file: "--csv",
        line: null,
        column: null,
        expected: "a place of its own for each result",
        received: '"-"',
        hint: "Name another file.",
      },
    ],
  ]);
});
