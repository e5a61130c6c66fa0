import { appendFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { at, begin, read } from "./littleFarm.ts";

const filled = async () => {
  const here = begin();
  for (const file of ["log.csv", "forecast.csv"]) await here.run(`import ${file}`);
  return here;
};

test("what a farm says of its own takes the place of the starting values in its week, and in nothing else", async () => {
  const here = await filled();
  appendFileSync(at(here, "farm.yaml"), "selling: { braising: 40 %, other market: 75 % }\n");
  const { settings } = JSON.parse((await here.run("week --json --members 8")).stdout);
  expect(settings).toEqual({
    ...catalogue().settings,
    members: 8,
    shareBraising: 0.4,
    otherMarketShare: 0.75,
  });
});

test("a long tunnel is planned part by part", async () => {
  const here = await filled();
  const farm = read(here, "farm.yaml").replace(
    "id: T2, name: Creek 2, length: 50 ft,",
    "id: T2, name: Long Row, length: 100 ft, sections: 2,",
  );
  writeFileSync(at(here, "farm.yaml"), farm);
  appendFileSync(at(here, "successions.csv"), "S03,mizuna,T2,60,90,2026-03-24,friday,0,\n");
  const { tunnels, successions } = JSON.parse((await here.run("week --json --members 8")).stdout);
  expect(tunnels.map(({ tunnel }: { tunnel: string }) => tunnel)).toEqual(["T1", "T2-1", "T2-2"]);
  expect(
    successions.map((one: { succession: string; tunnel: string }) => [one.succession, one.tunnel]),
  ).toEqual([
    ["S01", "T1"],
    ["S02", "T2-1"],
    ["S03", "T2-2"],
  ]);
});

test("what is settled is read before anything is planned, and every slip in it is told", async () => {
  const here = await filled();
  const { code, stdout, stderr } = await here.run([
    "week",
    "--keep",
    "T1 as it is",
    "--keep",
    "Creek 2 bare from Wedensday",
    "--keep",
    "S09 cut Friday",
  ]);
  expect([code, stdout]).toEqual([2, ""]);
  expect(
    stderr,
  ).toBe(`--keep: expected something settled, like "Creek 2 bare all week" or "Creek 2 as it is until Friday", received "Creek 2 bare from Wedensday". Did you mean "Creek 2 bare from Wednesday"?
--keep: expected something settled, like "Creek 1 bare" or "S01 cut Friday", received "S09 cut Friday". S09 is none of the successions known here: S01, S02.

2 problems to put right first.
`);
  expect(await here.run(["week", "--keep", "T1 as it is", "--keep", "S02 not cut"])).toMatchObject({
    code: 0,
    stderr: "",
  });
});
