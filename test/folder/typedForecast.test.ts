import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { looksTyped, readForecast, typedForecast, writeForecast } from "../../src/folder/index.ts";
import { addDays, instantAt, type LocalDate, weekday } from "../../src/quantity/index.ts";
import { messages, table } from "./fixtures.ts";

const ZONE = "America/New_York";
/** A Monday. */
const TODAY = "2026-04-20" as LocalDate;
const NOW = instantAt(ZONE, TODAY, 11);
const read = (text: string, units: "US" | "metric" = "US", said: typeof NOW | null = null) =>
  typedForecast(table("standard input", text), ",", ZONE, said, NOW, units);
const days = (...given: Parameters<typeof read>) =>
  read(...given).forecast?.days.map(({ date, low, high, sky }) => [date.slice(5), low, high, sky]);

describe("a forecast typed a line a day", () => {
  test("in any of the usual forms", () => {
    const { forecast, issuedBy } = read(
      "# from the radio\nMon 59 41 sun\nTue 59/41 mixed\n\nWed Apr 22, high 59, low 41, partly cloudy, wind 10 mph\n41 to 59 # no sky\n59°; 41°; rain\n",
    );
    expect([forecast!.issued, issuedBy]).toEqual([NOW, "now"]);
    const day = (date: string, sky: string | null, wind: number | null = null) => ({
      date,
      low: 5,
      high: 15,
      wind,
      sky,
    });
    expect(forecast!.days).toEqual([
      day("2026-04-20", "sun"),
      day("2026-04-21", "mixed"),
      day("2026-04-22", "mixed", 4.4704),
      day("2026-04-23", null),
      { ...day("2026-04-24", "cloud"), wet: true },
    ]);
  });

  test("a day of rain, showers or snow without an amount is wet, and is so again when it has been kept", () => {
    const { forecast } = read("9 1 rain\n9 1 showers\n9 1 snow\n9 1 cloud\n9 1");
    const wet = (of: typeof forecast) => of!.days.map((each) => [each.sky, each.wet ?? false]);
    const said = [
      ["cloud", true],
      ["cloud", true],
      ["cloud", true],
      ["cloud", false],
      [null, false],
    ];
    expect(wet(forecast)).toEqual(said);
    expect(wet(readForecast(table("kept.csv", writeForecast(forecast!))).forecast)).toEqual(said);
  });

  test.each([
    ["34 30 cloud wind 5 mph snow 4 in", "cloud", 10.16],
    ["34 30 snow 4 inches", "cloud", 10.16],
    ["34 30 sun, 10 cm of new snow", "sun", 10],
    ["34 30, rain 0.25 in", "cloud", 6.35],
    ["34 30 rain .25in, wind 5 mph", "cloud", 6.35],
    ["34 30 showers 6 mm", "cloud", 6],
    ["34 30 rain 0.1 in, snow 2 in", "cloud", 2.54 + 5.08],
    ["34 30 rain 0 in", "cloud", 0],
  ])("an amount of rain or new snow, as water, is the same when it has been kept: %s", (line, sky, rain) => {
    const { forecast } = read(`Tue ${line}`);
    const kept = readForecast(table("kept.csv", writeForecast(forecast!))).forecast;
    for (const [day] of [forecast!.days, kept!.days]) {
      expect(day).toMatchObject({ date: "2026-04-21", sky });
      expect(day!.rain).toBeCloseTo(rain, 9);
      expect(day!.wet).toBeUndefined();
    }
    expect(forecast!.days[0]!.low).toBeCloseTo(-10 / 9, 9);
  });

  test("an amount without a unit, and one no day has, are told as that", () => {
    expect(messages(read("Tue 34 30 rain 0.25\nWed 34 30 snow 900 in"))).toEqual([
      'standard input:1: expected a high and a low, received "Tue 34 30 rain 0.25". Write the amount with its unit, like "rain 0.25 in".',
      'standard input:2: expected an amount of rain or snow that falls in a day, received "Wed 34 30 snow 900 in". Correct the number.',
    ]);
  });

  test("a unit behind one number counts for both, none is the farm's", () => {
    expect(days("59F 41F\n15C 5\n15 5 C\n59 5C")).toEqual([
      ["04-20", 5, 15, null],
      ["04-21", 5, 15, null],
      ["04-22", 5, 15, null],
      ["04-23", 5, 59, null],
    ]);
    expect(days("15 5 sun\n5/-2\n-8 -1", "metric")).toEqual([
      ["04-20", 5, 15, "sun"],
      ["04-21", -2, 5, null],
      ["04-22", -8, -1, null],
    ]);
  });

  test("a weekday is the next such day from the moment of issue, in any order, and goes on after a week", () => {
    const on = (text: string, said: typeof NOW | null = null) =>
      days(text, "metric", said)?.map(([date]) => date);
    expect(on("Wed 9 1\nMon 9 1\nsunday 9 1")).toEqual(["04-20", "04-22", "04-26"]);
    expect(on("Tue 9 1\nSun 9 1\nMon 9 1\n9 1")).toEqual(["04-21", "04-26", "04-27", "04-28"]);
    expect(on("Mon 9 1\nTue 9 1\nWed 9 1\nThu 9 1\nFri 9 1\nSat 9 1\nSun 9 1\nMon 9 1")?.at(-1)).toBe(
      "04-27",
    );
    expect(on("Wed 9 1", instantAt(ZONE, "2026-04-16", 5))).toEqual(["04-22"]);
    expect(on("tomorrow 9 1\n9 1\n30 Apr 9 1\nMay 2nd 9 1\n2026-05-03 9 1")).toEqual([
      "04-21",
      "04-22",
      "04-30",
      "05-02",
      "05-03",
    ]);
    expect(days("Jan 2 9 1", "metric", instantAt(ZONE, "2026-12-30", 5))?.[0]?.[0]).toBe("01-02");
  });

  test("reads back what was typed, whatever the order, the separators and the words around", () => {
    const temperature = fc.integer({ min: -30, max: 45 });
    const line = fc.record({
      pair: fc.tuple(temperature, temperature),
      between: fc.constantFrom(" ", "/", ", ", ",", "; ", "\t", " to ", " / "),
      separator: fc.constantFrom(" ", ", ", ";", "\t", "  "),
      labelled: fc.boolean(),
      sky: fc.constantFrom("sun", "mixed", "cloud", null),
      named: fc.boolean(),
      remark: fc.constantFrom("", " # as the radio says"),
    });
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 9 }),
        fc.constantFrom("C", "F", ""),
        (lines, unit) => {
          const text = lines.map((each, i) => {
            const [a, b] = each.pair;
            const label = (value: number, other: number) =>
              each.labelled && value !== other ? (value > other ? "high " : "low ") : "";
            const name = ["Sun", "mon.", "Tuesday:", "Wed", "THU", "Fri", "Sat"][weekday(addDays(TODAY, i))]!;
            return [
              ...(each.named ? [name] : []),
              `${label(a, b)}${a}${unit}${each.between}${label(b, a)}${b}${unit}`,
              ...(each.sky === null ? [] : [each.sky]),
            ]
              .join(each.separator)
              .concat(each.remark);
          });
          const celsius = (value: number): number => (unit === "F" ? ((value - 32) * 5) / 9 : value);
          expect(messages(read(text.join("\n"), "metric"))).toEqual([]);
          expect(read(text.join("\n"), "metric").forecast!.days).toEqual(
            lines.map(({ pair, sky }, i) => ({
              date: addDays(TODAY, i),
              low: celsius(Math.min(...pair)),
              high: celsius(Math.max(...pair)),
              wind: null,
              sky,
            })),
          );
        },
      ),
      { numRuns: 500, seed: 7 },
    );
  });
});

