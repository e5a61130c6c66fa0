import { describe, expect, test } from "vitest";
import {
  type HoursUnderstood,
  type LogOptions,
  type LogReading,
  PLAIN,
  separatorOf,
  temperatureLog,
} from "../../src/folder/index.ts";
import { instant } from "../../src/quantity/index.ts";
import { messages, rows } from "./fixtures.ts";

/** What a farm with one sensor makes of a log. */
const read = (
  text: string,
  options: Partial<LogOptions> = {},
  zone = "America/New_York",
  sensors: readonly string[] = ["outside"],
): LogReading => {
  const separator = separatorOf(text, PLAIN);
  const log = temperatureLog({
    file: "log.csv",
    farm: { zone, sensors, units: "US" },
    now: instant(Date.UTC(2027, 0, 1)),
    separator,
    unit: null,
    dates: null,
    zone: null,
    column: null,
    sensor: null,
    ...options,
  });
  const lines = text.replaceAll("\r", "");
  for (const row of rows(lines, separator === " " ? "\n" : separator)) log.feed(row);
  return log.finish(lines.endsWith("\n"));
};

/** What was understood of the only sensor. */
const only = ({ understood }: LogReading): HoursUnderstood => understood!.sensors[0] as HoursUnderstood;

/** Hours as [UTC hour, mean in tenths of a degree Celsius, readings]. */
const hours = ({ sensors }: LogReading, at = 0): [string, number, number][] =>
  (sensors[at]?.hours ?? []).map(({ hour, sum, count }) => [
    new Date(hour * 3_600_000).toISOString().slice(0, 13),
    Math.round((sum / count) * 10) / 10,
    count,
  ]);

/** A log of one reading every `step` minutes, written as `write` says. */
const series = (
  from: string,
  count: number,
  step: number,
  write: (wall: Date, index: number) => string,
): string =>
  Array.from({ length: count }, (_, index) =>
    write(new Date(Date.parse(`${from}Z`) + index * step * 60_000), index),
  ).join("\n");

const two = (value: number): string => String(value).padStart(2, "0");
const iso = (wall: Date): string => wall.toISOString().slice(0, 16).replace("T", " ");
const clock = (wall: Date): string => `${two(wall.getUTCHours())}:${two(wall.getUTCMinutes())}`;
const monthFirst = (wall: Date): string =>
  `${wall.getUTCMonth() + 1}/${wall.getUTCDate()}/${wall.getUTCFullYear()}`;
const dayFirst = (wall: Date): string =>
  `${wall.getUTCDate()}/${wall.getUTCMonth() + 1}/${wall.getUTCFullYear()}`;
const twelve = (wall: Date): string => {
  const hour = wall.getUTCHours();
  return `${hour % 12 === 0 ? 12 : hour % 12}:${two(wall.getUTCMinutes())}:00 ${hour < 12 ? "AM" : "PM"}`;
};

