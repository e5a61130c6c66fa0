import { expect, test } from "vitest";
import { didYouMean, formatProblem, type Problem, unlikeInNumber } from "../../src/problem/index.ts";

const base: Problem = {
  code: "date-unreadable",
  weight: "stops",
  file: "successions.csv",
  line: 14,
  column: "sown",
  expected: "a date like 2026-03-01",
  received: '"1.3.26"',
  hint: "Use year-month-day.",
};

test("a problem in a table names file, line and column, what was expected and received, and the next step", () => {
  expect(formatProblem(base)).toBe(
    'successions.csv:14 column "sown": expected a date like 2026-03-01, received "1.3.26". Use year-month-day.',
  );
});

test("a problem in settings names the setting's path", () => {
  expect(formatProblem({ ...base, file: "farm.yaml", line: 3, column: "limits.wind" })).toBe(
    'farm.yaml:3 "limits.wind": expected a date like 2026-03-01, received "1.3.26". Use year-month-day.',
  );
});

test("a problem without line and column names the file alone", () => {
  expect(formatProblem({ ...base, line: null, column: null })).toBe(
    'successions.csv: expected a date like 2026-03-01, received "1.3.26". Use year-month-day.',
  );
});

test("a place in a text is a number", () => {
  expect(formatProblem({ ...base, file: "farm.yaml", column: 7 })).toContain("farm.yaml:14 column 7: ");
});

test("the nearest known name is offered, and none when none is near", () => {
  expect(didYouMean("spinnach", ["spinach", "arugula"])).toBe("spinach");
  expect(didYouMean("Lettuce Mix", ["lettuce-mix"])).toBe("lettuce-mix");
  expect(didYouMean("tomato", ["spinach", "arugula"])).toBeNull();
});

test("another number is no slip of spelling, and one letter is near to nothing", () => {
  const covers = ["row-cover-10", "row-cover-19", "row-cover-30", "net"];
  expect(didYouMean("row-cover-17", covers)).toBeNull();
  expect(unlikeInNumber("row-cover-17", covers)).toEqual(["row-cover-19", "row-cover-10", "row-cover-30"]);
  expect(unlikeInNumber("row-cover-91", covers)[0]).toBe("row-cover-19");
  expect(unlikeInNumber("net", covers)).toEqual([]);
  expect(didYouMean("S9", ["S1", "S2"])).toBeNull();
  expect(didYouMean("S9", ["S09"])).toBe("S09");
  expect(didYouMean("a", ["b", "ab"])).toBeNull();
});
