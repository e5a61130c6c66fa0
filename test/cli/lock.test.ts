import { spawn } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { commit, recover } from "../../src/cli/durable.ts";
import { locked } from "../../src/cli/lock.ts";
import { fateOf, ownerOf, ownName } from "../../src/cli/owner.ts";
import { snapshot } from "../proof/kills.ts";
import { at, begin, read } from "./littleFarm.ts";
import type { Shell } from "./shell.ts";

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
