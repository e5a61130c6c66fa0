import { expect, test } from "vitest";
import {
  hourText,
  readStore,
  recordOf,
  type StoredHour,
  storeName,
  storeOf,
  tidyHour,
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
  for (const newer of [2, 10])
    expect(messages(readStore("temperature/outside-2026.csv", `leafpace temperature ${newer}\n`))).toEqual([
      `temperature/outside-2026.csv:1: expected a first line "leafpace temperature 1", received "leafpace temperature ${newer}". A newer leafpace wrote it; use that one.`,
    ]);
  for (const none of ["leafpace temperature", "leafpace forecast 1"])
    expect(messages(readStore("temperature/outside-2026.csv", none))).toEqual([
      `temperature/outside-2026.csv:1: expected a first line "leafpace temperature 1", received "${none}". This folder is written by leafpace import; keep other files elsewhere.`,
    ]);
});

test("a file's name in the store is a cell a spreadsheet shows and does not run", () => {
  const named = (origin: string): string => tidyHour(hour(1, 4, 10, origin)).origin;
  expect(["=HYPERLINK(1)", "+1.csv", 'a,b;"c"\n=d\u0000.csv', "log.csv"].map(named)).toEqual([
    "'=HYPERLINK(1)",
    "'+1.csv",
    "a b c =d .csv",
    "log.csv",
  ]);
});

test("only files of the store's own names are read", () => {
  expect(storeOf(storeName("outside", 2026))).toEqual({ sensor: "outside", year: 2026 });
  for (const name of ["outside-2026.csv.2847362", "outside.csv", ".~lock.outside-2026.csv#", "notes.txt"])
    expect(storeOf(name)).toBeNull();
});
