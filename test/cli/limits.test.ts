import { appendFileSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { heldTable, openTable } from "../../src/cli/table.ts";
import { storeName, storeOf } from "../../src/folder/index.ts";
import type { Problem } from "../../src/problem/index.ts";
import { snapshot } from "../proof/kills.ts";
import { at, begin, read } from "./littleFarm.ts";

describe("links that lead out of the folder are not followed", () => {
  test.each([
    ["notes.csv", "note S01 4in", "notes.csv"],
    ["temperature", "import log.csv", "temperature/outside-2026.csv"],
    ["forecasts", "import forecast.csv", "forecasts/2026-04-20T0910Z.csv"],
  ])("%s", async (name, line, told) => {
    const here = begin();
    const elsewhere = mkdtempSync(join(tmpdir(), "leafpace-elsewhere-"));
    const target = name.endsWith(".csv") ? join(elsewhere, name) : elsewhere;
    if (name.endsWith(".csv")) writeFileSync(target, "when,kind,about,value\n");
    rmSync(at(here, name), { force: true });
    symlinkSync(target, at(here, name));
    const before = snapshot(elsewhere);
    const { code, stderr } = await here.run(line);
    expect([code, snapshot(elsewhere)]).toEqual([2, before]);
    expect(stderr).toContain(
      `${told}: expected a file within the farm folder, received a link that leads out of it. Put the file itself in the place of the link.\n`,
    );
    rmSync(elsewhere, { recursive: true });
  });
});

test("a sensor's name leads nowhere but into the store", async () => {
  const here = begin();
  const farm = read(here, "farm.yaml");
  const names = [
    "../../x",
    "/tmp/x",
    "..",
    "a/b",
    "a\\\\b",
    "a\\0b",
    "nul.",
    "con.csv",
    "a b",
    "__proto__ ",
    "C:x",
  ];
  for (const name of names) {
    writeFileSync(at(here, "farm.yaml"), `${farm}sensors:\n  "${name}": outside\n`);
    const before = snapshot(here.dir);
    expect([name, (await here.run("import log.csv")).code]).toEqual([name, 2]);
    expect(snapshot(here.dir)).toBe(before);
  }
  // Windows opens a device for "con" or "con.csv", and none for "con-2026.csv".
  for (const name of ["con", "aux", "nul", "com1", "__proto__", "constructor"]) {
    writeFileSync(at(here, "farm.yaml"), `${farm}sensors:\n  ${name}: outside\n`);
    expect([name, (await here.run("import log.csv")).code]).toEqual([name, 0]);
    expect(storeOf(storeName(name, 2026))).toEqual({ sensor: name, year: 2026 });
  }
  expect(Object.keys({})).toEqual([]);
});

describe("limits", () => {
  test("a file that is written while it is read is told and not stored", async () => {
    const here = begin();
    const { table } = await openTable(at(here, "log.csv"), "log.csv");
    const problems: Problem[] = [];
    await table!.walk((row) => {
      if (row.line === 2) appendFileSync(at(here, "log.csv"), "x");
    }, problems);
    expect(problems.map(({ code, file }) => [code, file])).toEqual([["file-changed", "log.csv"]]);
  });

  test("a table held whole has at most a million cells, and a line at most 131072 bytes", async () => {
    const here = begin();
    writeFileSync(at(here, "pieces.csv"), `cover,length (ft)\n${`${",".repeat(50_000)}\n`.repeat(21)}`);
    expect((await here.run("check --json")).stdout).toContain('"code": "table-too-long"');
    const { table } = heldTable(Buffer.from(`a,b\n${"x".repeat(200_000)}\n`), "x.csv");
    const problems: Problem[] = [];
    await table!.walk((row) => expect(row.line).toBe(1), problems);
    expect(problems.map(({ code }) => code)).toEqual(["quote-stray"]);
  });

  test("settings have at most 100 kB; aliases are never multiplied, nor groups within groups without end", async () => {
    const here = begin();
    const farm = read(here, "farm.yaml");
    writeFileSync(at(here, "farm.yaml"), `${farm}# ${"x".repeat(100_000)}\n`);
    expect((await here.run("check")).stdout).toBe(
      "farm.yaml: expected a file of at most 100 kB, received one of 101 kB. Look whether it is the right file.\n",
    );
    const laughs = Array.from({ length: 12 }, (_, i) => `  l${i + 1}: &l${i + 1} [${`*l${i},`.repeat(10)}]`);
    writeFileSync(at(here, "farm.yaml"), `${farm}limits:\n  l0: &l0 lol\n${laughs.join("\n")}\n`);
    expect((await here.run("check")).code).toBe(2);
    for (const deep of [`${"[".repeat(5000)}`, `${"{a: ".repeat(2000)}`, `\n  ${"- ".repeat(5000)}`]) {
      writeFileSync(at(here, "farm.yaml"), `${farm}limits: ${deep}\n`);
      expect((await here.run("check")).code).toBe(2);
    }
  });

  test("no name sets a prototype", async () => {
    const here = begin();
    const farm = read(here, "farm.yaml");
    for (const name of ["__proto__", "constructor", "toString"]) {
      writeFileSync(
        at(here, "farm.yaml"),
        `${farm}${name}: { polluted: yes }\ncrops:\n  ${name}: { polluted: yes }\n`,
      );
      expect([name, (await here.run("check")).code]).toEqual([name, 2]);
      writeFileSync(at(here, "farm.yaml"), farm);
      writeFileSync(at(here, "f.csv"), `date,low (C),high (C),sky\n2026-04-20,1,9,${name}\n`);
      expect([name, (await here.run("import f.csv")).code]).toEqual([name, 2]);
      writeFileSync(at(here, "g.csv"), `${name},Date Time,Temp (C)\n1,2026-04-18 10:00,10.0\n`);
      expect([name, (await here.run(["import", "g.csv", "--column", name])).code]).toEqual([name, 2]);
      expect([name, (await here.run(["note", name, "4in"])).code]).toEqual([name, 2]);
      expect([name, (await here.run(["note", "S01", "cut", "5", name])).code]).toEqual([name, 2]);
      writeFileSync(at(here, "farm.yaml"), farm.replace("elevation: 620 ft", `elevation: 620 ${name}`));
      expect([name, (await here.run("check")).code]).toEqual([name, 2]);
      writeFileSync(at(here, "farm.yaml"), farm);
      writeFileSync(
        at(here, "successions.csv"),
        `id,crop,tunnel,from (ft),to (ft),sown\n${name},${name},${name},0,5,2026-03-20\n`,
      );
      expect([name, (await here.run("check")).code]).toEqual([name, 2]);
      writeFileSync(at(here, "successions.csv"), "id,crop,tunnel,from (ft),to (ft),sown\n");
    }
    expect(({} as { readonly polluted?: string }).polluted).toBeUndefined();
  });
});
