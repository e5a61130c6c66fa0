import { expect, test } from "vitest";
import { nameLetters, readKinds, recalled, withKind, writeKinds } from "../../src/folder/index.ts";
import { rows } from "./fixtures.ts";

const NOTHING = { unit: null, dates: null, zone: null, column: null, sensor: null } as const;

test("what was said of a log is said of the next with the same header", () => {
  const kinds = withKind([], { ...NOTHING, unit: "F", dates: "dmy" }, "When | Temp", "creek-1.csv");
  expect(recalled(kinds, "When | Temp", "hill.csv")).toEqual({ ...NOTHING, unit: "F", dates: "dmy" });
  expect(recalled(kinds, "When | Reading", "creek-1.csv")).toEqual(NOTHING);
});

test("later words are laid over earlier ones; saying nothing changes nothing", () => {
  const kinds = withKind([], { ...NOTHING, unit: "F", dates: "dmy" }, "When | Temp", "creek.csv");
  expect(withKind(kinds, NOTHING, "When | Temp", "creek.csv")).toBe(kinds);
  const later = withKind(kinds, { ...NOTHING, unit: "C" }, "When | Temp", "creek.csv");
  expect(recalled(later, "When | Temp", "creek.csv")).toEqual({ ...NOTHING, unit: "C", dates: "dmy" });
});

test("a sensor counts only for files named alike, and no longer once another was said of them", () => {
  const kinds = withKind([], { ...NOTHING, sensor: "north" }, "When | Temp", "creek 2026-04.csv");
  expect(nameLetters("creek 2026-04.csv")).toBe("creek csv");
  expect(recalled(kinds, "When | Temp", "creek 2026-05.csv").sensor).toBe("north");
  expect(recalled(kinds, "When | Temp", "hill 2026-05.csv").sensor).toBeNull();
  const both = withKind(kinds, { ...NOTHING, sensor: "south" }, "When | Temp", "creek 2026-06.csv");
  expect(recalled(both, "When | Temp", "creek 2026-07.csv").sensor).toBeNull();
});

test("they are kept as a table people can read, and read back; a spoiled one is forgotten", () => {
  const kinds = withKind([], { ...NOTHING, unit: "C", zone: "Etc/GMT+5" }, "When, local | Temp", "creek.csv");
  const text = writeKinds(kinds);
  expect(text).toBe(`leafpace kinds of logs 1,what was said of logs with these headers
header,files named,unit,dates,zone,column,sensor
"When, local | Temp",creek csv,C,,Etc/GMT+5,,
`);
  const cells = ["When, local | Temp", "creek csv", "C", "", "Etc/GMT+5", "", ""];
  const table = [...rows(text).slice(0, 2), { line: 3, cells }];
  expect(readKinds(table)).toEqual(kinds);
  expect(readKinds(rows("something else\na,b\n"))).toEqual([]);
});
