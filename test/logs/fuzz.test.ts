import { expect, test } from "vitest";
import { tried, type Verdict } from "./fuzz.ts";

/** Seeds of the short run; `npm run fuzz` takes 200,000. */
const FILES = 400;

test("logs written in many ways import exactly; damaged ones import what was measured or are refused in words", async () => {
  const verdicts: Verdict[] = [];
  for (let seed = 1; seed <= FILES; seed++) verdicts.push(await tried(seed));
  expect(
    verdicts.filter(({ fault }) => fault !== null).map(({ seed, what, fault }) => ({ seed, what, fault })),
  ).toEqual([]);
  const fates = verdicts.filter(({ what }) => what !== "kept").map(({ fate }) => fate);
  expect(new Set(fates)).toEqual(new Set(["exact", "in part", "refused"]));
});