describe("as it is typed elsewhere", () => {
  test("a comma stands within a number where it does not stand between two", () => {
    expect(days("Mon 34,5 18\nTue 17,5 5,5 sun\nWed 17,5\nThu 17,5 5 wind 12,5 km/h", "metric")).toEqual([
      ["04-20", 18, 34.5, null],
      ["04-21", 5.5, 17.5, "sun"],
      ["04-22", 5, 17, null],
      ["04-23", 5, 17.5, null],
    ]);
  });

  test.each([
    ["German", "Mo Di Mi Do Fr Sa So"],
    ["German in three letters", "Mon Die Mit Don Fre Sam Son"],
    ["Spanish", "lun mar mié jue vie sáb dom"],
    ["French", "lundi mardi mercredi jeu. ven. sam. dim."],
    ["Italian", "lun mar mer gio ven sab dom"],
    ["Dutch", "maandag di wo do vr za zo"],
  ])("days of the week in %s", (_language, names) => {
    const text = names.split(" ").map((name) => `${name} 12 1`);
    expect(days(text.join("\n"), "metric")?.map(([date]) => date)).toEqual([
      "04-20",
      "04-21",
      "04-22",
      "04-23",
      "04-24",
      "04-25",
      "04-26",
    ]);
  });

  test("Mar before a date's numbers is March, and a day that could be two is asked for", () => {
    expect(days("Mar 21 12 1", "metric")).toEqual([["03-21", 1, 12, null]]);
    expect(messages(read("ma 12 1 sun", "metric"))).toEqual([
      'standard input:1: expected a high and a low, received "ma 12 1 sun". Write the day like Mon or Apr 20 in the place of "ma".',
    ]);
  });
});

