// Separators, encodings, line ends, titles, headers and everything else around the readings.
import { all, bytes, comma, dmy, hm, hours, lines, series, stamp, ymd } from "./kit.mjs";

const BERLIN = "Europe/Berlin";
const PARIS = "Europe/Paris";
const plain = series({ from: "2026-04-17T22:00", every: 10, rows: 36 });
const half = series({ from: "2026-04-17T20:00", every: 30, rows: 24 });
const hourly = series({ from: "2026-04-16T18:00", every: 60, rows: 30 });
const berlin = series({ zone: BERLIN, from: "2026-04-17T20:00", every: 30, rows: 24 });
const cold = series({ from: "2026-02-17T20:00", every: 30, rows: 24, low: -7.3, high: 3.2 });
const outside = (readings, unit) => ({ hours: { outside: hours(readings, unit) }, read: all(readings) });
const german = (degree, sign = ";") =>
  lines(
    ["Datum", "Zeit", `Temperatur (${degree}C)`].join(sign),
    berlin.map((r) => [dmy(r), hm(r), comma(r)].join(sign)),
  );
const simple = lines(
  "Timestamp,Temp (°C)",
  plain.map((r) => `${stamp(r)},${r.text}`),
);

export const shape = [
  {
    name: "commas",
    about: "Date and time in one column, a decimal point, commas.",
    content: simple,
    ...outside(plain),
  },
  {
    name: "semicolons-decimal-commas",
    about: "Day first with dots, decimal commas, semicolons.",
    zone: BERLIN,
    units: "metric",
    content: german("°"),
    ...outside(berlin),
  },
  {
    name: "tabs",
    about: "Tabs between date, time and temperature.",
    file: "log.txt",
    content: lines(
      "Date\tTime\tTemp (°C)",
      half.map((r) => `${ymd(r)}\t${hm(r)}\t${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "runs-of-blanks",
    about: "Columns lined up with blanks; the header's words stand over them.",
    file: "log.txt",
    content: lines(
      "Date        Time   Temp_C     RH",
      half.map(
        (r) => `${ymd(r)}  ${hm(r)}  ${r.text.padStart(6)}  ${String(60 + (r.index % 7)).padStart(5)}`,
      ),
    ),
    ...outside(half),
  },
  {
    name: "runs-of-blanks-missing-cell",
    about:
      "Columns lined up with blanks; in two rows the temperature is blank, and the humidity must not slip into its place.",
    file: "log.txt",
    content: lines(
      "Date        Time   Temp_C     RH",
      half.map(
        (r) =>
          `${ymd(r)}  ${hm(r)}  ${(r.index === 5 || r.index === 6 ? "" : r.text).padStart(6)}  ${String(60 + (r.index % 7)).padStart(5)}`,
      ),
    ),
    hours: { outside: hours(half.filter(({ index }) => index !== 5 && index !== 6)) },
    read: { rows: 24, used: 22, dropped: { noReading: 2 } },
  },
  {
    name: "decimal-commas-quoted",
    about: "Commas between cells and in numbers; the numbers are quoted.",
    zone: PARIS,
    units: "metric",
    content: lines(
      "Date,Heure,Température (°C)",
      series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 }).map(
        (r) => `${dmy(r, "/")},${hm(r)},"${comma(r)}"`,
      ),
    ),
    ...outside(series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 })),
  },
  {
    name: "decimal-commas-bare",
    about: "Commas between cells and in numbers, nothing quoted: 12,5 falls apart into two cells.",
    zone: PARIS,
    units: "metric",
    content: lines(
      "Date,Heure,Température (°C)",
      series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 }).map(
        (r) => `${dmy(r, "/")},${hm(r)},${comma(r)}`,
      ),
    ),
    ...outside(series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 })),
  },
  {
    name: "decimal-commas-bare-below-zero",
    about: "As before, with frost, and whole numbers written without a decimal: these rows have a cell less.",
    zone: BERLIN,
    units: "metric",
    content: lines(
      "Zeitpunkt,Temperatur °C",
      "2026-02-17 20:00,1,5",
      "2026-02-17 21:00,0,5",
      "2026-02-17 22:00,-0,5",
      "2026-02-17 23:00,-1",
      "2026-02-18 00:00,-2,5",
      "2026-02-18 01:00,-3",
      "2026-02-18 02:00,-3,5",
      "2026-02-18 03:00,-4,5",
    ),
    hours: {
      outside: [
        ["2026-02-17T19", 1.5, 1, 1.5, 1.5],
        ["2026-02-17T20", 0.5, 1, 0.5, 0.5],
        ["2026-02-17T21", -0.5, 1, -0.5, -0.5],
        ["2026-02-17T22", -1, 1, -1, -1],
        ["2026-02-17T23", -2.5, 1, -2.5, -2.5],
        ["2026-02-18T00", -3, 1, -3, -3],
        ["2026-02-18T01", -3.5, 1, -3.5, -3.5],
        ["2026-02-18T02", -4.5, 1, -4.5, -4.5],
      ],
    },
    read: { rows: 8, used: 8 },
  },
  {
    name: "decimal-commas-bare-two-numbers",
    about: "Temperature and humidity both split by their decimal commas: each row has two cells too many.",
    zone: PARIS,
    units: "metric",
    content: lines(
      "Date,Heure,Température (°C),Humidité (%)",
      series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 }).map(
        (r) => `${dmy(r, "/")},${hm(r)},${comma(r)},${70 + (r.index % 5)},${r.index % 10}`,
      ),
    ),
    ...outside(series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 })),
  },
  {
    name: "byte-order-mark",
    about: "UTF-8 with a byte-order mark and CRLF.",
    content: `\uFEFF${simple.replaceAll("\n", "\r\n")}`,
    ...outside(plain),
  },
  {
    name: "utf-16-little",
    about: "UTF-16, little end first, with mark, tabs, CRLF.",
    file: "log.txt",
    content: Buffer.from(`\uFEFF${german("°", "\t").replaceAll("\n", "\r\n")}`, "utf16le"),
    zone: BERLIN,
    units: "metric",
    ...outside(berlin),
  },
  {
    name: "utf-16-big",
    about: "UTF-16, big end first, with mark.",
    content: Buffer.from(`\uFEFF${simple}`, "utf16le").swap16(),
    ...outside(plain),
  },
  {
    name: "utf-16-without-mark",
    about: "UTF-16, little end first, the mark lost.",
    content: Buffer.from(simple, "utf16le"),
    ...outside(plain),
  },
  {
    name: "latin-1",
    about: "Latin-1: the degree sign is the byte B0.",
    zone: BERLIN,
    units: "metric",
    content: Buffer.from(german("°"), "latin1"),
    ...outside(berlin),
  },
  {
    name: "windows-1252",
    about: "Windows-1252: accents, and a long dash (96) in a title.",
    zone: PARIS,
    units: "metric",
    content: bytes(
      lines(
        "Serre des Prés – relevé",
        "Date;Heure;Température extérieure (°C);Humidité (%)",
        series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 }).map(
          (r) => `${dmy(r, "/")};${hm(r)};${comma(r)};${70 + (r.index % 9)}`,
        ),
      ),
      { é: 0xe9, "–": 0x96, "°": 0xb0 },
    ),
    ...outside(series({ zone: PARIS, from: "2026-04-17T20:00", every: 30, rows: 24 })),
  },
  {
    name: "old-macintosh",
    about: "An old Macintosh: the degree sign is the byte A1, lines end with a lone CR.",
    content: bytes(simple.replaceAll("\n", "\r"), { "°": 0xa1 }),
    ...outside(plain),
  },
  {
    name: "code-page-850",
    about: "DOS: the degree sign is the byte F8.",
    zone: BERLIN,
    units: "metric",
    content: bytes(german("°").replaceAll("\n", "\r\n"), { "°": 0xf8 }),
    ...outside(berlin),
  },
  {
    name: "windows-1251",
    about:
      "Cyrillic in one byte: the words cannot be read, but one column holds dates, one times, one numbers, and °C is plain.",
    zone: "Europe/Sofia",
    units: "metric",
    content: bytes(
      lines(
        "Дата;Час;Температура, °C",
        series({ zone: "Europe/Sofia", from: "2026-04-17T20:00", every: 30, rows: 24 }).map(
          (r) => `${dmy(r)};${hm(r)};${comma(r)}`,
        ),
      ),
      {
        "°": 0xb0,
        Ч: 0xd7,
        ...Object.fromEntries([..."АБВГДЕЖЗИЙКЛМНОПРСТУФХЦ"].map((letter, index) => [letter, 0xc0 + index])),
        ...Object.fromEntries([..."абвгдежзийклмнопрстуфхц"].map((letter, index) => [letter, 0xe0 + index])),
      },
    ),
    ...outside(series({ zone: "Europe/Sofia", from: "2026-04-17T20:00", every: 30, rows: 24 })),
  },
  {
    name: "encoded-twice",
    about: "UTF-8 taken for Latin-1 and saved again: °C became Â°C.",
    content: simple.replace("°", "Â°"),
    ...outside(plain),
  },
  {
    name: "lost-degree-sign",
    about: "The degree sign was replaced by a question mark on the way.",
    content: simple.replace("°", "?"),
    ...outside(plain),
  },
  {
    name: "lone-cr",
    about: "Lines end with a lone CR.",
    content: simple.replaceAll("\n", "\r"),
    ...outside(plain),
  },
  {
    name: "mixed-line-ends",
    about: "Two files pasted together: the first half ends lines with CRLF, the second with LF.",
    content: simple
      .split("\n")
      .map((line, index) => `${line}${index < 18 ? "\r\n" : "\n"}`)
      .join("")
      .replace(/\n+$/u, "\n"),
    ...outside(plain),
  },
  {
    name: "title-lines",
    about:
      "Seven lines about the instrument above the header, one of them blank, one with a number and a date.",
    content: lines(
      "Station report",
      "Name: Lower field, post 3",
      "Serial no.: 4410-77",
      "Exported: 19/04/2026 08:12",
      "Interval: 30 min; alarm low 2.0; alarm high 30.0",
      "",
      "Readings",
      "No.,Date and time,Temperature °C",
      half.map((r) => `${r.index + 1},${stamp(r)},${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "sep-line",
    about: "A first line that tells a spreadsheet the separator.",
    zone: BERLIN,
    units: "metric",
    content: `sep=;\n${german("°")}`,
    ...outside(berlin),
  },
  {
    name: "units-in-their-own-row",
    about: "Names in one row, units in the next.",
    content: lines(
      "Date;Time;Air temperature;Humidity",
      ";;°F;%",
      series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 39, high: 61 }).map(
        (r) => `${ymd(r)};${hm(r)};${r.text};${60 + (r.index % 7)}`,
      ),
    ),
    ...outside(series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 39, high: 61 }), "F"),
  },
  {
    name: "four-header-rows",
    about: "A title row, names, units, and how each value was made.",
    content: lines(
      '"Bottom meadow","table 2","program 7"',
      '"STAMP","NO","AirT","Hum"',
      '"time","","deg C","pct"',
      '"","","mean","last"',
      half.map((r) => `"${ymd(r)} ${hm(r)}:00",${410 + r.index},${r.text},${60 + (r.index % 7)}`),
    ),
    ...outside(half),
  },
  {
    name: "header-in-two-rows",
    about: "A column's name goes over two rows, lined up with blanks: Air over Temp, Dew over Point.",
    file: "download.txt",
    args: ["--unit", "F"],
    content: lines(
      "                 Air   High    Low   Rel.   Dew",
      "     Day   Time   Temp   Temp   Temp   Hum. Point",
      "-".repeat(50),
      series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 39, high: 61 }).map(
        (r) =>
          `${String(r.mo).padStart(2)}/${r.d}/${String(r.y).slice(2)} ${hm(r).padStart(6)}  ${r.text.padStart(5)}  ${(r.value + 0.6).toFixed(1)}  ${(r.value - 0.6).toFixed(1)}   ${70 + (r.index % 7)}  ${(r.value - 8).toFixed(1)}`,
      ),
    ),
    ...outside(series({ from: "2026-04-17T20:00", every: 30, rows: 24, low: 39, high: 61 }), "F"),
  },
  {
    name: "no-header",
    about: "No header; a column of moments, a column of numbers; the grower says the unit.",
    args: ["--unit", "C"],
    content: lines(half.map((r) => `${stamp(r)},${r.text}`)),
    ...outside(half),
  },
  {
    name: "no-header-no-unit",
    about: "No header, and nobody says the unit.",
    content: lines(half.map((r) => `${stamp(r)},${r.text}`)),
    problem: { code: "log-unit-missing", line: 1, names: ["--unit"] },
  },
  {
    name: "no-header-two-numbers",
    about: "No header and two columns of numbers, either of which may be the temperature.",
    args: ["--unit", "C"],
    content: lines(half.map((r) => `${stamp(r)},${r.text},${(r.value + 3).toFixed(1)}`)),
    problem: { code: "log-columns-several", names: ["--column"] },
  },
  {
    name: "no-header-column-by-number",
    about: "No header; the grower names the column by its number.",
    args: ["--unit", "C", "--column", "3"],
    content: lines(half.map((r) => `${stamp(r)},${60 + (r.index % 5)},${r.text}`)),
    ...outside(half),
  },
  {
    name: "unnamed-first-column",
    about: "A running number without a name before the others.",
    content: lines(
      ",time,temp_c",
      half.map((r) => `${r.index},${stamp(r)}:00,${r.text}`),
    ),
    ...outside(half),
  },
  {
    name: "notes-below",
    about: "Notes and a legend below the readings, one of which holds a date and a number.",
    content: lines(
      "Date,Time,Temp (°C)",
      half.map((r) => `${ymd(r)},${hm(r)},${r.text}`),
      "",
      "Lowest,,4.0",
      "Mean,,8.9",
      "Notes:",
      "Battery changed on 2026-04-17, was 2.4 V",
      "A = accepted, E = estimated",
      "End of report",
    ),
    hours: { outside: hours(half) },
    read: { used: 24 },
  },
  {
    name: "quoted-line-breaks",
    about: "Remarks with commas, quotes and line breaks between quotes; one looks like a row of its own.",
    content: lines(
      "Remark,Date,Time,Temp (°C)",
      hourly.map(
        (r) =>
          `${r.index === 3 ? '"Opened the door,\nthen shut it.\n2026-04-16,21:00,99.9"' : r.index === 7 ? '"he said ""cold"", and left"' : ""},${ymd(r)},${hm(r)},${r.text}`,
      ),
    ),
    ...outside(hourly),
  },
  {
    name: "everything-quoted",
    about: "Every cell quoted, the header too.",
    content: lines(
      '"Date","Time","Temp, outside (°C)"',
      half.map((r) => `"${ymd(r)}","${hm(r)}","${r.text}"`),
    ),
    ...outside(half),
  },
  {
    name: "written-as-formulas",
    about: 'A web page wrote ="12.5" to keep a spreadsheet from changing the numbers.',
    content: lines(
      "Date,Time,Temp (°C)",
      half.map((r) => `="${ymd(r)}",="${hm(r)}",="${r.text}"`),
    ),
    ...outside(half),
  },
  {
    name: "blanks-around-cells",
    about: "Blanks and tabs around cells.",
    content: lines(
      " Timestamp , Temp (°C) ",
      half.map((r) => `  ${stamp(r)}\t,   ${r.text}  `),
    ),
    ...outside(half),
  },
  {
    name: "thousands-of-blanks",
    about: "A saved spreadsheet: empty cells at the end of rows, thousands of empty rows, one row of blanks.",
    zone: BERLIN,
    units: "metric",
    content: `${german("°").replaceAll("\n", ";;;;;;;;;\n")}${" ".repeat(4000)}\n${";;;;;;;;;;;\n".repeat(2500)}`,
    ...outside(berlin),
  },
  {
    name: "ragged-rows",
    about: "Rows with a cell too many or too few behind the temperature; one row ends before it.",
    content: lines(
      "Date,Time,Temp (°C),Hum,Batt",
      half.map((r) =>
        r.index === 9
          ? `${ymd(r)},${hm(r)}`
          : `${ymd(r)},${hm(r)},${r.text}${["", ",61", ",61,3.0", ",61,3.0,,"][r.index % 4]}`,
      ),
    ),
    hours: { outside: hours(half.filter(({ index }) => index !== 9)) },
    read: { rows: 24, used: 23, dropped: { noReading: 1 } },
  },
  {
    name: "cut-last-line",
    about: "The download broke off within the last number: 12.5 would read as 1.",
    content: `${lines(
      "Timestamp,Temp (°C),Hum,Batt",
      half.map((r) => `${stamp(r)},${r.text},61,3.0`),
    )}2026-04-18 08:00,1`,
    hours: { outside: hours(half) },
    read: { rows: 25, used: 24 },
  },
  {
    name: "zeros-at-the-end",
    about: "The power failed: the file ends with 512 zero bytes.",
    content: Buffer.concat([Buffer.from(simple), Buffer.alloc(512)]),
    hours: { outside: hours(plain) },
    read: { used: 36 },
  },
  {
    name: "no-final-line-end",
    about: "The last line has no line end but all its cells.",
    content: simple.trimEnd(),
    ...outside(plain),
  },
  {
    name: "end-of-file-sign",
    about: "An old program closed the file with the byte 1A.",
    content: `${simple.replaceAll("\n", "\r\n")}\u001A`,
    hours: { outside: hours(plain) },
    read: { used: 36 },
  },
  {
    name: "vertical-bars",
    about: "A table as in a mail: vertical bars and a ruled line.",
    file: "mail.txt",
    content: lines(
      "| Date | Time | Temp (°C) |",
      "|------|------|-----------|",
      half.map((r) => `| ${ymd(r)} | ${hm(r)} | ${r.text} |`),
    ),
    ...outside(half),
  },
  {
    name: "hash-before-header",
    about: "Comment signs before titles and header.",
    file: "log.dat",
    content: lines(
      "# lower field",
      "# kept since 2021",
      "# date time temp_C rh",
      cold.map((r) => `${ymd(r)} ${hm(r)} ${r.text} ${70 + (r.index % 5)}`),
    ),
    ...outside(cold),
  },
];
