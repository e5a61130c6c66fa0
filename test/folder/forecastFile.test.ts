import { describe, expect, test } from "vitest";
import {
  forecastFile,
  forecastName,
  issuedOf,
  looksLikeForecast,
  readForecast,
  writeForecast,
} from "../../src/folder/index.ts";
import { instant } from "../../src/quantity/index.ts";
import { messages, table } from "./fixtures.ts";

const ZONE = "America/New_York";
const read = (text: string) => forecastFile(table("forecast.csv", text), ZONE, null);

test("a typed forecast is read with units from its header", () => {
  const { forecast, issuedBy } = read(
    "date,low (F),high (F),wind (mph),sky\n2026-04-21,41,50,10,Partly Cloudy\n2026-04-20,41,50,,\n",
  );
  expect(issuedBy).toBe("firstDay");
  expect(new Date(forecast!.issued).toISOString()).toBe("2026-04-20T04:00:00.000Z");
  expect(forecast!.days).toEqual([
    { date: "2026-04-20", low: 5, high: 10, wind: null, sky: null },
    { date: "2026-04-21", low: 5, high: 10, wind: 4.4704, sky: "mixed" },
  ]);
});

// Judgement: new snow is ten times as deep as its water.
test("a column of new snow counts as a tenth of its depth of water, beside rain", () => {
  const { forecast } = read(
    "date,low (C),high (C),rain (mm),snow (cm)\n2026-04-20,-3,1,,10\n2026-04-21,-3,1,2,5\n2026-04-22,-3,1,,0\n2026-04-23,-3,1,,\n",
  );
  expect(forecast!.days.map(({ rain }) => rain)).toEqual([10, 7, 0, undefined]);
  expect(messages(read("date,low (C),high (C),snow\n2026-04-20,-3,1,-2 in\n"))).toEqual([
    'forecast.csv:2 column "snow": expected a depth of new snow like 5 cm or 2 in, received "-2 in". Correct the number.',
  ]);
});

describe("dates as logs have them", () => {
  const days = (dates: readonly string[], order: "mdy" | "dmy" | null = null) =>
    forecastFile(
      table("forecast.csv", `date,low (C),high (C)\n${dates.map((date) => `${date},1,5`).join("\n")}`),
      ZONE,
      null,
      { dates: order, units: "metric" },
    );
  const read = (...given: Parameters<typeof days>) => days(...given).forecast?.days.map(({ date }) => date);

  test("day first, month first and months by name, where only one order makes dates", () => {
    expect(read(["13.04.2026", "14.04.2026"])).toEqual(["2026-04-13", "2026-04-14"]);
    expect(read(["4/9/2026", "4/13/26"])).toEqual(["2026-04-09", "2026-04-13"]);
    expect(read(["9 Apr 2026", "2026/04/10"])).toEqual(["2026-04-09", "2026-04-10"]);
  });
  test("days that follow each other settle the order, and so does the option", () => {
    expect(read(["03.04.2026", "04.04.2026"])).toEqual(["2026-04-03", "2026-04-04"]);
    expect(read(["03.04.2026"], "mdy")).toEqual(["2026-03-04"]);
  });
  test("an order nothing settles is a problem, and so is a text that is no date", () => {
    expect(messages(days(["03.04.2026"]))).toEqual([
      'forecast.csv:2 column "date": expected dates whose order can be told, received "03.04.2026". Say --dates mdy when the month comes first, --dates dmy when the day does.',
    ]);
    expect(messages(days(["13.04.2026", "14.04.2026", "soon"]))).toEqual([
      'forecast.csv:4 column "date": expected a date like 2026-04-20, received "soon". Use year-month-day.',
    ]);
    expect(messages(days(Array.from({ length: 10 }, () => "soon")))).toEqual([
      'forecast.csv:2 column "date": expected a date like 2026-04-20, received "soon". Use year-month-day. The same in 9 more lines, to line 11.',
    ]);
    expect(messages(days(["29.04.2026", "30.04.2026", "31.04.2026"]))).toEqual([
      'forecast.csv:4 column "date": expected a date like 2026-04-20, received "31.04.2026". April has 30 days.',
    ]);
  });
  test("examples of a header are in the farm's units, and Kelvin is not known", () => {
    const told = (text: string) =>
      messages(forecastFile(table("forecast.csv", text), ZONE, null, { units: "metric" }))[0];
    expect(told("date,low,high (C)\n2026-04-20,1,5\n")).toMatch(/like low \(C\)\.$/u);
    expect(told("date,low (K),high (C)\n2026-04-20,274,5\n")).toBe(
      'forecast.csv:1 column "low (K)": expected a temperature like 85 F or 29 C, received "K". The unit K is not known; use one of the usual units.',
    );
    expect(told("date,low (C),high (C)\n2026-04-20,274 K,5\n")).toMatch(/The unit K is not known/u);
  });
});