describe("lines that cannot be read", () => {
  test("are named by their number, with the nearest form", () => {
    expect(
      messages(
        read(
          "Mon 62 sun\nTue 62 41 sunn\nMno 62 41 cloud\n62 41 wind 10\nhigh 41 low 62\nThu Apr 22 62 41\nFeb 30 62 41\nFri 62 41\nFri 62 41",
        ),
      ),
    ).toEqual([
      'standard input:1: expected a high and a low, received "Mon 62 sun". Write the day\'s high and low, like "Mon 62 41 sun".',
      'standard input:2: expected a high and a low, received "Tue 62 41 sunn". Did you mean "Tue 62 41 sun"?',
      'standard input:3: expected a high and a low, received "Mno 62 41 cloud". Did you mean "Mon 62 41 cloud"?',
      'standard input:4: expected a high and a low, received "62 41 wind 10". Write the wind with its unit, like "wind 10 mph".',
      'standard input:5: expected a high not below the low, received "high 41 low 62". Swap the two.',
      'standard input:6: expected Wednesday, on which 2026-04-22 falls, received "Thu Apr 22 62 41". Correct the day or the date.',
      'standard input:7: expected a date the calendar has, received "Feb 30 62 41". Correct the day.',
      'standard input:9: expected each day once, received "Fri 62 41". 2026-04-24 is there already; write the date when you mean a later one.',
    ]);
  });

  test("in the farm's units", () => {
    expect(messages(read("Mon warm\n62 41", "metric"))).toEqual([
      'standard input:1: expected a high and a low, received "Mon warm". Write the day\'s high and low, like "Mon 17 5".',
      'standard input:2: expected temperatures between −60 and 60 °C, received "62 41". Write the unit behind a number in °F, like 62F 41F.',
    ]);
  });
});

test("typed lines are told from a logger's export", () => {
  const typed = (...lines: readonly string[]): boolean =>
    looksTyped(
      lines.map((line) => line.split(",")),
      ",",
    );
  expect(typed("62 41 sun")).toBe(true);
  expect(typed("# a remark", "Mon 62")).toBe(true);
  expect(typed("Mo 12 1 sun")).toBe(true);
  expect(typed("ma 12 1 sun")).toBe(true);
  expect(typed("34,5 18")).toBe(true);
  expect(typed("Timestamp,Temp (F)", "2026-04-20 00:00,41.5", "2026-04-20 00:30,")).toBe(false);
  expect(typed("Date;Time;Temp", "20.04.2026;00:00;41,5")).toBe(false);
  expect(typed("Mon 20 Apr 2026 14:00,41.5")).toBe(false);
});
