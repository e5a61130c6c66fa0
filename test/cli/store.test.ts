import { spawn } from "node:child_process";
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { commit, recover } from "../../src/cli/durable.ts";
import { locked } from "../../src/cli/lock.ts";
import { fateOf, ownerOf, ownName } from "../../src/cli/owner.ts";
import { heldTable, openTable } from "../../src/cli/table.ts";
import { storeName, storeOf } from "../../src/folder/index.ts";
import type { Problem } from "../../src/problem/index.ts";
import { snapshot } from "../proof/kills.ts";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];
const begin = (): Shell => {
  const here = shell("little");
  open.push(here);
  return here;
};
afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

const at = (here: Shell, ...path: readonly string[]): string => join(here.dir, ...path);
const read = (here: Shell, ...path: readonly string[]): string => readFileSync(at(here, ...path), "utf8");
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

  test("of a year that cannot be stores nothing", async () => {
    const here = begin();
    const before = snapshot(here.dir);
    for (const year of ["0203", "1899", "2200", "12026"]) {
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

describe("the lock", () => {
  const lockOf = (here: Shell): string => at(here, ".leafpace.lock");

  test("is taken over from a process that has gone, and from one of the same number that began later", async () => {
    const here = begin();
    const [pid, began, place, token] = (await ownName()).split("-");
    for (const gone of [`4194399-${began}-${place}-${token}`, `${pid}-1-${place}-${token}`]) {
      mkdirSync(lockOf(here));
      writeFileSync(join(lockOf(here), gone), "");
      mkdirSync(`${lockOf(here)}-${gone}`);
      expect((await here.run("import log.csv")).code).toBe(0);
      expect(readdirSync(here.dir).filter((name) => name.includes("lock"))).toEqual([]);
    }
  });

  test("a folder without a name in it is no lock", async () => {
    const here = begin();
    mkdirSync(lockOf(here));
    expect((await here.run("import log.csv")).code).toBe(0);
  });

  test.runIf(process.platform === "linux")(
    "stays with a process that is stopped, and goes with it",
    async () => {
      const [, , place, token] = (await ownName()).split("-");
      const child = spawn("sleep", ["60"]);
      child.kill("SIGSTOP");
      const began = readFileSync(`/proc/${child.pid}/stat`, "utf8").split(" ")[21];
      const owner = ownerOf(`${child.pid}-${began}-${place}-${token}`)!;
      expect(await fateOf(owner)).toBe("runs");
      child.kill("SIGKILL");
      await new Promise((ended) => child.on("exit", ended));
      expect(await fateOf(owner)).toBe("gone");
    },
  );

  test("of another machine's process nobody can tell whether it runs", async () => {
    const [pid, began, , token] = (await ownName()).split("-");
    expect(await fateOf(ownerOf(`${pid}-${began}-0123456789ab-${token}`)!)).toBe("unknown");
    expect(await fateOf(ownerOf(await ownName())!)).toBe("runs");
  });

  test("is held by one of many at a time", async () => {
    const here = begin();
    let inside = 0;
    const most: number[] = [];
    const work = async (): Promise<void> => {
      most.push(++inside);
      await new Promise((done) => setTimeout(done, 5));
      inside -= 1;
    };
    await Promise.all(Array.from({ length: 12 }, () => locked(here.dir, work)));
    expect(most).toEqual(new Array(12).fill(1));
  });
});

describe("what a killed run leaves", () => {
  test("is finished when all of it was written, and cleared away when it was not", async () => {
    const here = begin();
    const before = snapshot(here.dir);
    writeFileSync(at(here, ".leafpace-new.notes.csv"), "half");
    await recover(here.dir);
    expect(snapshot(here.dir)).toBe(before);
    const steps = [
      { file: "notes.csv", gone: false },
      { file: "forecasts/x.csv", gone: true },
    ];
    writeFileSync(at(here, ".leafpace-new.notes.csv"), "when,kind,about,value\n");
    writeFileSync(at(here, ".leafpace.intent.json"), JSON.stringify({ format: "leafpace intent", steps }));
    expect((await here.run("check")).code).toBe(0);
    expect([read(here, "notes.csv"), existsSync(at(here, ".leafpace.intent.json"))]).toEqual([
      "when,kind,about,value\n",
      false,
    ]);
  });

  test("an intent that names other files is none of ours", async () => {
    const here = begin();
    const names = [
      "../outside.csv",
      "/etc/passwd",
      "farm.yaml",
      "temperature/../farm.yaml",
      "temperature/.x",
    ];
    for (const file of names) {
      const intent = { format: "leafpace intent", steps: [{ file, gone: true }] };
      writeFileSync(at(here, ".leafpace.intent.json"), JSON.stringify(intent));
      await recover(here.dir);
      expect(existsSync(at(here, "farm.yaml"))).toBe(true);
    }
  });

  test("a folder taken away midway is told, and the next run begins anew", async () => {
    const here = begin();
    await here.run("import log.csv");
    const whole = snapshot(here.dir);
    const gone = mkdtempSync(join(tmpdir(), "leafpace-gone-"));
    renameSync(here.dir, join(gone, "farm"));
    const changes = [{ file: "notes.csv", bytes: Buffer.from("x") }];
    const failed = commit(join(gone, "nowhere", "farm"), changes);
    await failed.then(() => rmSync(join(gone, "nowhere"), { recursive: true }));
    renameSync(join(gone, "farm"), here.dir);
    rmSync(gone, { recursive: true });
    rmSync(at(here, "temperature"), { recursive: true });
    await here.run("import log.csv");
    expect(JSON.parse(snapshot(here.dir)).map(([name]: [string]) => name)).toEqual(
      JSON.parse(whole).map(([name]: [string]) => name),
    );
  });
});

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
    for await (const row of table!.rows(problems))
      if (row.line === 2) appendFileSync(at(here, "log.csv"), "x");
    expect(problems.map(({ code, file }) => [code, file])).toEqual([["file-changed", "log.csv"]]);
  });

  test("a table held whole has at most a million cells, and a line at most 131072 bytes", async () => {
    const here = begin();
    writeFileSync(at(here, "pieces.csv"), `cover,length (ft)\n${`${",".repeat(50_000)}\n`.repeat(21)}`);
    expect((await here.run("check --json")).stdout).toContain('"code": "table-too-long"');
    const { table } = heldTable(Buffer.from(`a,b\n${"x".repeat(200_000)}\n`), "x.csv");
    const problems: Problem[] = [];
    for await (const row of table!.rows(problems)) expect(row.line).toBe(1);
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
