// Intervals, order of rows, events, repeats, gaps and clocks that were set.
import { all, comma, dmy, hm, hms, hours, lines, mdy, reading, series, stamp, twelve, ymd } from "./kit.mjs";

const outside = (readings, unit) => ({ hours: { outside: hours(readings, unit) }, read: all(readings) });
const moments = (header, readings, write = stamp) =>
  lines(
    header,
    readings.map((r) => `${write(r)},${r.text}`),
  );
const seconds = (r) => `${ymd(r)} ${hms(r)}`;
const every = (minutes, rows, from = "2026-04-17T20:00", more = {}) =>
  series({ from, every: minutes, rows, ...more });
const interval = (name, about, readings, write = stamp) => ({
  name: `every-${name}`,
  about,
  content: moments("Timestamp,Temp (°C)", readings, write),
  ...outside(readings),
});
const HEADER = "Timestamp,Temp (°C)";

const half = every(30, 24);
const irregular = [
  ["2026-04-17T05:55", 2.1],
  ["2026-04-17T06:20", 2.4],
  ["2026-04-17T06:21", 2.4],
  ["2026-04-17T06:59", 3],
  ["2026-04-17T07:00", 3.1],
  ["2026-04-17T11:40", 11.8],
  ["2026-04-17T19:03", 9.2],
  ["2026-04-18T06:10", 1.4],
  ["2026-04-18T13:30", 14.6],
  ["2026-04-18T13:45", 14.9],
  ["2026-04-19T06:00", 4.4],
].map(([wall, value]) => reading("America/New_York", wall, value));
const union = every(10, 64, "2026-04-17T12:00");
const before = union.slice(0, 40);
const after = union.slice(24);
const day = every(60, 60, "2026-04-15T00:00");
const gap = day.filter(({ index }) => index < 12 || index >= 50);
const reset = every(30, 30, "2026-04-17T20:00");
const first = every(30, 12, "2026-04-17T12:00");
const second = every(30, 12, "2026-04-18T12:00", { low: 41, high: 62 });
const later = every(30, 12, "2026-04-18T12:00");
const ahead = every(60, 30, "2027-04-17T20:00");