describe("what a log looks like", () => {
  test("titles above the header, a number column, month first, 12 hours, °F", () => {
    const text = `Logger export - Creek outside
No.,Date/Time,Temperature (°F),Battery (V)
1,04/20/2026 12:00:00 AM,50.0,3.04
2,04/20/2026 12:30:00 AM,68.0,3.04
3,04/20/2026 01:00:00 PM,41.0,3.04`;
    const log = read(text);
    expect(log.problems).toEqual([]);
    expect(hours(log)).toEqual([
      ["2026-04-20T04", 15, 2],
      ["2026-04-20T17", 5, 1],
    ]);
    expect(log.understood).toMatchObject({
      titles: ["Logger export - Creek outside"],
      dates: "mdy",
      datesBy: "fits",
      zone: "America/New_York",
      rows: 3,
      used: 3,
      dropped: [],
    });
    expect(only(log)).toMatchObject({ scale: { unit: "F", step: 1 }, scaleBy: "header" });
    expect(log.sensors[0]!.hours[0]).toMatchObject({ lowest: 10, highest: 20, origin: "log.csv" });
  });

  test("semicolons with decimal commas, day first in two columns, °C", () => {
    const text = `Datum;;\nDate;Time;Temp °C\n20.04.2026;00:00;10,5\n20.04.2026;00:30;11,5`;
    expect(hours(read(text))).toEqual([["2026-04-20T04", 11, 2]]);
  });

  test("tabs, a byte order mark and line ends of two characters", () => {
    expect(hours(read("\uFEFFTimestamp\tTemp (C)\r\n2026-04-20 00:00\t10\r\n"))).toEqual([
      ["2026-04-20T04", 10, 1],
    ]);
  });

  test("ISO with T and seconds, and a unit in every cell", () => {
    const log = read("datetime,temp\n2026-04-20T00:00:00,50 °F\n2026-04-20T00:15:00,10 °C\n");
    expect(hours(log)).toEqual([["2026-04-20T04", 10, 2]]);
    expect(only(log).scaleBy).toBe("cells");
  });

  test("universal time written behind the time counts, whatever the farm's zone", () => {
    const log = read("datetime,temp (C)\n2026-04-20T00:00Z,10\n2026-04-20T02:00+01:00,11\n");
    expect(hours(log).map(([hour]) => hour)).toEqual(["2026-04-20T00", "2026-04-20T01"]);
  });

  test("the time before the date, and quotes behind blanks", () => {
    const text = '"When" , "Temp (C)"\n"00:00 20.04.2026" , "10"\n"01:00 20.04.2026" , "11"\n';
    expect(hours(read(text)).map(([, mean]) => mean)).toEqual([10, 11]);
  });

  test("a clock that keeps standard time, as a header says it", () => {
    const log = read("Time (LST),outTemp (C)\n2026-07-20 00:00,10\n");
    expect(hours(log)[0]![0]).toBe("2026-07-20T05");
    expect(log.understood).toMatchObject({ zone: "-05:00", zoneBy: "header" });
  });

  test("a month by its name", () => {
    expect(hours(read("Date,Time,Temp (C)\n20-Apr-2026,00:00,10\n"))).toEqual([["2026-04-20T04", 10, 1]]);
    expect(hours(read("Date;Time;Temp (C)\nApr 20, 2026;00:00;10\n"))).toEqual([["2026-04-20T04", 10, 1]]);
  });

  test("an offset in the header is the logger's zone", () => {
    const log = read("#;Date Time, GMT-05:00;Temp (C)\n1;2026-07-20 00:00;10\n");
    expect(hours(log)[0]![0]).toBe("2026-07-20T05");
    expect(log.understood).toMatchObject({ zone: "-05:00", zoneBy: "header" });
  });

  test("the newest reading first", () => {
    const text = `Date,Time,Temp (C)\n${["2026-04-20,02:00,12", "2026-04-20,01:00,11", "2026-04-20,00:00,10"].join("\n")}`;
    expect(hours(read(text)).map(([, mean]) => mean)).toEqual([10, 11, 12]);
  });

  test("any interval", () => {
    for (const step of [1, 5, 30, 60, 180]) {
      const log = read(
        `Timestamp,Temp (C)\n${series("2026-04-20T00:00", 40, step, (wall) => `${iso(wall)},10`)}`,
      );
      expect([step, only(log).interval, log.understood!.used]).toEqual([step, step * 60, 40]);
    }
  });
});

describe("the unit is never guessed from the numbers", () => {
  const bare = "Timestamp,Temp\n2026-04-20 00:00,68\n";
  test("none anywhere is a problem that names the option", () =>
    expect(messages(read(bare))).toEqual([
      'log.csv:2 column "Temp": expected a unit, °F or °C, in the header or behind the number, received "68". Say --unit F or --unit C.',
    ]));
  test("the option settles it", () => {
    expect(hours(read(bare, { unit: "F" }))).toEqual([["2026-04-20T04", 20, 1]]);
  });
  test("a line above the header may say it in full", () => {
    expect(hours(read(`Units: Fahrenheit\n${bare}`))).toEqual([["2026-04-20T04", 20, 1]]);
    expect(read(`Farm of J. F. Smith\n${bare}`).understood).toBeNull();
  });
});

