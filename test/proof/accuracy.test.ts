import { expect, test } from "vitest";
import sources from "../../data/sources.json" with { type: "json" };
import { type Check, made, type Subject } from "./accuracy/check.ts";
import { dayLengths } from "./accuracy/light.ts";
import { weathersAhead } from "./accuracy/members.ts";
import { SUBJECTS } from "./accuracy/subjects.ts";

const check = (published: Check["published"], ours: number, tolerance: number): Check => ({
  what: "a number",
  source: "leafpaceDerivation",
  unit: "d",
  published,
  ours: () => ours,
  tolerance,
  why: "to try",
});

test("a number passes up to its tolerance and fails beyond it", () => {
  expect(made(check(10, 10.5, 0.5))).toMatchObject({ difference: 0.5, passed: true });
  expect(made(check(10, 9.4, 0.5)).passed).toBe(false);
});

test("within a stated range nothing differs, and beyond it the way to the nearer end counts", () => {
  expect(made(check([28, 35], 30, 0))).toMatchObject({ difference: 0, passed: true });
  expect(made(check([28, 35], 37, 3))).toMatchObject({ difference: 2, passed: true });
  expect(made(check([28, 35], 24, 3))).toMatchObject({ difference: -4, passed: false });
});

test("what is no number fails", () => {
  expect(made(check(10, Number.NaN, 100)).passed).toBe(false);
  expect(made(check([28, 35], Number.NaN, 100)).passed).toBe(false);
});

test("every check names a known source, says why its tolerance, and stands once", () => {
  for (const { name, checks } of SUBJECTS) {
    for (const { what, source, why } of checks) {
      expect(source in sources, `${name}, ${what}: ${source}`).toBe(true);
      expect(why, what).not.toBe("");
    }
    expect(new Set(checks.map(({ what }) => what)).size, name).toBe(checks.length);
  }
});

// Day lengths of every day and years of weathers ahead take long: tests beside their files sample them, the report does them all.
const LONG: readonly Subject[] = [dayLengths, weathersAhead];

test.each(SUBJECTS.filter((subject) => !LONG.includes(subject)))(
  "no number is missed: $name",
  ({ checks }) => {
    const missed = checks.map(made).filter(({ passed }) => !passed);
    expect(missed.map(({ check: { what }, difference }) => `${what}: ${difference}`)).toEqual([]);
  },
);