export const rows = [
  interval(
    "second",
    "Every second, over the change of an hour.",
    every(1 / 60, 120, "2026-04-17T21:59"),
    seconds,
  ),
  interval("ten-seconds", "Every ten seconds.", every(1 / 6, 60, "2026-04-17T21:55"), seconds),
  interval("minute", "Every minute.", every(1, 60, "2026-04-17T21:30")),
  interval("five-minutes", "Every five minutes, not on the full five.", every(5, 40, "2026-04-17T21:33")),
  interval(
    "fifteen-minutes",
    "Every quarter of an hour, as seconds past the minute.",
    every(15, 40, "2026-04-17T20:00:37"),
    seconds,
  ),
  interval("twenty-minutes", "Every twenty minutes.", every(20, 40)),
  interval("hour", "Every hour.", every(60, 48, "2026-04-15T20:00")),
  interval(
    "three-hours",
    "Every three hours: only the hours read are stored, the hours between stay empty.",
    every(180, 24, "2026-04-14T20:00"),
  ),
  interval("six-hours", "Every six hours.", every(360, 20, "2026-04-12T20:00", { low: 7, high: 12 })),
  {
    name: "irregular",
    about: "Kept by hand, whenever someone passed by.",
    content: moments("Timestamp,Temp (°C)", irregular),
    ...outside(irregular),
    warns: [],
  },
  {
    name: "newest-first",
    about: "The newest reading first.",
    content: moments(HEADER, half.toReversed()),
    ...outside(half),
  },
  {
    name: "sorted-by-temperature",
    about: "A spreadsheet sorted the rows by temperature.",
    content: moments(
      HEADER,
      half.toSorted((a, b) => a.value - b.value || a.at - b.at),
    ),
    ...outside(half),
    warns: [],
  },
  {
    name: "events",
    about: "Rows of events without a temperature: started, button, host connected, stopped.",
    content: lines(
      "#,Date Time,Temp (°C),Started,Button,Host connected,Stopped",
      "1,2026-04-17 19:58:12,,Logged,,,",
      half.slice(0, 9).map((r) => `${r.index + 2},${seconds(r)},${r.text},,,,`),
      "11,2026-04-18 00:17:40,,,Logged,,",
      half.slice(9).map((r) => `${r.index + 3},${seconds(r)},${r.text},,,,`),
      "27,2026-04-18 07:44:03,,,,Logged,",
      "28,2026-04-18 07:45:00,,,,,Logged",
    ),
    hours: { outside: hours(half) },
    read: { rows: 28, used: 24, dropped: { noReading: 4 } },
  },
  {
    name: "events-as-words",
    about: "Events as words in the temperature's place, with a time of their own.",
    content: lines(
      HEADER,
      "2026-04-17 19:58,Logger started",
      half.slice(0, 9).map((r) => `${stamp(r)},${r.text}`),
      "2026-04-18 00:17,Battery low",
      half.slice(9).map((r) => `${stamp(r)},${r.text}`),
      "2026-04-18 07:45,Logger stopped",
    ),
    hours: { outside: hours(half) },
    read: { rows: 27, used: 24 },
  },
  {
    name: "rows-twice",
    about: "Every row stands twice: it counts once.",
    content: lines(
      HEADER,
      half.map((r) => [`${stamp(r)},${r.text}`, `${stamp(r)},${r.text}`]),
    ),
    hours: { outside: hours(half) },
    read: { rows: 48, used: 24, dropped: { repeated: 24 } },
  },
  {
    name: "file-twice",
    about: "The whole file pasted below itself, header and all: everything counts once.",
    content: moments(HEADER, half).repeat(2),
    hours: { outside: hours(half) },
    warns: [],
  },
  {
    name: "downloads-overlap",
    about:
      "Two downloads one below the other, each with title and header; they share the time from 16:00 to 18:30.",
    content: moments(`Lower field\n${HEADER}`, before) + moments(`Lower field\n${HEADER}`, after),
    hours: { outside: hours(union) },
    warns: [],
  },
  {
    name: "downloads-newest-below-first",
    about: "The newer download stands above the older.",
    content: moments(HEADER, after) + moments(HEADER, before),
    hours: { outside: hours(union) },
    warns: [],
  },
  {
    name: "header-changes-unit",
    about: "Below the second header the readings are in °F, and the columns have changed places.",
    content:
      moments(HEADER, first) +
      lines(
        "Temp (°F),Battery (V),Timestamp",
        second.map((r) => `${r.text},3.0,${stamp(r)}`),
      ),
    hours: { outside: [...hours(first), ...hours(second, "F")] },
    warns: [],
  },
  {
    name: "header-loses-unit",
    about: "The second header says no unit, and may mean another: refused.",
    content:
      moments(HEADER, first) +
      lines(
        "Timestamp,Temp",
        second.map((r) => `${stamp(r)},${r.text}`),
      ),
    problem: { code: "log-unit-missing", line: 15, names: ["--unit"] },
  },
  {
    name: "header-changes-dates",
    about: "The first download writes month first, the second day first, as its days above twelve show.",
    content: lines(
      "Date,Time,Temp (°C)",
      first.map((r) => `${mdy(r)},${hm(r)},${r.text}`),
      "Date,Time,Temp (°C)",
      later.map((r) => `${dmy(r, "/")},${hm(r)},${r.text}`),
    ),
    hours: { outside: [...hours(first), ...hours(later)] },
    warns: [],
  },
  {
    name: "silence",
    about: "The battery was dead for 38 hours: nothing is invented.",
    content: moments(HEADER, gap),
    hours: { outside: hours(gap) },
    read: all(gap),
    warns: [],
  },
  {
    name: "clock-set-back",
    about:
      "Someone set the clock back by 40 minutes: the hour around it is told twice and not checked here; all other hours are.",
    content: lines(
      HEADER,
      every(10, 18, "2026-04-17T20:00").map((r) => `${stamp(r)},${r.text}`),
      every(10, 18, "2026-04-17T22:20").map((r) => `${stamp(r)},${(r.value + 0.3).toFixed(1)}`),
    ),
    hours: {
      outside: [
        ...hours(every(10, 12, "2026-04-17T20:00")),
        ...hours(
          every(10, 14, "2026-04-17T23:00").map((r) => ({
            ...r,
            value: Number((every(10, 18, "2026-04-17T22:20")[r.index + 4].value + 0.3).toFixed(1)),
          })),
        ),
      ],
    },
    unchecked: ["2026-04-18T02"],
    warns: [],
  },
  {
    name: "clock-set-forward",
    about: "Someone set the clock forward by 55 minutes: a short silence.",
    content: moments(HEADER, [...every(10, 18, "2026-04-17T20:00"), ...every(10, 18, "2026-04-17T23:45")]),
    hours: { outside: hours([...every(10, 18, "2026-04-17T20:00"), ...every(10, 18, "2026-04-17T23:45")]) },
    read: { rows: 36, used: 36 },
    warns: [],
  },
  {
    name: "clock-fell-to-2000",
    about:
      "The battery slipped: for ten rows the clock began at January 1, 2000, then someone set it. These rows have no known time and are left out.",
    content: lines(
      HEADER,
      reset.map((r) =>
        r.index >= 10 && r.index < 20
          ? `2000-01-01 ${hm({ h: Math.floor((r.index - 10) / 2), mi: ((r.index - 10) % 2) * 30 })},${r.text}`
          : `${stamp(r)},${r.text}`,
      ),
    ),
    hours: { outside: hours(reset.filter(({ index }) => index < 10 || index >= 20)) },
    read: { rows: 30, used: 20 },
    warns: [],
  },
  {
    name: "clock-never-set",
    about: "The clock was never set: all begins with 1970. Refused.",
    content: moments(HEADER, every(10, 40, "1970-01-01T00:00")),
    problem: { code: "log-clock-unset", names: ["1970", "clock"] },
  },
  {
    name: "clock-a-year-ahead",
    about: "All readings lie a year ahead: measured they cannot be. Refused.",
    content: moments(HEADER, ahead),
    problem: { code: "log-in-the-future", names: ["2027", "clock"] },
  },
  {
    name: "nothing-measured",
    about: "A temperature column with nothing but ---: refused.",
    content: moments(
      HEADER,
      half.map((r) => ({ ...r, text: "---" })),
    ),
    problem: { code: "log-empty" },
  },
  {
    name: "header-only",
    about: "A header and nothing below.",
    content: lines(HEADER),
    problem: { code: "log-empty" },
  },
  { name: "empty", about: "A file of no bytes.", content: "", problem: { code: "log-empty" } },
  {
    name: "blank-lines",
    about: "Blank lines only.",
    content: "\r\n   \r\n\t\r\n,,,\r\n",
    problem: { code: "log-empty" },
  },
  {
    name: "kept-by-hand",
    about:
      "A spreadsheet kept by two people: spellings of times and numbers change, remarks stand in cells, rows are empty.",
    zone: "Europe/Vienna",
    units: "metric",
    content: lines(
      "Wetter am Hof;;;",
      ";;;",
      "Tag;Zeit;Temp. (°C);Bemerkung",
      "13.4.2026;7:00;3,5;Reif",
      "13.4.26;14 Uhr;15;",
      "13.4.2026;21.00;9,0;",
      ";;;",
      "14.4.2026;07:00;4;",
      "14.04.2026;14:00;16,5 °C;sonnig, Wind",
      "14.4.2026;21:15;ca. 10;",
      "15.4.2026;7 Uhr;5.5;",
      "15.4.2026;;13;vergessen zu schauen",
      "16.4.2026;7:00;-0,5;Frost!",
      "16.4.2026;14:00;12,5;",
      "Mittel;;8,9;",
    ),
    hours: {
      outside: hours(
        [
          ["13T07:00", 3.5],
          ["13T14:00", 15],
          ["13T21:00", 9],
          ["14T07:00", 4],
          ["14T14:00", 16.5],
          ["15T07:00", 5.5],
          ["16T07:00", -0.5],
          ["16T14:00", 12.5],
        ].map(([wall, value]) => reading("Europe/Vienna", `2026-04-${wall}`, value)),
      ),
    },
    read: { used: 8 },
    warns: [],
  },
  {
    name: "everything-at-once",
    about:
      "Titles, units in a row, decimal commas, 12 hours, newest first, flags, missing codes, notes, Windows-1252.",
    zone: "America/Mexico_City",
    units: "metric",
    content: Buffer.from(
      lines(
        "Huerto de arriba;;;",
        "Descarga: 19/04/2026 08:00;;;",
        "Fecha;Hora;Humedad;Temperatura exterior",
        ";;%;°C",
        series({
          zone: "America/Mexico_City",
          from: "2026-04-17T20:00",
          every: 30,
          rows: 30,
          low: 9,
          high: 24,
        })
          .toReversed()
          .map(
            (r) =>
              `${dmy(r, "/")};${twelve(r, " a.m.", " p.m.")};${40 + (r.index % 9)};${r.index === 4 ? "---" : r.index === 11 ? "-9999" : `${comma(r)}${r.index % 5 === 0 ? " A" : ""}`}`,
          ),
        "",
        "A = aceptado",
      ),
      "latin1",
    ),
    hours: {
      outside: hours(
        series({
          zone: "America/Mexico_City",
          from: "2026-04-17T20:00",
          every: 30,
          rows: 30,
          low: 9,
          high: 24,
        }).filter(({ index }) => index !== 4 && index !== 11),
      ),
    },
    read: { used: 28 },
  },
];
