import { existsSync, rmSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { recover } from "../../src/cli/durable.ts";
import { snapshot } from "../proof/kills.ts";
import { at, begin, read } from "./littleFarm.ts";

const DAILY = "date,min (C),max (C)\n2026-03-01,-2,8\n2026-03-02,1,11\n2026-03-03,2,12\n";
const FILES = ["north-2026-daily.csv", "kinds.csv", "sensors.csv"].map((name) => `temperature/${name}`);

test("all that an import of a new sensor's days writes is taken back with it", async () => {
  const here = begin();
  writeFileSync(at(here, "d.csv"), DAILY);
  const before = snapshot(here.dir);
  const line = "import d.csv --sensor north --hangs outside --unit C";
  expect((await here.run(line)).stdout.split("\n").slice(-4, -1)).toEqual(
    FILES.map((file) => `${file} written.`),
  );
  const once = snapshot(here.dir);
  expect((await here.run(line)).code).toBe(0);
  expect(snapshot(here.dir)).toBe(once);
  expect((await here.run("import --undo")).stdout.split("\n").slice(1, -1)).toEqual(
    FILES.map((file) => `  ${file} taken away`),
  );
  rmSync(at(here, "temperature"), { recursive: true });
  expect(snapshot(here.dir)).toBe(before);
});

test("a killed import of them is finished by whoever comes next", async () => {
  const here = begin();
  writeFileSync(at(here, "d.csv"), DAILY);
  await here.run("import d.csv --sensor north --hangs outside --unit C");
  const steps = FILES.map((file) => ({ file, gone: true }));
  writeFileSync(at(here, ".leafpace.intent.json"), JSON.stringify({ format: "leafpace intent", steps }));
  await recover(here.dir);
  expect(FILES.filter((file) => existsSync(at(here, file)))).toEqual([]);
});

test("days that differ are told, and the journal keeps their lows and highs from before", async () => {
  const here = begin();
  writeFileSync(at(here, "d.csv"), DAILY);
  writeFileSync(at(here, "again.csv"), DAILY.replace("1,11", "0.5,11"));
  await here.run("import d.csv");
  expect((await here.run("import again.csv")).stdout.split("\n").at(-2)).toBe(
    "temperature/outside-2026-daily.csv brought up to date. 1 day differed from before: the newer values count, and temperature/changes.csv keeps the others.",
  );
  expect(read(here, "temperature", "changes.csv").split("\n").slice(2)).toEqual([
    "2026-04-20T15:00Z,again.csv,outside,2026-03-02,,,,,1,11,",
    "",
  ]);
});

test("daily records of five earlier years make the usual weather", async () => {
  const here = begin();
  const start = Date.parse("2021-01-01");
  const days = Array.from({ length: 1650 }, (_, i) => new Date(start + i * 86_400_000));
  const rows = days.map((day) => `${day.toISOString().slice(0, 10)},${day.getUTCMonth()},12\n`);
  writeFileSync(at(here, "years.csv"), `date,min (C),max (C)\n${rows.join("")}`);
  await here.run("import years.csv");
  await here.run("import log.csv");
  const { stdout } = await here.run("week --on 2026-04-20 --days 3 --json");
  expect(JSON.parse(stdout).madeFrom.usualBy).toEqual({ by: "years", years: 5 });
});
