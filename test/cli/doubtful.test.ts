import { appendFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { type Shell, shell } from "./shell.ts";

let here: Shell | null = null;
afterEach(() => here?.end());

const STUCK = /Outside: 13 hours of Fri Apr 3 look stuck at 41 °F and (.*?)\.\n/su;

/** What the sheet says of the stuck hours, and the gaps the model was left with. */
async function told(folder: Shell): Promise<readonly [string | undefined, readonly unknown[]]> {
  const text = (await folder.run("week --on 2026-04-20")).stdout;
  const answer = JSON.parse((await folder.run("week --on 2026-04-20 --json")).stdout) as {
    readonly madeFrom: { readonly gaps: readonly { readonly from: { readonly instant: string } }[] };
  };
  return [
    STUCK.exec(text)?.[1]?.replace(/\s+/gu, " "),
    answer.madeFrom.gaps.map(({ from }) => from.instant.slice(0, 10)),
  ];
}

test("hours in which a sensor was stuck are left out of the week and told; farm.yaml can keep them", async () => {
  here = shell("little");
  await here.run("import stuck.csv");
  expect(await told(here)).toEqual(["are left out", ["2026-04-04", "2026-04-05"]]);
  appendFileSync(join(here.dir, "farm.yaml"), "keep flagged: [outside]\n");
  expect(await told(here)).toEqual(["count all the same, as farm.yaml says", ["2026-04-05"]]);
});

test("a sensor placed at import counts in the week like one placed in farm.yaml", async () => {
  here = shell("little");
  await here.run("import log.csv --sensor barn --hangs outside");
  expect((await here.run("week --on 2026-04-20")).stdout).toContain("Temperature log (barn) up to");
  await here.run("import log.csv --sensor probe --hangs T1");
  expect((await here.run("week --on 2026-04-20")).stdout).toContain("Temperature log (barn) up to");
});
