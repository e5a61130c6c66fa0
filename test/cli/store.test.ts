import { appendFileSync, existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { snapshot } from "../proof/kills.ts";
import { at, begin, read } from "./littleFarm.ts";
import { type Shell, shell } from "./shell.ts";

const LOG = "Date Time,Temp (C)\n2026-04-18 10:00,10.0\n2026-04-18 11:00,11.0\n2026-04-18 12:00,12.0\n";
const OTHER = LOG.replace("11.0", "14.5");

describe("importing", () => {
  test("says how many hours differed, lets the newer count and keeps the others in the journal", async () => {
    const here = begin();
    writeFileSync(at(here, "a.csv"), LOG);
    writeFileSync(at(here, "=b.csv"), OTHER);
    await here.run("import a.csv");
    expect((await here.run("import =b.csv")).stdout.split("\n").at(-2)).toBe(
      "temperature/outside-2026.csv brought up to date. 1 hour differed from before: the newer values count, and temperature/changes.csv keeps the others.",
    );
    expect(read(here, "temperature", "changes.csv").split("\n").slice(2)).toEqual([
      "2026-04-20T15:00Z,'=b.csv,outside,2026-04-18T15Z,11,14.5,11,1,11,11,a.csv",
      "",
    ]);
    expect(read(here, "temperature", "outside-2026.csv").split("\n")[3]).toBe(
      "2026-04-18T15Z,14.5,1,14.5,14.5,'=b.csv",
    );
    const after = snapshot(here.dir);
    expect((await here.run("import =b.csv")).stdout.split("\n").at(-2)).toBe(
      "temperature/outside-2026.csv holds all of it already; nothing changed.",
    );
    expect(snapshot(here.dir)).toBe(after);
  });

  test("of a year before there were loggers stores nothing", async () => {
    const here = begin();
    const before = snapshot(here.dir);
    for (const year of ["0203", "1899"]) {
      writeFileSync(at(here, "strange.csv"), LOG.replaceAll("2026", year));
      expect((await here.run("import strange.csv")).stderr).toBe(
        `strange.csv: expected readings of the years 1900 to 2199, received some of ${Number(year)}. Look at the logger's clock, and at the order of the dates.\n`,
      );
    }
    rmSync(at(here, "strange.csv"));
    expect(snapshot(here.dir)).toBe(before);
  });

  test("without a file says what to do", async () => {
    expect(await begin().run("import")).toMatchObject({
      code: 2,
      stderr:
        "import: expected files to take in, received none. Name a log or a forecast, or write - for standard input.\n",
    });
  });
});

describe("import --undo", () => {
  test("takes back import after import, until the folder is as if there had been none", async () => {
    const here = begin();
    writeFileSync(at(here, "a.csv"), LOG);
    writeFileSync(at(here, "b.csv"), OTHER);
    mkdirSync(at(here, "temperature"));
    mkdirSync(at(here, "forecasts"));
    const states = [snapshot(here.dir)];
    for (const line of ["import a.csv", "import b.csv forecast.csv", "import log.csv"]) {
      await here.run(line);
      states.push(snapshot(here.dir));
    }
    await here.run("import log.csv");
    expect(snapshot(here.dir)).toBe(states[3]);
    for (const before of states.slice(0, 3).reverse()) {
      expect((await here.run("import --undo")).code).toBe(0);
      expect(snapshot(here.dir)).toBe(before);
    }
    expect((await here.run("import --undo")).stderr).toBe(
      'temperature: expected an import that is remembered, received none. Only what "leafpace import" wrote can be taken back, and only the last twenty.\n',
    );
  });

  test("says what it takes back, or only would under --dry-run", async () => {
    const here = begin();
    writeFileSync(at(here, "a.csv"), LOG);
    await here.run("import a.csv forecast.csv");
    const before = snapshot(here.dir);
    expect((await here.run("import --undo --dry-run")).stdout).toBe(
      "Would be taken back: the import of a.csv, forecast.csv, 2026-04-20 15:00 UTC.\n  temperature/outside-2026.csv taken away\n  forecasts/2026-04-20T0910Z.csv taken away\n",
    );
    expect(snapshot(here.dir)).toBe(before);
    expect(JSON.parse((await here.run("import --undo --json")).stdout)).toEqual({
      format: "leafpace import undo",
      version: 1,
      takenBack: true,
      at: "2026-04-20T15:00:00.000Z",
      names: ["a.csv", "forecast.csv"],
      files: [
        { file: "temperature/outside-2026.csv", gone: true },
        { file: "forecasts/2026-04-20T0910Z.csv", gone: true },
      ],
    });
  });

  test("undo equals never, whatever was imported in whatever order", async () => {
    const hours = fc.array(fc.tuple(fc.nat(90), fc.integer({ min: -20, max: 60 })), {
      minLength: 2,
      maxLength: 12,
    });
    const logs = fc.array(hours, { minLength: 1, maxLength: 4 });
    const write = (here: Shell, name: string, readings: readonly (readonly [number, number])[]): void => {
      const sorted = [...new Map(readings)].sort(([a], [b]) => a - b);
      const lines = sorted.map(([hour, reading]) => {
        const time = new Date(Date.UTC(2025, 11, 30) + hour * 3_600_000).toISOString();
        return `${time.slice(0, 10)} ${time.slice(11, 16)},${reading}.0`;
      });
      writeFileSync(at(here, name), `Date Time,Temp (C)\n${lines.join("\n")}\n`);
    };
    await fc.assert(
      fc.asyncProperty(logs, async (all) => {
        const here = shell("little");
        mkdirSync(at(here, "temperature"));
        for (const [index, readings] of all.entries()) write(here, `${index}.csv`, readings);
        const states = [snapshot(here.dir)];
        for (const index of all.keys()) {
          await here.run(`import ${index}.csv`);
          const after = snapshot(here.dir);
          if (after !== states.at(-1)) states.push(after);
        }
        for (const before of states.slice(0, -1).reverse()) {
          await here.run("import --undo");
          expect(snapshot(here.dir)).toBe(before);
        }
        here.end();
      }),
      { seed: 1, numRuns: 12 },
    );
  });

  test("leaves a store that has changed since as it is, and says why", async () => {
    const here = begin();
    await here.run("import log.csv");
    appendFileSync(at(here, "temperature", "outside-2026.csv"), "2026-05-01T00Z,10,1,10,10,mine\n");
    const before = snapshot(here.dir);
    expect((await here.run("import --undo")).stderr).toBe(
      "temperature/outside-2026.csv: expected this file as the import of 2026-04-20 15:00 UTC left it, received changes since. Nothing is taken back, so that those changes are not lost.\n",
    );
    expect(snapshot(here.dir)).toBe(before);
  });

  test("a memory nobody can read, or that names other files, is as good as none", async () => {
    const here = begin();
    await here.run("import log.csv");
    const memory = ".leafpace.imports.json";
    const strange = read(here, memory).replace("temperature/outside-2026.csv", "temperature/../farm.yaml");
    for (const text of ["", "{", "null", "[]", '{"format":"leafpace imports","imports":[{}]}', strange]) {
      writeFileSync(at(here, memory), text);
      expect((await here.run("import --undo")).code).toBe(2);
    }
    expect(existsSync(at(here, "farm.yaml"))).toBe(true);
    expect((await here.run("import forecast.csv")).code).toBe(0);
  });
});