describe("the order of a date is settled by the file or not at all", () => {
  test("a thirteenth month settles it, wherever it stands", () => {
    const text = series("2026-04-10T00:00", 5 * 24, 60, (wall) => `${monthFirst(wall)} ${clock(wall)},10`);
    const log = read(`Date Time,Temp (C)\n${text}`);
    expect(log.understood).toMatchObject({ dates: "mdy", datesBy: "fits", used: 120 });
    const other = series("2026-04-10T00:00", 5 * 24, 60, (wall) => `${dayFirst(wall)} ${clock(wall)},10`);
    expect(read(`Date Time,Temp (C)\n${other}`).understood).toMatchObject({ dates: "dmy", used: 120 });
  });

  test("days that follow each other settle it", () => {
    const text = series("2026-04-02T00:00", 5 * 24, 60, (wall) => `${monthFirst(wall)} ${clock(wall)},10`);
    const log = read(`Date Time,Temp (C)\n${text}`);
    expect(log.understood).toMatchObject({ dates: "mdy", datesBy: "sequence" });
    expect(hours(log)[0]![0]).toBe("2026-04-02T04");
  });

  test("a single early day does not, and the problem names the option", () => {
    const text = `Date Time,Temp (C)\n${series("2026-04-05T00:00", 20, 60, (wall) => `${monthFirst(wall)} ${clock(wall)},10`)}`;
    expect(messages(read(text))).toEqual([
      'log.csv:2 column "Date Time": expected dates whose order can be told, received "4/5/2026". Say --dates mdy when the month comes first, --dates dmy when the day does.',
    ]);
    expect(hours(read(text, { dates: "dmy" }))[0]![0]).toBe("2026-05-04T04");
  });

  test("a wrong order on the command line reads nothing and says so", () => {
    const text = `Date Time,Temp (C)\n4/20/2026 00:00,10\n`;
    expect(messages(read(text, { dates: "dmy" }))).toEqual([
      'log.csv:2 column "Date Time": expected dates and times below the header, received "4/20/2026 00:00". Try another order behind --dates.',
    ]);
  });

  test("twelve o'clock at night and at noon", () => {
    const text = series(
      "2026-04-20T00:00",
      24,
      60,
      (wall, index) => `${monthFirst(wall)} ${twelve(wall)},${index}`,
    );
    const log = read(`Date Time,Temp (C)\n${text}`);
    expect(hours(log).map(([, mean]) => mean)).toEqual(Array.from({ length: 24 }, (_, index) => index));
    expect(hours(log)[0]![0]).toBe("2026-04-20T04");
  });
});

