import { describe, expect, test } from "vitest";
import { dateColumn } from "../../src/folder/dateColumn.ts";

const read = (...texts: readonly string[]): (string | null)[] => {
  const column = dateColumn(texts, null);
  return texts.map((text) => column.read(text));
};

describe("a column of dates", () => {
  test("one date that fits a single order settles all of them", () => {
    expect(read("4/2/2026", "4/20/2026")).toEqual(["2026-04-02", "2026-04-20"]);
    expect(read("02.04.2026", "20.04.2026")).toEqual(["2026-04-02", "2026-04-20"]);
    expect(read("2/4/26", "20/4/26")).toEqual(["2026-04-02", "2026-04-20"]);
    expect(read("20. 4. 2026", "2026-04-21")).toEqual(["2026-04-20", "2026-04-21"]);
  });

  test.each([
    ["2026-04-20"],
    ["2026/04/20"],
    ["20-Apr-26"],
    ["20-Apr-2026"],
    ["Apr 20 2026"],
    ["April 20, 2026"],
    ["Monday, April 20, 2026"],
    ["20 April 2026"],
    ["46132"],
    ["4/20/2026 0:00"],
    ["2026-04-20 00:00:00"],
  ])("%s is the twentieth of April", (text) => {
    expect(read(text)).toEqual(["2026-04-20"]);
  });

  test("nothing is guessed where several orders fit; both meanings are told", () => {
    expect(dateColumn(["2026-04-01", "4/4/2026", "3/4/2026"], null).ambiguous).toEqual({
      text: "3/4/2026",
      meanings: ["2026-03-04", "2026-04-03"],
    });
    expect(dateColumn(["20-04-26", "21-04-22"], null).ambiguous?.meanings).toEqual([
      "2026-04-20",
      "2020-04-26",
    ]);
    expect(dateColumn(["4/4/2026"], null).ambiguous).toBeNull();
  });

  test("two orders in one column are read in neither", () => {
    expect(read("4/20/2026", "20.4.2026", "2026-04-20")).toEqual([null, null, "2026-04-20"]);
  });

  test("one date that does not fit the order of the others is left out, two leave the order open", () => {
    expect(read("13/4/2026", "14/4/2026", "3/5/2026", "4/20/2026")).toEqual([
      "2026-04-13",
      "2026-04-14",
      "2026-05-03",
      null,
    ]);
    expect(read("13/4/2026", "14/4/2026", "4/20/2026", "4/21/2026")).toEqual([null, null, null, null]);
  });

  test("a day its month lacks settles the order like any other, and says why it is none", () => {
    const column = dateColumn(["3/4/2026", "31/6/2026"], null);
    expect(["3/4/2026", "31/6/2026"].map((text) => column.read(text))).toEqual(["2026-04-03", null]);
    expect(column.noSuchDay("31/6/2026")).toBe("June has 30 days.");
    expect(column.noSuchDay("30 Feb 2024")).toBe("February has 29 days in 2024.");
    expect(column.noSuchDay("soon")).toBeNull();
  });

  test("a date without its year, a day no month has and a small number are no dates", () => {
    expect(read("20-Apr", "2/30/2026", "5", "soon", "")).toEqual([null, null, null, null, null]);
  });

  test("what stands behind the date stays, a spreadsheet's seconds and day numbers aside", () => {
    const column = dateColumn(["4/20/2026 7:10 AM"], null);
    expect(column.yearFirst("4/20/2026 7:10 AM")).toBe("2026-04-20 7:10 AM");
    expect(column.yearFirst("4/20/2026 07:10:00")).toBe("2026-04-20 07:10");
    expect(column.yearFirst("4/20/2026 evening")).toBe("2026-04-20 evening");
    expect(column.yearFirst("46132.298611")).toBe("2026-04-20 07:10");
    expect(column.yearFirst("46132,75")).toBe("2026-04-20 18:00");
    expect(column.yearFirst("2026-04-20T07:10")).toBe("2026-04-20 07:10");
    expect(column.yearFirst("2026-04-20 7 pm")).toBe("2026-04-20 7 pm");
    expect(column.yearFirst("soon")).toBe("soon");
  });
});
