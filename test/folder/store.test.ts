import { expect, test } from "vitest";
import {
  hourText,
  mergeHours,
  readStore,
  recordOf,
  type StoredHour,
  storeName,
  storeOf,
  writeStore,
} from "../../src/folder/index.ts";
import { utcHour } from "../../src/quantity/index.ts";
import { messages } from "./fixtures.ts";

const hour = (at: number, count: number, mean: number, origin = "log.csv"): StoredHour => ({
  hour: utcHour(at),
  sum: mean * count,
  count,
  lowest: mean - 1,
  highest: mean + 1,
  origin,
});

test("what is written is read back the same", () => {
  const hours = [hour(493_000, 4, 10), hour(493_001, 4, -2.5)];
  const text = writeStore("outside", hours);
  expect(text.split("\n").slice(0, 3)).toEqual([
    "leafpace temperature 1,sensor outside,UTC hours,degrees Celsius",
    "hour,sum,count,lowest,highest,origin",
    `${hourText(utcHour(493_000))},40,4,9,11,log.csv`,
  ]);
  expect(readStore("x.csv", text)).toEqual({ hours, problems: [] });
});

test("a file a spreadsheet has saved is read all the same", () => {
  const text = `\uFEFF"leafpace temperature 1";"sensor outside"\r\nhour;sum;count;lowest;highest;origin\r\n"2026-04-20T13Z";40;4;9;11;log.csv\r\n;;;;;\r\n`;
  const { hours, problems } = readStore("x.csv", text);
  expect(problems).toEqual([]);
  expect(hours.map(recordOf)).toEqual([
    { hour: Date.UTC(2026, 3, 20, 13) / 3_600_000, mean: 10, lowest: 9, highest: 11, count: 4 },
  ]);
});

test("a line that cannot be read and a file of another kind are told", () => {
  const damaged =
    "leafpace temperature 1\nhour,sum,count,lowest,highest,origin\n20.04.2026 13:00,40,4,9,11,a\n";
  expect(messages(readStore("temperature/outside-2026.csv", damaged))).toEqual([
    'temperature/outside-2026.csv:3: expected an hour like 2026-04-20T13Z with sum, count, lowest and highest, received "20.04.2026 13:00,40,4,9,11,a". Delete the line, then import the log again.',
  ]);
  expect(messages(readStore("temperature/outside-2026.csv", "leafpace temperature 9\n"))).toEqual([
    'temperature/outside-2026.csv:1: expected a first line "leafpace temperature 1", received "leafpace temperature 9". A newer leafpace wrote it; use that one.',
  ]);
});

test("a later import wins over an earlier one", () => {
  const merged = mergeHours(
    [hour(1, 4, 10), hour(2, 4, 10), hour(3, 4, 10)],
    [hour(2, 4, 12), hour(3, 2, 12), hour(4, 4, 12)],
  );
  expect(merged.map(({ hour: at, sum, count }) => [at, sum / count])).toEqual([
    [1, 10],
    [2, 12],
    [3, 12],
    [4, 12],
  ]);
});

test("an hour the import cuts at its end does not push out a fuller one", () => {
  const merged = mergeHours([hour(1, 4, 10), hour(2, 4, 10)], [hour(1, 1, 12), hour(2, 4, 12)]);
  expect(merged.map(({ sum, count }) => sum / count)).toEqual([10, 12]);
});

test("importing the same again changes nothing", () => {
  const once = mergeHours([], [hour(1, 2, 10), hour(2, 4, 10)]);
  expect(mergeHours(once, [hour(1, 2, 10), hour(2, 4, 10)])).toEqual(once);
});

test("only files of the store's own names are read", () => {
  expect(storeOf(storeName("outside", 2026))).toEqual({ sensor: "outside", year: 2026 });
  for (const name of ["outside-2026.csv.2847362", "outside.csv", ".~lock.outside-2026.csv#", "notes.txt"])
    expect(storeOf(name)).toBeNull();
});
