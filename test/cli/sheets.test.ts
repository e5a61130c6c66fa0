import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { snapshot } from "../proof/kills.ts";
import { type Shell, shell } from "./shell.ts";

const ISSUE = "week --issue --members 8 --on 2026-04-20 -o week.txt";
const FILE = "2026-04-20T1059Z.json";

let here: Shell;
beforeEach(() => {
  here = shell("stocked");
});
afterEach(() => here.end());
const at = (...parts: readonly string[]): string => join(here.dir, ...parts);
const kept = (): readonly string[] => readdirSync(at("sheets")).sort();

describe("week --issue", () => {
  test("keeps in sheets/ what --json prints, and prints the sheet as ever", async () => {
    const { code, stdout, stderr } = await here.run("week --issue --members 8 --on 2026-04-20");
    expect([code, stderr]).toEqual([0, `Kept as sheets/${FILE}.\n`]);
    expect(stdout).toBe((await here.run("week --members 8 --on 2026-04-20")).stdout);
    const json = await here.run("week --json --members 8 --on 2026-04-20");
    expect(readFileSync(at("sheets", FILE), "utf8")).toBe(json.stdout);
    expect(kept()).toEqual([FILE]);
  });

  test("again with the same answer writes nothing; with another one keeps both", async () => {
    await here.run(ISSUE);
    const before = snapshot(here.dir);
    expect((await here.run(ISSUE)).stderr).toBe(`Kept before, the same, as sheets/${FILE}.\n`);
    expect(snapshot(here.dir)).toBe(before);
    writeFileSync(at("notes.csv"), "when,kind,about,value,remark\n2026-04-18 07:00,leaf,S01,1 in,\n");
    expect((await here.run(ISSUE)).stderr).toBe("Kept as sheets/2026-04-20T1059Z-2.json.\n");
    expect((await here.run(ISSUE)).stderr).toBe(
      "Kept before, the same, as sheets/2026-04-20T1059Z-2.json.\n",
    );
    expect(kept()).toEqual(["2026-04-20T1059Z-2.json", FILE]);
  });

  test("leaves nothing half: the next run clears away what a killed one had begun, or finishes it", async () => {
    mkdirSync(at("sheets"));
    writeFileSync(at("sheets", ".leafpace-new.2026-04-13T1059Z.json"), '{"leafpace": "we');
    await here.run(ISSUE);
    expect(kept()).toEqual([FILE]);
    const text = readFileSync(at("sheets", FILE), "utf8");
    rmSync(at("sheets", FILE));
    writeFileSync(at("sheets", `.leafpace-new.${FILE}`), text);
    const steps = [{ file: `sheets/${FILE}`, gone: false }];
    writeFileSync(
      at(".leafpace.intent.json"),
      JSON.stringify({ format: "leafpace intent", version: 1, steps }),
    );
    await here.run("score");
    expect(kept()).toEqual([FILE]);
    expect(readFileSync(at("sheets", FILE), "utf8")).toBe(text);
    expect(existsSync(at(".leafpace.intent.json"))).toBe(false);
  });

  test("follows no link out of the folder", async () => {
    const away = shell(null);
    try {
      symlinkSync(away.dir, at("sheets"));
      const { code, stderr } = await here.run(ISSUE);
      expect([code, stderr]).toEqual([
        2,
        `sheets/${FILE}: expected a file within the farm folder, received a link that leads out of it. Put the file itself in the place of the link.\n`,
      ]);
      expect(readdirSync(away.dir)).toEqual([]);
    } finally {
      away.end();
    }
  });
});

describe("a sheet that cannot be read", () => {
  const BROKEN =
    "sheets/2026-04-13T1059Z.json: expected a whole JSON text, received a text that is none, or is cut off. Take the file away or bring it back from a copy; leafpace only passes it over.";

  test("is passed over and told by score and by check", async () => {
    await here.run(ISSUE);
    writeFileSync(at("sheets", "2026-04-13T1059Z.json"), "{");
    writeFileSync(at("sheets", "read me.txt"), "mine");
    const { code, stdout } = await here.run("score --json --on 2026-05-01");
    expect([code, JSON.parse(stdout).sheets]).toEqual([0, 1]);
    expect((await here.run("score --strict --on 2026-05-01")).code).toBe(1);
    expect((await here.run("check")).stdout).toContain(BROKEN);
  });
});

test("score --html writes the page whole, says so on standard error, and prints nothing", async () => {
  const { code, stdout, stderr } = await here.run("score --html score.html");
  expect([code, stdout, stderr]).toEqual([0, "", "Wrote score.html.\n"]);
  const page = readFileSync(at("score.html"), "utf8");
  expect(page.startsWith("<!doctype html>")).toBe(true);
  expect(await here.run("score --html -")).toMatchObject({ code: 0, stdout: page, stderr: "" });
});