test("a line above the header may say when it was issued, and the option is stronger", () => {
  const text = "County forecast issued 2026-04-19 16:30\ndate,low (C),high (C)\n2026-04-20,5,10\n";
  expect(new Date(read(text).forecast!.issued).toISOString()).toBe("2026-04-19T20:30:00.000Z");
  const told = forecastFile(table("forecast.csv", text), ZONE, instant(0));
  expect([told.forecast!.issued, told.issuedBy]).toEqual([0, "option"]);
});

describe("problems of a forecast", () => {
  test("no unit is a problem", () =>
    expect(messages(read("date,low,high\n2026-04-20,41,50\n"))[0]).toBe(
      'forecast.csv:2 column "low": expected a temperature like 85 F or 29 C, received "41". Write the unit behind the number, or once in the column\'s header, like low (F).',
    ));
  test("a low above its high, a day twice, a sky nobody knows", () =>
    expect(
      messages(
        read(
          "date,low (C),high (C),sky\n2026-04-20,9,5,\n2026-04-21,1,5,\n2026-04-21,1,5,\n2026-04-22,1,5,sunnny",
        ),
      ),
    ).toEqual([
      'forecast.csv:2 column "high": expected a high not below the low, received "5". Swap the two.',
      'forecast.csv:4 column "date": expected each date once, received "2026-04-21". Take one of the two lines out.',
      'forecast.csv:5 column "sky": expected sun, mixed or cloud, received "sunnny". Did you mean "sunny"?',
    ]));
  test("no days at all", () =>
    expect(messages(read("date,low (F),high (F)\n"))).toEqual([
      "forecast.csv: expected at least one day with date, low and high, received none. Write one line a day under the header date,low (F),high (F).",
    ]));
});

test("a kept forecast is read back the same, and its name is its moment", () => {
  const { forecast } = read("date,low (F),high (F),wind (mph),sky\n2026-04-20,41,50,10,sun\n");
  const name = forecastName(forecast!.issued);
  expect(name).toBe("2026-04-20T0400Z.csv");
  expect(issuedOf(name)).toBe(forecast!.issued);
  expect(issuedOf("forecast.csv")).toBeNull();
  const again = readForecast(table(name, writeForecast(forecast!))).forecast!;
  expect(again.issued).toBe(forecast!.issued);
  expect(writeForecast(again)).toBe(writeForecast(forecast!));
});

test("a table is told to be a forecast by its header", () => {
  expect(looksLikeForecast(["Date", "Low (F)", "High (F)"])).toBe(true);
  expect(looksLikeForecast(["Date", "Time", "Temp (F)"])).toBe(false);
  expect(looksLikeForecast(["Date", "Time", "Low", "High"])).toBe(false);
});

test("a temperature no farm has is a problem, not weather", () => {
  const { forecast, problems } = read("date,low (C),high (C)\n2026-04-20,5,185\n2026-04-21,-99,12\n");
  expect(forecast).toBeNull();
  expect(messages({ problems })).toEqual([
    'forecast.csv:2 column "high": expected a temperature from −60 to 60 °C (−76 to 140 °F), received "185". Look at the number and its unit.',
    'forecast.csv:3 column "low": expected a temperature from −60 to 60 °C (−76 to 140 °F), received "-99". Look at the number and its unit.',
  ]);
});
