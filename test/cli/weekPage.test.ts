import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { shell } from "./shell.ts";

test("week --html writes the page whole, says so on standard error, and prints nothing", async () => {
  const here = shell("little");
  try {
    for (const file of ["log.csv", "forecast.csv"]) await here.run(`import ${file}`);
    const before = readdirSync(here.dir);
    const { code, stdout, stderr } = await here.run("week --html week.html");
    expect([code, stdout, stderr]).toEqual([0, "", "Wrote week.html.\n"]);
    expect(readdirSync(here.dir).filter((name) => !before.includes(name))).toEqual(["week.html"]);
    const page = readFileSync(join(here.dir, "week.html"), "utf8");
    expect(page.startsWith("<!doctype html>")).toBe(true);
    expect(await here.run("week --html -")).toMatchObject({ code: 0, stdout: page, stderr: "" });
    const refused = await here.run("week --html nowhere/week.html");
    expect([refused.code, refused.stdout]).toEqual([2, ""]);
  } finally {
    here.end();
  }
});
