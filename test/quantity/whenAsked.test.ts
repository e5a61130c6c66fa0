import { expect, it } from "vitest";
import { whenAsked } from "../../src/quantity/index.ts";

it("works out what is asked for, once, and nothing else", () => {
  const asked: string[] = [];
  const rows: { readonly one: number; readonly two: number } = whenAsked({
    one: () => {
      asked.push("one");
      return 1;
    },
    two: () => {
      asked.push("two");
      return rows.one + 1;
    },
  });
  expect(asked).toEqual([]);
  expect([rows.two, rows.two, rows.one]).toEqual([2, 2, 1]);
  expect(asked).toEqual(["two", "one"]);
});

it("names all of them, asked for or not", () => {
  expect({ ...whenAsked({ one: () => 1, two: () => 2 }) }).toEqual({ one: 1, two: 2 });
});
