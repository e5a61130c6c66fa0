import { describe, expect, test } from "vitest";
import { normalsFile } from "../../src/folder/index.ts";
import { addDays } from "../../src/quantity/index.ts";
import { messages, table } from "./fixtures.ts";

const read = (text: string) => normalsFile(table("normals.csv", text));

test("normals by month, by name or number", () => {
  expect(read("month,low (C),high (C)\nApr,1,11\n5,6,17\n").usual).toEqual([
    { month: 4, low: 1, high: 11 },
    { month: 5, low: 6, high: 17 },
  ]);
});

test("normals by day of the year, however it is written", () => {
  const days = ["04-20", "4/21", "Apr 22", "23 Apr", "02-29"];
  const { usual, problems } = read(
    `date,low (F),high (F)\n${days.map((day) => `${day},41,50`).join("\n")}\n`,
  );
  expect(problems).toEqual([]);
  expect(usual.map(({ month, day }) => [month, day])).toEqual([
    [4, 20],
    [4, 21],
    [4, 22],
    [4, 23],
    [2, 29],
  ]);
  expect(usual[0]).toMatchObject({ low: 5, high: 10 });
});

describe("a station's days of many years", () => {
  const station = (count: number) => {
    const lines = Array.from({ length: count }, (_, year) =>
      Array.from({ length: 40 }, (_, day) => `${addDays(`${2010 + year}-04-01`, day)},${year},${year + 10}`),
    ).flat();
    return read(`date,low (C),high (C)\n${lines.join("\n")}\n`);
  };
  test("become the usual weather of their dates", () => {
    const { usual, problems } = station(5);
    expect(problems).toEqual([]);
    expect(usual.find(({ month, day }) => month === 4 && day === 20)).toEqual({
      month: 4,
      day: 20,
      low: 2,
      high: 12,
    });
  });
  test("of few years are used, and told to be rough", () => {
    expect(messages(station(2))).toEqual([
      'normals.csv column "date": expected 5 years or more of a station\'s days, received 2. Their mean is used, and is rough.',
    ]);
    expect(station(2).usual.length).toBeGreaterThan(30);
  });
});

test("what is wrong is told by line and column", () => {
  expect(messages(read("month,low (C),high (C)\nAprl,1,11\nMay,9,5\nJune,1,11\nJun,1,99\n"))).toEqual([
    'normals.csv:2 column "month": expected a month like April or 4, received "Aprl". Write its name.',
    'normals.csv:3 column "high": expected a high not below the low, received "5". Swap the two.',
    'normals.csv:5 column "high": expected a temperature from −60 to 60 °C (−76 to 140 °F), received "99". Look at the number and its unit.',
    'normals.csv:5 column "month": expected each month once, received "Jun". Take one of the two out.',
  ]);
  expect(messages(read("low (C),high (C)\n1,5\n"))).toEqual([
    'normals.csv: expected a column "month" or "date", received none. Add one of them to the first line; the order does not matter.',
  ]);
});