describe("when clocks change", () => {
  test("the hour that comes twice in autumn is told apart by the order of the readings", () => {
    const walls = ["00:30", "01:00", "01:30", "01:00", "01:30", "02:00"];
    const log = read(
      `Timestamp,Temp (C)\n${walls.map((wall, index) => `2026-11-01 ${wall},${index}`).join("\n")}`,
    );
    expect(hours(log)).toEqual([
      ["2026-11-01T04", 0, 1],
      ["2026-11-01T05", 1.5, 2],
      ["2026-11-01T06", 3.5, 2],
      ["2026-11-01T07", 5, 1],
    ]);
    expect(only(log).twice).toBe(4);
    expect(log.understood!.dropped).toEqual([]);
  });

  test("and also in a log whose newest reading comes first", () => {
    const walls = ["00:30", "01:00", "01:30", "01:00", "01:30", "02:00"].reverse();
    const log = read(
      `Timestamp,Temp (C)\n${walls.map((wall, index) => `2026-11-01 ${wall},${5 - index}`).join("\n")}`,
    );
    expect(hours(log).map(([, mean]) => mean)).toEqual([0, 1.5, 3.5, 5]);
  });

  test("readings in the hour that is skipped in spring mean a clock that does not change: all is an hour off", () => {
    const text = series("2026-03-08T00:30", 6, 60, (wall) => `${iso(wall)},10`);
    const log = read(`Timestamp,Temp (C)\n${text}`);
    expect(log.understood).toBeNull();
    expect(messages(log)).toEqual([
      'log.csv:4 column "Timestamp": expected times of the clock in America/New_York, received 1 in the hour it skips in spring. The logger does not change its clock: import it with the zone it keeps, like --zone Etc/GMT+5.',
    ]);
    const kept = read(`Timestamp,Temp (C)\n${text}`, { zone: "Etc/GMT+5" });
    expect(kept.understood).toMatchObject({ used: 6, dropped: [] });
    expect(kept.problems).toEqual([]);
  });

  test("so does an hour that should come twice and comes once, in readings an hour apart or less", () => {
    const text = series("2026-10-31T22:00", 8, 30, (wall) => `${iso(wall)},10`);
    const through = `${text}\n${series("2026-11-01T02:00", 8, 30, (wall) => `${iso(wall)},10`)}`;
    expect(read(`Timestamp,Temp (C)\n${through}`).understood).toBeNull();
    const even = series("2026-10-31T22:00", 16, 30, (wall) => `${iso(wall)},10`);
    expect(messages(read(`Timestamp,Temp (C)\n${even}`))).toEqual([
      'log.csv:10 column "Timestamp": expected an hour that comes twice, as on the clock in America/New_York, received one that comes once. The logger does not change its clock: import it with the zone it keeps, like --zone Etc/GMT+4 if it was set in summer, like --zone Etc/GMT+5 if in winter.',
    ]);
    const sparse = series("2026-10-31T12:00", 10, 180, (wall) => `${iso(wall)},10`);
    expect(read(`Timestamp,Temp (C)\n${sparse}`).problems).toEqual([]);
  });

  test("the zone told for a clock without daylight time is the farm's own", () => {
    const hint = (zone: string, date: string): string | undefined =>
      messages(
        read(`Timestamp,Temp (C)\n${series(`${date}T00:30`, 6, 60, (wall) => `${iso(wall)},10`)}`, {}, zone),
      )[0]?.replace(/^.*the zone it keeps, /u, "");
    expect(hint("Europe/Ljubljana", "2026-03-29")).toBe("like --zone Etc/GMT-1.");
    expect(hint("Europe/London", "2026-03-29")).toBe("like --zone UTC.");
    expect(hint("America/St_Johns", "2026-03-08")).toBe(
      "3 hours 30 minutes behind universal time all year: --zone=-03:30.",
    );
    // South of the equator clocks go forward in October.
    expect(hint("Australia/Adelaide", "2026-10-04")).toBe(
      "9 hours 30 minutes ahead of universal time all year: --zone=+09:30.",
    );
  });

  test("a zone half an hour off", () => {
    const log = read("Timestamp,Temp (C)\n2026-04-20 00:00,10\n2026-04-20 00:30,12\n", {}, "Asia/Kolkata");
    expect(hours(log)).toEqual([
      ["2026-04-19T18", 10, 1],
      ["2026-04-19T19", 12, 1],
    ]);
  });
});

