import type { Random } from "./random.ts";
import type { Series } from "./series.ts";

const two = (value: number): string => String(value).padStart(2, "0");

interface Moment {
  readonly y: number;
  readonly m: number;
  readonly d: number;
  readonly h: number;
  readonly min: number;
}

const GERMAN = "Januar Februar März April Mai Juni Juli August September Oktober November Dezember".split(
  " ",
);
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

type DateWritten =
  | "2026-04-03"
  | "2026/4/3"
  | "04/03/2026"
  | "4/3/26"
  | "03.04.2026"
  | "3-4-2026"
  | "3 Apr 2026"
  | "3. April 2026"
  | "Apr 3 2026";

/** Ways to write a date. */
export const DATES: Readonly<Record<DateWritten, (at: Moment) => string>> = {
  "2026-04-03": ({ y, m, d }) => `${y}-${two(m)}-${two(d)}`,
  "2026/4/3": ({ y, m, d }) => `${y}/${m}/${d}`,
  "04/03/2026": ({ y, m, d }) => `${two(m)}/${two(d)}/${y}`,
  "4/3/26": ({ y, m, d }) => `${m}/${d}/${two(y % 100)}`,
  "03.04.2026": ({ y, m, d }) => `${two(d)}.${two(m)}.${y}`,
  "3-4-2026": ({ y, m, d }) => `${d}-${m}-${y}`,
  "3 Apr 2026": ({ y, m, d }) => `${d} ${MONTHS[m - 1]} ${y}`,
  "3. April 2026": ({ y, m, d }) => `${d}. ${GERMAN[m - 1]} ${y}`,
  "Apr 3 2026": ({ y, m, d }) => `${MONTHS[m - 1]} ${d} ${y}`,
};

const half = (h: number): number => (h % 12 === 0 ? 12 : h % 12);

type ClockWritten = "13:05" | "13:05:00" | "1:05 PM" | "01:05:00 pm";

/** Ways to write a time of day. */
export const CLOCKS: Readonly<Record<ClockWritten, (at: Moment) => string>> = {
  "13:05": ({ h, min }) => `${two(h)}:${two(min)}`,
  "13:05:00": ({ h, min }) => `${two(h)}:${two(min)}:00`,
  "1:05 PM": ({ h, min }) => `${half(h)}:${two(min)} ${h < 12 ? "AM" : "PM"}`,
  "01:05:00 pm": ({ h, min }) => `${two(half(h))}:${two(min)}:00 ${h < 12 ? "am" : "pm"}`,
};

/** Where the unit is said, and how. F stands for either. */
export interface UnitWritten {
  readonly in: "header" | "cells" | "option";
  readonly as: string;
}

export const UNITS: readonly UnitWritten[] = [
  { in: "header", as: "(°F)" },
  { in: "header", as: "[F]" },
  { in: "header", as: ", °F" },
  { in: "header", as: "deg F" },
  { in: "header", as: "(degF)" },
  { in: "cells", as: " °F" },
  { in: "cells", as: "°F" },
  { in: "cells", as: " F" },
  { in: "option", as: "" },
];

/** Names of the columns. */
export interface HeaderWritten {
  readonly moment: string;
  readonly date: string;
  readonly time: string;
  readonly temperature: string;
}

export const HEADERS: readonly HeaderWritten[] = [
  { moment: "Date/Time", date: "Date", time: "Time", temperature: "Temperature" },
  { moment: "Timestamp", date: "DATE", time: "TIME", temperature: "TEMP" },
  { moment: "date_time", date: "date", time: "time", temperature: "temp" },
  { moment: "Date Time", date: "Day", time: "Clock", temperature: "Air Temp" },
  { moment: "Datum/Uhrzeit", date: "Datum", time: "Uhrzeit", temperature: "Lufttemperatur" },
  { moment: "Date et heure", date: "Date", time: "Heure", temperature: "Température" },
];

export type Extra = "#" | "Humidity (%)" | "Dew Point (°F)" | "Battery (V)" | "Remarks" | "Wind Speed (mph)";

/** Columns beside the temperature, with what they hold in a row. */
export const EXTRAS: Readonly<Record<Extra, (row: number) => string>> = {
  "#": (i) => String(i + 1),
  "Humidity (%)": (i) => String(60 + ((i * 7) % 35)),
  "Dew Point (°F)": (i) => String(40 + ((i * 3) % 9)),
  "Battery (V)": () => "3.6",
  Remarks: (i) => (i % 9 === 4 ? "gate open" : ""),
  "Wind Speed (mph)": (i) => String((i * 5) % 12),
};

/** How a log is written down. None of it changes what it says. */
export interface Style {
  readonly date: DateWritten;
  readonly clock: ClockWritten;
  /** Date and time in one cell, with this between them; null: in two. */
  readonly together: " " | "T" | null;
  readonly unit: UnitWritten;
  readonly header: HeaderWritten;
  readonly separator: "," | ";" | "\t" | "|";
  readonly decimal: "." | ",";
  readonly decimals: 1 | 2;
  readonly quotes: "none" | "all" | "some";
  readonly padding: "" | " ";
  readonly lineEnd: "\n" | "\r\n" | "\r";
  readonly lastLineEnds: boolean;
  readonly extras: readonly Extra[];
  /** Order of the columns: the first has the lowest rank. */
  readonly ranks: readonly number[];
  readonly titles: readonly string[];
  readonly blankLines: boolean;
  readonly newestFirst: boolean;
  /** Rows without a reading between the others. */
  readonly silent: "" | "---" | "NaN" | null;
  readonly minus: "-" | "−";
  readonly encoding: "utf8" | "utf8 with mark" | "utf16le" | "latin1";
}

