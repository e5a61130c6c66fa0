import { appendFileSync, existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Shell, shell } from "./shell.ts";

let here: Shell;
beforeAll(() => {
  here = shell("spring");
  const notes = ["2026-03-01,leaf,S01,4 cm,", "2026-03-02,not ready,S02,,", "2026-03-03,strip,S01,3.5 cm,"];
  appendFileSync(join(here.dir, "notes.csv"), `${notes.join("\n")}\n`);
});
afterAll(() => here.end());

const file = (): string => join(here.dir, "learned.csv");
const text = (): string => readFileSync(file(), "utf8");
const line = (about: string): string =>
  text()
    .split("\n")
    .find((each) => each.startsWith(about))!;

test("a farm without weather has learned nothing, and says so", async () => {
  const bare = shell("walked");
  const { code, stderr } = await bare.run("beds --save-learned");
  bare.end();
  expect([code, stderr]).toEqual([
    0,
    "Without any weather nothing can be learned: learned.csv is as it was.\n",
  ]);
});

test("nothing is written unless asked for; then whole, and the same again changes no byte", async () => {
  await here.run("beds --on 2026-03-06");
  expect(existsSync(file())).toBe(false);
  expect(await here.run("beds --on 2026-03-06 --save-learned")).toMatchObject({
    code: 0,
    stderr: "learned.csv written.\n",
  });
  const before = text();
  const again = await here.run("beds --on 2026-03-06 --save-learned");
  expect(again.stderr).toBe("learned.csv holds all of it already; nothing changed.\n");
  expect(text()).toBe(before);
});

test("what the grower sets there counts, says so and stays when it is written anew; rebuilt without it is as before", async () => {
  const before = text();
  const about = before
    .split("\n")
    .find((each) => each.startsWith("requirement,"))!
    .split(",")
    .slice(0, 3)
    .join(",");
  writeFileSync(file(), before.replace(new RegExp(`^(${about},.*),,$`, "mu"), "$1,125 %,north field"));
  const { stdout } = await here.run("beds --on 2026-03-06 --save-learned");
  expect(stdout.replaceAll(/\s+/gu, " ")).toContain(
    "needs 25 % more than the catalogue: as you set it in learned.csv, the farm's own.",
  );
  expect(line(about)).toMatch(/,125\.0 %,125\.0 %,125\.0 %,100\.0 %,.*,125 %,north field$/u);
  rmSync(file());
  await here.run("beds --on 2026-03-06 --save-learned");
  expect(text()).toBe(before);
});

test("a slip in it is told with its line and column, and no result may be written over it", async () => {
  const before = text();
  writeFileSync(file(), before.replace(/^(requirement,[\w-]+),,/mu, "$1,sprimg,"));
  const { code, all } = await here.run("check");
  expect(code).toBe(2);
  expect(all).toContain(
    'learned.csv:4 column "season": expected a season or nothing, received "sprimg". Did you mean "spring"?',
  );
  const refused = await here.run("beds --on 2026-03-06 --save-learned");
  expect(refused.code).toBe(2);
  writeFileSync(file(), before);
  expect((await here.run("week --json -o learned.csv")).code).toBe(2);
  expect(text()).toBe(before);
});