describe("what is no reading is left out and said", () => {
  const with15 = (values: readonly string[]): LogReading =>
    read(
      `Timestamp,Temp (C)\n${series("2026-04-20T00:00", values.length, 15, (wall, index) => `${iso(wall)},${values[index]}`)}`,
    );

  test.each(["", "--", "NaN", "-999", "-9999.0", "ERROR"])("the missing code %j", (code) => {
    expect(with15(["10", code, "10"]).understood!.dropped).toEqual([
      { reason: "noReading", count: 1, firstLine: 3 },
    ]);
  });
  test("beyond −60 to 60 °C", () =>
    expect(with15(["10", "61", "-61", "60", "60"]).understood!.dropped).toEqual([
      { reason: "outOfRange", count: 2, firstLine: 3 },
    ]));
  test("a jump of more than 10 °C and back, up or down", () => {
    expect(with15(["10", "21", "10", "10"]).understood!.dropped).toEqual([
      { reason: "spike", count: 1, firstLine: 3 },
    ]);
    expect(with15(["10", "-1", "10", "10"]).understood!.dropped).toEqual([
      { reason: "spike", count: 1, firstLine: 3 },
    ]);
  });
  test("but neither a jump of 10 °C, nor a step that stays, nor neighbours hours away", () => {
    expect(with15(["10", "20", "10", "10"]).understood!.dropped).toEqual([]);
    expect(with15(["10", "25", "25", "25"]).understood!.dropped).toEqual([]);
    const sparse = read("Timestamp,Temp (C)\n2026-04-20 00:00,5\n2026-04-20 12:00,25\n2026-04-21 00:00,5\n");
    expect(sparse.understood!.dropped).toEqual([]);
  });
  test("the same time again with the same temperature; with another it counts", () => {
    const log = read("Timestamp,Temp (C)\n2026-04-20 00:00,5\n2026-04-20 00:00,5\n2026-04-20 00:10,7\n");
    expect(log.understood!.dropped).toEqual([{ reason: "repeated", count: 1, firstLine: 3 }]);
    const more = series("2026-04-20T00:10", 5, 10, (wall) => `${iso(wall)},7`);
    expect(hours(read(`Timestamp,Temp (C)\n2026-04-20 00:00,5\n2026-04-20 00:00,9\n${more}\n`))).toEqual([
      ["2026-04-20T04", 7, 7],
    ]);
  });
  test("a last line that no line end closes and that has fewer cells than the one before: it may be cut within a number", () => {
    const lines = ["2026-04-20 00:00,5.2,60", "2026-04-20 01:00,5.3,60", "2026-04-20 02:00,5"];
    const cutOff = [{ reason: "cutOff", count: 1, firstLine: 4 }];
    expect(read(["Timestamp,Temp (C),RH", ...lines].join("\n")).understood!.dropped).toEqual(cutOff);
    const blanks = ["Date Time Temp_C RH", ...lines].join("\n").replaceAll(",", "   ");
    expect(read(blanks).understood!.dropped).toEqual(cutOff);
    expect(read(`${["Timestamp,Temp (C),RH", ...lines].join("\n")}\n`).understood!.dropped).toEqual([]);
  });
  test("a line without a date", () =>
    expect(read("Timestamp,Temp (C)\n2026-04-20 00:00,5\nsummary,6\n").understood!.dropped).toEqual([
      { reason: "unreadable", count: 1, firstLine: 3 },
    ]));
  test("a silence of more than three hours is told with its ends", () => {
    const log = read("Timestamp,Temp (C)\n2026-04-20 00:00,5\n2026-04-20 01:00,5\n2026-04-20 09:00,6\n");
    expect(only(log).silences).toBe(1);
    expect(new Date(only(log).longest!.from).toISOString()).toBe("2026-04-20T05:00:00.000Z");
  });
});

describe("a log that cannot be understood", () => {
  test("without a header, its contents decide; the unit must be said", () => {
    const text = "2026-04-20 00:00,5\n2026-04-20 01:00,5\n";
    expect(messages(read(text))).toEqual([
      'log.csv:1: expected a unit, °F or °C, in the header or behind the number, received "5". Say --unit F or --unit C.',
    ]);
    expect(hours(read(text, { unit: "C" })).map(([, mean]) => mean)).toEqual([5, 5]);
  });
  test("prose", () =>
    expect(messages(read("Dear neighbour, the frost came at 6:00.\nYours\n"))).toEqual([
      'log.csv:1: expected a header line with a date, a time and a temperature column, received "Dear neighbour, the frost came at 6:00.". Name the columns in the line above the readings, like Date,Time,Temp (F).',
    ]));
  test("outside air is chosen among temperatures; of two that may be it one must be named", () => {
    const text = "Timestamp,Air temp (C),Soil temp (C),Dew point (C)\n2026-04-20 00:00,5,9,1\n";
    const log = read(text);
    expect(hours(log)).toEqual([["2026-04-20T04", 5, 1]]);
    expect(log.understood!.ignored).toEqual(["Soil temp (C)", "Dew point (C)"]);
    expect(hours(read(text, { column: "soil temp" }))).toEqual([["2026-04-20T04", 9, 1]]);
    expect(messages(read("Timestamp,Probe A (C),Probe B (C)\n2026-04-20 00:00,5,9\n"))).toEqual([
      'log.csv:1: expected one temperature column, received "Probe A (C)", "Probe B (C)". Name the one to take, as in --column "Probe A (C)".',
    ]);
  });
  test("an empty file", () => expect(read("").problems.map(({ code }) => code)).toEqual(["log-empty"]));
  test("a header and nothing below", () =>
    expect(messages(read("Timestamp,Temp (C)\n"))).toEqual([
      "log.csv:1: expected readings below the header, received none. Look at the file.",
    ]));
});