/** What cannot be written together is put right: a comma is not both decimal and bare separator. */
export function possible(style: Style): Style {
  const together =
    style.together === "T" && !(style.date === "2026-04-03" && style.clock.startsWith("13"))
      ? " "
      : style.together;
  const decimal = style.separator === "," && style.quotes !== "all" ? "." : style.decimal;
  const encoding = style.encoding === "latin1" && style.minus === "−" ? "utf8" : style.encoding;
  return { ...style, together, decimal, encoding };
}

const TITLES = [
  [],
  ["Garden logger 7"],
  ["Serial number: 0012", "Place: behind the shed"],
  ["Garden logger 7", ""],
] as const;

export const randomStyle = (chosen: Random): Style =>
  possible({
    date: chosen.pick(Object.keys(DATES) as DateWritten[]),
    clock: chosen.pick(Object.keys(CLOCKS) as ClockWritten[]),
    together: chosen.pick([" ", "T", null]),
    unit: chosen.pick(UNITS),
    header: chosen.pick(HEADERS),
    separator: chosen.pick([",", ";", "\t", "|"]),
    decimal: chosen.pick([".", ","]),
    decimals: chosen.pick([1, 2]),
    quotes: chosen.pick(["none", "all", "some"]),
    padding: chosen.pick(["", "", " "]),
    lineEnd: chosen.pick(["\n", "\r\n", "\r"]),
    lastLineEnds: chosen.chance(0.8),
    extras: chosen.shuffled(Object.keys(EXTRAS) as Extra[]).slice(0, chosen.below(4)),
    ranks: Array.from({ length: 9 }, () => chosen.next()),
    titles: chosen.pick(TITLES),
    blankLines: chosen.chance(0.2),
    newestFirst: chosen.chance(0.3),
    silent: chosen.pick([null, null, "", "---", "NaN"]),
    minus: chosen.pick(["-", "-", "−"]),
    encoding: chosen.pick(["utf8", "utf8", "utf8 with mark", "utf16le", "latin1"]),
  });

/** A log as cells, before they are put into lines. */
export interface Table {
  readonly titles: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

interface Column {
  readonly name: string;
  cell(moment: Moment, reading: string, index: number): string;
}

function columnsOf(style: Style, unit: "C" | "F"): readonly Column[] {
  const { header, together } = style;
  const named = style.unit.in === "header" ? ` ${style.unit.as.replace("F", unit)}`.replace(" ,", ",") : "";
  const times: readonly Column[] =
    together === null
      ? [
          { name: header.date, cell: (at) => DATES[style.date](at) },
          { name: header.time, cell: (at) => CLOCKS[style.clock](at) },
        ]
      : [
          {
            name: header.moment,
            cell: (at) => `${DATES[style.date](at)}${together}${CLOCKS[style.clock](at)}`,
          },
        ];
  const all: readonly Column[] = [
    ...times,
    { name: `${header.temperature}${named}`, cell: (_, reading) => reading },
    ...style.extras.map((name) => ({
      name,
      cell: (_at: Moment, _reading: string, i: number) => EXTRAS[name](i),
    })),
  ];
  return all
    .map((column, i) => ({ column, rank: style.ranks[i]! }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ column }) => column);
}

export function tableOf(series: Series, style: Style): Table {
  const { unit, offset } = series;
  const columns = columnsOf(style, unit);
  const behind = style.unit.in === "cells" ? style.unit.as.replace("F", unit) : "";
  const number = (tenths: number): string =>
    `${tenths < 0 ? style.minus : ""}${(Math.abs(tenths) / 10).toFixed(style.decimals).replace(".", style.decimal)}${behind}`;
  const rows = series.readings.flatMap(({ at, tenths }, i) => {
    const wall = new Date(at + offset * 60_000);
    const moment: Moment = {
      y: wall.getUTCFullYear(),
      m: wall.getUTCMonth() + 1,
      d: wall.getUTCDate(),
      h: wall.getUTCHours(),
      min: wall.getUTCMinutes(),
    };
    const row = (reading: string): readonly string[] =>
      columns.map((column) => column.cell(moment, reading, i));
    const own = row(number(tenths));
    return style.silent !== null && i % 11 === 5 ? [row(style.silent), own] : [own];
  });
  return {
    titles: style.titles,
    header: columns.map(({ name }) => name),
    rows: style.newestFirst ? rows.reverse() : rows,
  };
}

/** The lines of a table as text. */
export function textOf({ titles, header, rows }: Table, style: Style): string {
  const { separator, padding, quotes } = style;
  const cellOf = (cell: string, i: number): string => {
    const must = cell.includes(separator);
    const quoted = must || quotes === "all" || (quotes === "some" && i % 2 === 0) ? `"${cell}"` : cell;
    return quoted === cell ? `${padding}${cell}${padding}` : quoted;
  };
  const line = (cells: readonly string[]): string => cells.map(cellOf).join(separator);
  const lines = [...titles, line(header), ...rows.map(line)];
  const spaced = style.blankLines ? lines.flatMap((text, i) => (i % 7 === 6 ? [text, ""] : [text])) : lines;
  return spaced.join(style.lineEnd) + (style.lastLineEnds ? style.lineEnd : "");
}

/** A text as bytes. */
export function bytesOf(text: string, encoding: Style["encoding"]): Buffer {
  if (encoding === "utf16le") return Buffer.from(`\uFEFF${text}`, "utf16le");
  return encoding === "latin1"
    ? Buffer.from(text, "latin1")
    : Buffer.from(encoding === "utf8" ? text : `\uFEFF${text}`, "utf8");
}

/** What the command line must say of a log in a style. */
export const optionsOf = ({ unit }: Style, series: Series): { readonly unit: "C" | "F" | null } => ({
  unit: unit.in === "option" ? series.unit : null,
});
