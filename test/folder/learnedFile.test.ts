import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../src/farm/index.ts";
import { type LearnedRow, learnedFile, writeLearned } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";

const known = catalogue();

const read = (text: string) => {
  const rows = (parse(text, { relax_column_count: true }) as string[][]).map((cells, i) => ({
    cells,
    line: i + 1,
  }));
  return learnedFile({ file: "learned.csv", rows }, known);
};

const row = (more: Partial<LearnedRow>): LearnedRow => ({
  what: "requirement",
  name: "arugula",
  season: null,
  value: 1.12,
  spread: 0.06,
  own: 0.7,
  from: "five cuts and two leaves",
  keep: "",
  remark: "",
  ...more,
});

describe("learned.csv", () => {
  test("is a table with commas that says what is learned, from what, and keeps nothing by itself", () => {
    const text = writeLearned([
      row({}),
      row({ what: "shade", name: "shade-40", value: 0.3, from: "ten pairs", remark: "by the creek, low" }),
    ]);
    expect(text.split("\n").slice(2)).toEqual([
      "what,name,season,value,least,most,own,from,keep,remark",
      "requirement,arugula,,112.0 %,103.7 %,121.0 %,70.0 %,five cuts and two leaves,,",
      'shade,shade-40,,30.0 %,27.8 %,32.4 %,70.0 %,ten pairs,,"by the creek, low"',
      "",
    ]);
    expect(read(text)).toMatchObject({ kept: [], problems: [] });
  });

  test("freezes a line that is to stay as is, with its range", () => {
    const { kept, cells } = read(writeLearned([row({ keep: "as is", season: "spring", remark: "good" })]));
    expect(kept).toMatchObject([
      { what: "requirement", name: "arugula", season: "spring", line: 4, value: { typed: false } },
    ]);
    expect(kept[0]!.value.shift).toBeCloseTo(Math.log(1.12), 3);
    expect(kept[0]!.value.spread).toBeCloseTo(0.06, 2);
    expect(cells).toEqual([
      { what: "requirement", name: "arugula", season: "spring", keep: "as is", remark: "good" },
    ]);
  });

  test("takes a value set by hand for the farm's own, in the column keep or over the value itself", () => {
    const typed = { shift: Math.log(1.3), spread: 0, typed: true };
    const [inKeep, over] = [row({ keep: "130 %" }), row({})].map((each) => writeLearned([each]));
    expect(read(inKeep!).kept.map(({ value }) => value)).toEqual([typed]);
    const corrected = read(over!.replace("112.0 %", "130 %"));
    expect(corrected.kept.map(({ value }) => value)).toEqual([typed]);
    expect(corrected.cells.map(({ keep }) => keep)).toEqual(["130.0 %"]);
  });

  test("tells every fault with its line and column", () => {
    const head = "what,name,season,value,least,most,own,from,keep,remark\n";
    const lines = [
      "requirement,arugla,,100 %,90 %,111 %,,,,",
      "day warmth,shade-40,,100 %,90 %,111 %,,,,",
      "requirement,kale,sprung,100 %,90 %,111 %,,,,",
      "requirement,kale,,100 %,90 %,111 %,,,maybe,",
      "requirement,chard,,100 %,90 %,111 %,,,900 %,",
      "requirement,mizuna,,100 %,111 %,90 %,,,,",
      "bolting,mizuna,,100 %,90 %,111 %,,,,",
      "requirement,mizuna,,100 %,90 %,111 %,,,,",
    ];
    const { problems, kept } = read(head + lines.join("\n"));
    expect(kept).toEqual([]);
    expect(problems.map(({ line, column, code }) => [line, column, code])).toEqual([
      [2, "name", "learned-name-unknown"],
      [3, "name", "learned-name-unknown"],
      [4, "season", "season-unknown"],
      [5, "keep", "keep-unreadable"],
      [6, "keep", "learned-out-of-range"],
      [7, "most", "range-backwards"],
      [8, "what", "learned-what-unknown"],
      [9, "name", "learned-twice"],
    ]);
    expect(formatProblem(problems[3]!)).toBe(
      'learned.csv:5 column "keep": expected nothing, "as is", or a share like 110 %, received "maybe". Leave it empty to go on learning.',
    );
  });
});