describe("what was said once of a kind of log", () => {
  const bare = "Timestamp,Temp\n2026-04-20 00:00,68\n";
  const nothing = { unit: null, dates: null, zone: null, column: null, sensor: null } as const;
  test("counts where nothing is said now, and is told", () => {
    const asked: string[] = [];
    const log = read(bare, {
      recall: (header) => {
        asked.push(header);
        return { ...nothing, unit: "F" };
      },
    });
    expect(asked).toEqual(["Timestamp | Temp"]);
    expect(hours(log)).toEqual([["2026-04-20T04", 20, 1]]);
    expect(log.understood!.remembered).toEqual(["unit"]);
  });
  test("what is said now counts more", () => {
    const text = "Timestamp,Temp\n2026-04-20 00:00,20\n";
    const log = read(text, { unit: "C", recall: () => ({ ...nothing, unit: "F" }) });
    expect(hours(log)).toEqual([["2026-04-20T04", 20, 1]]);
    expect(log.understood!.remembered).toEqual([]);
  });
});

describe("an order of rows that is none", () => {
  const lines = Array.from({ length: 96 }, (_, index) => {
    const wall = new Date(Date.UTC(2026, 3, 20) + index * 900_000);
    return `${iso(wall)},${10 + (index % 7)}`;
  });
  const tidy = read(`Timestamp,Temp (C)\n${lines.join("\n")}\n`);
  test("gives the same hours", () => {
    const mixed = lines.map((_, index) => lines[(index * 37) % 96]!);
    expect(hours(read(`Timestamp,Temp (C)\n${mixed.join("\n")}\n`))).toEqual(hours(tidy));
  });
  test("so do two downloads that overlap", () => {
    const text = ["Timestamp,Temp (C)", ...lines.slice(0, 61), "Timestamp,Temp (C)", ...lines.slice(42)];
    const log = read(`${text.join("\n")}\n`);
    expect(hours(log)).toEqual(hours(tidy));
    expect(log.understood).toMatchObject({ used: 96, moreHeaders: 1 });
    expect(log.understood!.dropped).toEqual([{ reason: "repeated", count: 19, firstLine: 63 }]);
  });
});

test("three hundred thousand readings become their hours", () => {
  const log = temperatureLog({
    file: "log.csv",
    farm: { zone: "UTC", sensors: ["outside"], units: "metric" },
    now: instant(Date.UTC(2027, 0, 1)),
    separator: ",",
    unit: "C",
    dates: null,
    zone: null,
    column: null,
    sensor: null,
  });
  log.feed({ line: 1, cells: ["Timestamp", "Temp"] });
  const start = Date.UTC(2026, 0, 1);
  for (let index = 0; index < 300_000; index++) {
    const wall = new Date(start + index * 1000).toISOString().slice(0, 19);
    log.feed({ line: index + 2, cells: [wall, "10"] });
  }
  const { understood, sensors } = log.finish(true);
  expect([understood!.used, sensors[0]!.hours.length]).toEqual([300_000, 84]);
});
