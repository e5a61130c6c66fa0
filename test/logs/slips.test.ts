import { describe, expect, test } from "vitest";
import { formatProblem } from "../../src/problem/index.ts";
import { readLog } from "./readLog.ts";

const read = async (text: string) => {
  const { hours, problems } = await readLog(Buffer.from(text), { zone: "America/New_York", unit: null });
  return { hours: hours?.length ?? null, problems: problems.map(formatProblem) };
};

const TEMPERATURES = ["50.1", "50.4", "50.9", "51.2"];

describe("a slip in a log, found by writing many and damaging them", () => {
  test("one wrong digit in a date does not turn the order of all others", async () => {
    const rows = ["12/06/2016 22:00", "19/06/2016 22:20", "12/06/2016 23:00", "12/07/2016 00:00"];
    expect(
      await read(["Date/Time,Temp (F)", ...rows.map((at, i) => `${at},${TEMPERATURES[i]}`)].join("\n")),
    ).toEqual({
      hours: null,
      problems: [
        'log.csv:3 column "Date/Time": expected dates whose order can be told, received "19/06/2016". Say --dates mdy when the month comes first, --dates dmy when the day does.',
      ],
    });
  });

  test("a header with fewer names than the rows have cells names no column", async () => {
    const rows = TEMPERATURES.map((value, i) => `2016-12-06 0${i}:00,${i + 1},${value}`);
    expect(await read(["Date/Time,Temp (F)", ...rows, ""].join("\n"))).toEqual({
      hours: null,
      problems: [
        "log.csv:1: expected a name for each of the 3 cells below, received 2 names. Make the header's cells as many as the rows', so that each name stands over its column.",
      ],
    });
  });

  test("a separator within a name moves the names behind it", async () => {
    const rows = TEMPERATURES.map((value, i) => `2016-12-06 0${i}:00,${i + 1},${value}`);
    expect((await read(["Date/Time,No, all,Temp (F)", ...rows, ""].join("\n"))).problems).toEqual([
      "log.csv:1: expected a name for each of the 3 cells below, received 4 names. Make the header's cells as many as the rows', so that each name stands over its column.",
    ]);
  });

  test("a separator at the end of every row is no cell", async () => {
    const rows = TEMPERATURES.map((value, i) => `2016-12-06 0${i}:00,${value},`);
    expect(await read(["Date/Time,Temp (F)", ...rows, ""].join("\n"))).toEqual({ hours: 4, problems: [] });
  });

  test("a row that ends before its date does not take the date above", async () => {
    const rows = TEMPERATURES.map((value, i) => `0${i}:00,${value}${i === 2 ? "" : ",2016-12-06"}`);
    expect(await read(["Time,Temp (F),Date", ...rows, ""].join("\n"))).toEqual({ hours: 3, problems: [] });
  });

  test("commas cut a log of one reading below titles of many words", async () => {
    const log =
      "Logger behind the shed\nPlace: north of it\nDate/Time,Temp (F),RH (%)\n2016-12-06 00:00,50.1,60\n";
    expect(await read(log)).toEqual({ hours: 1, problems: [] });
  });
});
