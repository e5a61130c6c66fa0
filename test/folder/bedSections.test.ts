import { describe, expect, test } from "vitest";
import { coverHistory, lyingAt, tunnelIds } from "../../src/farm/index.ts";
import { NOTHING_SAID, noteWalk, noteWords } from "../../src/folder/index.ts";
import { feet, instantAt } from "../../src/quantity/index.ts";
import { farmOf, messages, problemsOf } from "./fixtures.ts";
import { LONG_ROW, longRow, NOTED, OWNED, SOWN } from "./longRow.ts";

const NOW = instantAt("America/New_York", "2026-04-20", 11);

const told = (...beds: readonly string[]): string[] =>
  problemsOf({ farm: LONG_ROW, successions: [SOWN, ...beds].join("\n") });

describe("a long tunnel covered in parts", () => {
  test("is one tunnel for each section, each with its own length", () => {
    expect(longRow.tunnels.slice(2)).toEqual([
      {
        id: "T9-1",
        name: "Long Row, part 1",
        length: feet(50),
        hoops: "wire",
        beds: 1,
        section: { of: "T9", name: "Long Row", from: 0 },
      },
      {
        id: "T9-2",
        name: "Long Row, part 2",
        length: feet(50),
        hoops: "wire",
        beds: 1,
        section: { of: "T9", name: "Long Row", from: feet(50) },
      },
    ]);
    expect(tunnelIds(longRow.tunnels)).toEqual(["T1", "T2", "T9", "T9-1", "T9-2"]);
  });

  test("may have sections of unlike lengths, which come to its own", () => {
    const { tunnels } = farmOf({ farm: LONG_ROW.replace("sections: 2", "sections: [60 ft, 40 ft]") });
    expect(tunnels.slice(2).map(({ id, length }) => [id, length])).toEqual([
      ["T9-1", feet(60)],
      ["T9-2", feet(100) - feet(60)],
    ]);
    const farm = (sections: string): string => LONG_ROW.replace("sections: 2", `sections: ${sections}`);
    expect(problemsOf({ farm: farm("[60 ft, 50 ft]") })).toEqual([
      'farm.yaml:11 "tunnels[3].sections": expected sections that come to 100 ft, the length of the tunnel, received a list. They come to 110 ft; correct one of them or the tunnel.',
    ]);
    expect(problemsOf({ farm: farm("[0 ft, 100 ft]") })).toEqual([
      'farm.yaml:11 "tunnels[3].sections[1]": expected a length above zero, received "0 ft". Measure the section along its beds.',
    ]);
    expect(problemsOf({ farm: farm("two") })).toEqual([
      'farm.yaml:11 "tunnels[3].sections": expected a number of sections from 1 to 20, received "two". Write a whole number.',
    ]);
    expect(farmOf({ farm: farm("1") }).tunnels.map(({ id }) => id)).toEqual(["T1", "T2", "T9"]);
  });

  test("has sections that are called like no other tunnel", () => {
    const farm = LONG_ROW.replace("id: T1,", "id: T9-1,");
    expect(problemsOf({ farm })).toEqual([
      'farm.yaml:11 "tunnels[3].sections": expected names no other tunnel has, as T9-1, received "2". Call the other one differently.',
    ]);
  });

  test("gives a bed measured along the whole of it to the section it lies in", () => {
    expect(longRow.successions.map(({ id, tunnel, from, to }) => [id, tunnel, from, to])).toEqual([
      ["S04", "T1", 0, feet(50)],
      ["S05", "T9-1", 0, feet(50)],
      ["S06", "T9-2", feet(60) - feet(50), feet(80) - feet(50)],
    ]);
    const { successions } = farmOf({
      farm: LONG_ROW,
      successions: `${SOWN}\nS01,spinach,T9-2,10,30,2026-03-20`,
    });
    expect(successions[0]).toMatchObject({ tunnel: "T9-2", from: feet(10), to: feet(30) });
  });

  test("has no bed across a border, and none beyond its end", () => {
    expect(told("S01,spinach,T9,40,60,2026-03-20", "S02,mizuna,T9,80,120,2026-03-20")).toEqual([
      'successions.csv:2 column "from": expected a bed within one part of T9: 0 ft to 50 ft or 50 ft to 100 ft, received 40 ft to 60 ft. Write it as 2 lines that meet at 50 ft, each with its own id.',
      'successions.csv:3 column "to": expected at most 100 ft, the length of T9, received 120 ft. Correct the bed here or the tunnel\'s length in farm.yaml.',
    ]);
  });

  test("has its beds and its notes looked at within each section", () => {
    expect(told("S01,spinach,T9,60,80,2026-03-20", "S02,mizuna,T9,70,90,2026-03-21")).toEqual([
      'successions.csv:3 column "from": expected a stretch of T9-2 that is free, received 20 ft to 40 ft, where S01 stands (line 2). Correct one of the two, or note the last cut of S01.',
    ]);
    expect(told("S01,spinach,T8,60,80,2026-03-20")).toEqual([
      'successions.csv:2 column "tunnel": expected a tunnel, received "T8". Known: T1, T2, T9, T9-1, T9-2.',
    ]);
    expect(
      problemsOf({
        farm: LONG_ROW,
        successions: `${SOWN}\nS01,spinach,T9,40,60,2026-03-20`,
        notes: `${NOTED}\n2026-04-02,emerged,S01,,`,
      }),
    ).toHaveLength(1);
  });

  test("may be named as a whole in notes, which then are about each section", () => {
    const on = instantAt("America/New_York", "2026-04-15", 12);
    const lying = longRow.tunnels.slice(2).map((tunnel) => lyingAt(coverHistory(longRow, tunnel), on));
    expect(lying).toEqual([[{ cover: "row-cover-19", state: "on" }], []]);
  });

  test("needs a piece for each section it is said to lie on", () => {
    expect(longRow.pieces[0]!.liesOn).toEqual(["T9-1", "T9-2"]);
    expect(problemsOf({ farm: LONG_ROW, pieces: `${OWNED}\nL,row-cover-19,60,1,,T9` })).toEqual([
      'pieces.csv:2 column "lies on": expected at most 1 tunnel, as many as there are pieces, received "T9", which is T9-1 and T9-2. Raise the count or take a tunnel out.',
    ]);
  });

  test("goes by either name in a line of words", () => {
    const rows = (text: string): string[] => {
      const { notes, problems } = noteWalk(text, { file: "a", numbered: true }, longRow, NOW, NOTHING_SAID);
      expect(messages({ problems })).toEqual([]);
      return notes.map(({ row }) => `${row.about} ${row.value}`);
    };
    expect(rows("T9 row-cover-19 vented")).toEqual(["T9-1 row-cover-19 vented", "T9-2 row-cover-19 vented"]);
    expect(rows("long row net on")).toEqual(["T9-1 net on", "T9-2 net on"]);
    for (const name of ["Long Row, part 2", "long row part 2", "T9-2", "t9 2"])
      expect(rows(`${name} net on`)).toEqual(["T9-2 net on"]);
    const [noted] = noteWalk("T9-1 net on", { file: "a", numbered: true }, longRow, NOW, NOTHING_SAID).notes;
    expect(rows(noteWords(noted!.note, longRow))).toEqual(["T9-1 net on"]);
  });

  test("is bared where something lies, and told where nothing does", () => {
    const walk = (text: string) =>
      noteWalk(text, { file: "walk", numbered: true }, longRow, NOW, NOTHING_SAID);
    expect(walk("T9 bare").notes.map(({ row }) => `${row.about} ${row.value}`)).toEqual([
      "T9-1 row-cover-19 off",
    ]);
    expect(messages(walk("T9-2 bare"))).toEqual([
      'walk:1: expected a cover on Long Row, part 2, received none by then in "T9-2 bare". Take the line out, or note first what was put on.',
    ]);
  });

  test("is not taken for a tunnel whose number begins alike", () => {
    const farm = farmOf({
      farm: LONG_ROW.replace("id: T2, name: Creek 2", "id: T92, name: Creek 2").replace(
        "hoops: none",
        "hoops: wire",
      ),
    });
    const about = (text: string): string[] =>
      noteWalk(text, { file: "a", numbered: true }, farm, NOW, NOTHING_SAID).notes.map(
        ({ row }) => row.about,
      );
    expect(about("T92 net on")).toEqual(["T92"]);
    expect(about("T9-2 net on")).toEqual(["T9-2"]);
  });
});
