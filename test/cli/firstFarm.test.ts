import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];
const begin = (): Shell => {
  const here = shell(null);
  open.push(here);
  return here;
};
afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

const lines = (here: Shell, file: string): readonly string[] =>
  readFileSync(join(here.dir, file), "utf8").split("\n");
const below = (here: Shell, file: string, header: RegExp): readonly string[] => {
  const all = lines(here, file);
  return all.slice(all.findIndex((line) => header.test(line)) + 1).filter((line) => line !== "");
};

describe("a farm made by one line", () => {
  test("has what was said, a tunnel for each bed, and is read without a problem", async () => {
    const here = begin();
    const { stderr } = await here.run(
      'start --latitude 44.1 --longitude -72.8 --bed "Rocket, 50 ft, sown 2026-04-01" --bed "lettuce mix, 12 m, 2026-04-05" --market fri --cloth "row cover 19 60 ft" --cloth "net, 55ft" --usual "Apr 38 60" --usual "may 70F/47F" --usual "Sep 8C 20C"',
    );
    expect(stderr).toBe(
      'Next: type a forecast, one line a day like "Mon 62 41 sun", into\n  leafpace import -\nthen run\n  leafpace week\n',
    );
    expect(below(here, "successions.csv", /^id,/u)).toEqual([
      "S01,arugula,T1,0,50,2026-04-01,,0,no",
      "S02,lettuce-mix,T2,0,39.37,2026-04-05,,0,no",
    ]);
    expect(below(here, "pieces.csv", /^id,/u)).toEqual(["C1,row-cover-19,60,1,", "C2,net,55,1,"]);
    const farm = lines(here, "farm.yaml");
    for (const line of [
      "  elevation: 0 ft           # the sea, until you write your height above it",
      "  zone: America/New_York    # this machine's; continent/city of your clock",
      "  Apr: { low: 38 F, high: 60 F }",
      "  May: { low: 47 F, high: 70 F }",
      "  Sep: { low: 46.4 F, high: 68 F }",
      "  - id: friday",
      "  - { id: T2, name: Tunnel 2, length: 39.37 ft, hoops: wire, beds: 1 }",
    ])
      expect(farm).toContain(line);
    expect((await here.run("check")).all).toBe(
      "My farm: no problems. 2 tunnels, 2 successions, 2 cloths, 0 notes.\n",
    );
  });

  test("in metres and °C", async () => {
    const here = begin();
    await here.run(
      'start --units metric --latitude -34.6 --longitude -58.4 --zone America/Argentina/Buenos_Aires --bed "kale, 15 m, sown 2026-04-01" --usual "Apr 11 23"',
    );
    expect(below(here, "successions.csv", /^id,/u)).toEqual(["S01,kale,T1,0,15,2026-04-01,,0,no"]);
    expect(lines(here, "farm.yaml")).toContain("  Apr: { low: 11 C, high: 23 C }");
    expect((await here.run("check")).code).toBe(0);
  });

  test("what is not right is told all at once, with the nearest name, and nothing is written", async () => {
    const here = begin();
    const { code, stderr } = await here.run(
      'start --latitude 44.1 --longitude 14.5 --bed "arugla, 50 ft, sown 2026-04-01" --bed "kale, 50, sown soon" --market someday --cloth "row-cover-18 60 ft" --cloth net --usual "Apr 38" --usual "Aprill 3 4"',
    );
    expect([code, stderr]).toEqual([
      2,
      `--zone: expected the farm's time zone, received nothing, and the machine's is America/New_York. Say it, like --zone America/New_York.
--bed: expected a crop, received "arugla". Did you mean "arugula"?
--bed: expected a bed like "arugula, 50 ft, sown 2026-04-01", received "kale, 50, sown soon". Write crop, length with its unit, and date sown, with commas between.
--cloth: expected a cover, received "row-cover-18". Did you mean "row-cover-19"? There are row-cover-10, row-cover-19, row-cover-30 and row-cover-50.
--cloth: expected a cloth like "row-cover-19 60 ft", received "net". Write cover and length with its unit.
--usual: expected a month's low and high like "Apr 38 60", received "Apr 38". Write month, low and high.
--usual: expected a month's low and high like "Apr 38 60", received "Aprill 3 4". Write month, low and high.
--market: expected a day of the week, received "someday". Known: Sunday, Monday, Tuesday, Wednesday, Thursday, Friday, Saturday.

8 problems to put right first.
`,
    ]);
    expect(() => lines(here, "farm.yaml")).toThrow();
  });

  test("days, decimals and several markets as growers type them", async () => {
    const here = begin();
    const { code } = await here.run(
      'start --units metric --latitude -38,72 --longitude -62,27 --zone America/Argentina/Buenos_Aires --bed "arugula, 7,5 m, sown Apr 1" --bed "spinach,15 m,1 Apr 2026" --bed "chard, 15 m, 15.4.2026" --market Wednesday --market Sat --market sat',
    );
    expect(code).toBe(0);
    expect(lines(here, "successions.csv").filter((line) => /^S/u.test(line))).toEqual([
      "S01,arugula,T1,0,7.5,2026-04-01,,0,no",
      "S02,spinach,T2,0,15,2026-04-01,,0,no",
      "S03,chard,T3,0,15,2026-04-15,,0,no",
    ]);
    const farm = lines(here, "farm.yaml").map((line) => line.split("#")[0]!.trim());
    expect(farm.filter((line) => /^(?:latitude|longitude|day):/u.test(line))).toEqual([
      "latitude: -38.72",
      "longitude: -62.27",
      "day: Wednesday",
      "day: Saturday",
    ]);
    expect((await here.run("check")).code).toBe(0);
  });

  test("overwrites nothing that is there", async () => {
    const here = begin();
    writeFileSync(join(here.dir, "successions.csv"), "mine");
    await here.run('start --bed "kale, 50 ft, sown 2026-04-01"');
    expect(lines(here, "successions.csv")).toEqual(["mine"]);
  });
});

