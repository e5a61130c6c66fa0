import { describe, expect, test } from "vitest";
import { farmOf, problemsOf } from "./fixtures.ts";
import { LONG_ROW, OWNED } from "./longRow.ts";

const FARM = LONG_ROW.replace(
  "  - { id: T9,",
  `  - { id: T3, length: 50 ft, hoops: wire }
  - { id: T8, name: Mill Row, length: 100 ft, hoops: wire, sections: 2 }
  - { id: T9,`,
).replace("hoops: none", "hoops: wire");

const rowsOf = (rows: string) => farmOf({ farm: `${FARM}side by side: ${rows}\n` }).sideBySide;
const told = (rows: string): string[] => problemsOf({ farm: `${FARM}side by side: ${rows}\n` });
const cloth = (line: string, rows = "[[T1, T2, T3]]"): string[] =>
  problemsOf({ farm: `${FARM}side by side: ${rows}\n`, pieces: `${OWNED}\n${line}` });

describe("tunnels side by side", () => {
  test("are rows of known tunnels, long ones part by part", () => {
    expect(rowsOf("[[T1, T2], [T8, T9]]")).toEqual([
      ["T1", "T2"],
      ["T8-1", "T9-1"],
      ["T8-2", "T9-2"],
    ]);
    expect(rowsOf("[[T1, T9-2]]")).toEqual([["T1", "T9-2"]]);
    expect(farmOf({ farm: FARM }).sideBySide).toEqual([]);
  });

  test("are two or more, known, and each in one place", () => {
    expect(told("[[T1], [T2, T7], [T3, T3], T8]")).toEqual([
      'farm.yaml:14 "side by side[1]": expected two or more tunnels side by side, received a list. Write them like [T1, T2].',
      'farm.yaml:14 "side by side[2][2]": expected a tunnel, received "T7". Known: T1, T2, T3, T8, T8-1, T8-2, T9, T9-1, T9-2.',
      'farm.yaml:14 "side by side[3][2]": expected each tunnel in one place of one row, received "T3". Take one of the two out.',
      'farm.yaml:14 "side by side[4]": expected a list, received "T8". Begin each entry on its own line with a dash and a blank.',
    ]);
  });

  test("are no parts of one tunnel, and part for part alike", () => {
    expect(told("[[T9-1, T9-2], [T1, T8]]")).toEqual([
      'farm.yaml:14 "side by side[1]": expected tunnels side by side; parts of one lie end to end, received a list. Write one part in each row.',
      'farm.yaml:14 "side by side[2]": expected tunnels of as many sections each, received a list. Name the parts, like T9-1, and write a row for each of them.',
    ]);
  });

  test("may lie under one piece that is wide enough", () => {
    const farm = `${FARM}side by side: [[T1, T2, T3]]\n`;
    expect(farmOf({ farm, pieces: `${OWNED}\nW,film,60,1,3,T1 T2 T3` }).pieces[0]).toMatchObject({
      count: 1,
      spans: 3,
      liesOn: ["T1", "T2", "T3"],
    });
    expect(cloth("W,film,60,1,2,T1 T2")).toEqual([]);
    expect(cloth("W,film,60,2,2,T1 T2 T3")).toEqual([]);
    expect(cloth("W,film,60,1,2,T1 T3")).toEqual([
      'pieces.csv:2 column "lies on": expected tunnels that 1 piece can lie on, each over 2 side by side, received "T1 T3". Raise the count or take a tunnel out.',
    ]);
  });

  test("are at least as many as a piece is said to be wide enough for", () => {
    expect(cloth("W,film,60,1,4,")).toEqual([
      'pieces.csv:2 column "spans": expected at most 3, as many tunnels as stand side by side in farm.yaml, received "4". It is laid over fewer. Say there which do, like "side by side: [[T1, T2]]".',
    ]);
    expect(cloth("W,film,60,1,wide,")).toEqual([
      'pieces.csv:2 column "spans": expected a number of tunnels side by side like 1 or 3, received "wide". Leave it empty for one.',
    ]);
  });
});
