import { expect, test } from "vitest";
import sources from "../../data/sources.json" with { type: "json" };
import { made } from "./accuracy/check.ts";
import { SUBJECTS } from "./accuracy/subjects.ts";

test.each(SUBJECTS)("$name: every number from outside is met within its tolerance", ({ checks }) => {
  expect(checks.length).toBeGreaterThan(0);
  const missed = checks.map(made).filter(({ passed }) => !passed);
  expect(missed.map(({ check, ours }) => `${check.what}: ${ours}`)).toEqual([]);
});

test.each(SUBJECTS)("$name: every check names its source, its unit and why its tolerance", ({ checks }) => {
  for (const { what, source, why, unit } of checks) {
    expect(Object.keys(sources), what).toContain(source);
    expect(why, what).not.toBe("");
    expect(unit, what).not.toBe("");
  }
});
