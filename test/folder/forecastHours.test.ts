import { describe, expect, test } from "vitest";
import {
  forecastHours,
  looksLikeHours,
  reachesBeyond,
  readForecast,
  writeForecast,
} from "../../src/folder/index.ts";
import { HOUR, instantAt } from "../../src/quantity/index.ts";
import { messages, rows, table } from "./fixtures.ts";

const ZONE = "America/New_York";
const NOW = instantAt(ZONE, "2026-04-20", 11);
const read = (text: string, zone = ZONE) => forecastHours(table("hours.csv", text), zone, null, NOW);
const air = (text: string) =>
  read(text).forecast!.hours!.map(({ hour, temperature }) => [
    new Date(hour * HOUR).toISOString().slice(5, 13),
    Math.round(temperature * 100) / 100,
  ]);

test("a row holds from its moment to the next, the temperature on a straight line", () => {
  expect(air("time,temperature (C)\n2026-04-20 06:00,3\n2026-04-20 09:00,9\n2026-04-20 10:00,11\n")).toEqual([
    ["04-20T10", 3],
    ["04-20T11", 5],
    ["04-20T12", 7],
    ["04-20T13", 9],
    ["04-20T14", 11],
  ]);
});

test("wind, cloud, radiation and rain are read with the units of the header", () => {
  const text =
    "Date Time,Temp (F),Wind Speed (km/h),Cloud Cover (%),Radiation (W/m2),Rain (in)\n2026-04-20 06:00,50,36,25,120,0.1\n";
  expect(read(text).forecast!.hours).toEqual([
    { hour: expect.any(Number), temperature: 10, wind: 10, cloud: 0.25, radiation: 120, rain: 2.54 },
  ]);
});

test("moments with their offset need no zone", () => {
  expect(air("time,temperature (C)\n2026-04-20T06:00Z,3\n2026-04-20T03:00-04:00,4\n")).toEqual([
    ["04-20T06", 3],
    ["04-20T07", 4],
  ]);
});

test("the hour the clock shows twice is the later one the second time", () => {
  const text =
    "time,temperature (C)\n2026-11-01 00:00,3\n2026-11-01 01:00,4\n2026-11-01 01:00,5\n2026-11-01 02:00,6\n";
  expect(air(text).map(([hour]) => hour)).toEqual(["11-01T04", "11-01T05", "11-01T06", "11-01T07"]);
});

test("dates that hours make whole become days", () => {
  const hours = Array.from({ length: 30 }, (_, k) => {
    const clock = `${String(k % 24).padStart(2, "0")}:00`;
    return `2026-04-${k < 24 ? 21 : 22} ${clock},${k % 24},5`;
  });
  const { forecast } = read(`time,temperature (C),wind (m/s)\n${hours.join("\n")}\n`);
  expect(forecast!.days).toEqual([{ date: "2026-04-21", low: 0, high: 23, wind: 5, sky: null }]);
});

describe("when it was issued", () => {
  const row = (date: string) => `time,temperature (C)\n${date} 12:00,9\n`;
  test("a line above the header says it", () => {
    const { forecast, issuedBy } = read(`Issued 2026-04-20 05:10\n${row("2026-04-21")}`);
    expect([new Date(forecast!.issued).toISOString(), issuedBy]).toEqual([
      "2026-04-20T09:10:00.000Z",
      "file",
    ]);
  });
  test("else its first hour does, and now where that lies ahead", () => {
    expect(read(row("2026-04-19"))).toMatchObject({ issuedBy: "firstHour" });
    const ahead = read(row("2026-04-21"));
    expect([ahead.forecast!.issued, ahead.issuedBy]).toEqual([NOW, "now"]);
  });
});

test("it is kept with its hours and read back the same", () => {
  const text =
    "time,temperature (F),wind (mph),cloud (%)\n2026-04-20 06:00,41,5,20\n2026-04-20 09:00,48,,40\n";
  const kept = writeForecast(read(text).forecast!);
  expect(writeForecast(readForecast(table("forecasts/x.csv", kept)).forecast!)).toBe(kept);
  expect(kept.split("\n").slice(0, 4)).toEqual([
    "leafpace forecast 1,issued 2026-04-20T10:00Z",
    "date,low (C),high (C),wind (m/s),sky",
    "hour,temperature (C),wind (m/s),cloud (%),radiation (W/m2),rain (mm)",
    "2026-04-20T10Z,5,2.24,20,,",
  ]);
});

test("a table is told to be of hours by its header, and foretold by its first lines", () => {
  const opening = (text: string) => rows(text).map(({ cells }) => cells);
  expect(looksLikeHours(opening("Station 4\nDate,Time,Temp (F)"))).toBe(true);
  expect(looksLikeHours(opening("date,low (F),high (F)"))).toBe(false);
  const beyond = (...times: readonly string[]) =>
    reachesBeyond(
      opening(`time,temperature (F)\n${times.map((at) => `${at},50`).join("\n")}`),
      ZONE,
      null,
      NOW,
    );
  expect(beyond("2026-04-20 10:00", "2026-04-20 13:00")).toBe(true);
  expect(beyond("2026-04-20 10:00", "2026-04-20 11:00")).toBe(false);
});

test("a logger whose clock is wrong by a year, or that logs every ten minutes, has foretold nothing", () => {
  const opening = (...times: readonly string[]) => [
    ["time", "temperature (F)"],
    ...times.map((at) => [at, "50"]),
  ];
  const beyond = (...times: readonly string[]) => reachesBeyond(opening(...times), ZONE, null, NOW);
  expect(beyond("2027-04-20 13:00", "2027-04-20 14:00")).toBe(false);
  expect(beyond("2026-04-20 13:00", "2026-04-20 13:10")).toBe(false);
});

test("dates whose order nothing settles are a problem", () => {
  expect(messages(read("time,temperature (C)\n4/5/2026 12:00,9\n"))).toEqual([
    'hours.csv:2 column "time": expected dates whose order can be told, received "4/5/2026 12:00". Say --dates mdy when the month comes first, --dates dmy when the day does.',
  ]);
});