describe("without a log", () => {
  const line =
    'start --latitude 36.1 --longitude -79.8 --bed "arugula, 50 ft, sown 2026-03-18" --market Friday --usual "Mar 37 59" --usual "Apr 45 69"';

  test("with cloth at hand the plan puts it on, and a leaf measured ends the guess", async () => {
    const here = begin();
    await here.run(`${line} --cloth "row-cover-19 60 ft"`);
    await here.run("import - --issued 2026-04-20", {
      input: "52 38 cloud\n54/37\n50 35 cloud\n53 36\n55 39\n",
    });
    const guess = (text: string): string | undefined =>
      text.replaceAll("\n", " ").match(/CARE: No log: [^;]*; measure one leaf\./u)?.[0];
    const before = (await here.run("week --on 2026-04-20")).stdout;
    expect(guess(before)).toBe(
      "CARE: No log: the size of the arugula (S01), ~2 in now (1–3), is a guess from usual weather; measure one leaf.",
    );
    expect(before).toContain("Put on row cover 19 g. Use C1 (60 ft).");
    writeFileSync(
      join(here.dir, "notes.csv"),
      "when,kind,about,value,remark\n2026-04-20 06:30,leaf,S01,2.5 in,\n",
    );
    const after = (await here.run("week --on 2026-04-20")).stdout;
    expect(guess(after)).toBeUndefined();
  });

  test("a first forecast line that is none keeps the whole forecast out", async () => {
    const here = begin();
    await here.run(line);
    const { code, stderr } = await here.run("import -", { input: "Mon 62 sun\n65 44 mixed\n" });
    expect([code, stderr]).toEqual([
      2,
      'standard input:1: expected a high and a low, received "Mon 62 sun". Write the day\'s high and low, like "Mon 62 41 sun".\nNothing was stored.\n',
    ]);
  });
});
