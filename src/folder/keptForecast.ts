import type { Problem } from "../problem/index.ts";
import { type Instant, instantAt, startOf } from "../quantity/index.ts";
import type { DailyRecord, Forecast, ForetoldHour } from "../weather/index.ts";
import { collapsed } from "./collapsed.ts";
import { shown } from "./faults.ts";
import { forecastDays, type ReadForecast, titledIssue } from "./forecastFile.ts";
import { keptHours } from "./forecastHours.ts";
import { minuteText, momentName, momentNamed } from "./momentName.ts";
import type { Row, Table } from "./row.ts";
import { WET } from "./sky.ts";
import { hourText } from "./storeFile.ts";

/** Name of a kept forecast. @example forecastName(instant(0)) // => "1970-01-01T0000Z.csv" */
export const forecastName = (issued: Instant): string => `${momentName(issued)}.csv`;

/** The moment a kept forecast was issued, from its name; null for any other file. */
export const issuedOf = (name: string): Instant | null =>
  name.endsWith(".csv") ? momentNamed(name.slice(0, -".csv".length)) : null;

const hundredth = (value: number): string => String(Math.round(value * 100) / 100);
const orEmpty = (value: number | null | undefined, factor = 1): string =>
  value === null || value === undefined ? "" : hundredth(value * factor);

/** Columns that not every forecast has, in the order they are written. */
const MORE: readonly (readonly [header: string, value: (day: DailyRecord) => string])[] = [
  ["cloud (%)", ({ cloud }) => orEmpty(cloud, 100)],
  ["rain (mm)", ({ rain }) => orEmpty(rain)],
];

function dayLines(days: readonly DailyRecord[]): readonly string[] {
  const more = MORE.filter(([, value]) => days.some((day) => value(day) !== ""));
  return [
    ["date", "low (C)", "high (C)", "wind (m/s)", "sky", ...more.map(([header]) => header)].join(","),
    ...days.map((day) =>
      [
        day.date,
        hundredth(day.low),
        hundredth(day.high),
        orEmpty(day.wind),
        // The word that says both: it is read back as a covered sky and a wet day.
        day.wet ? WET[0] : (day.sky ?? ""),
        ...more.map(([, value]) => value(day)),
      ].join(","),
    ),
  ];
}

const hourLine = ({ hour, temperature, wind, cloud, radiation, rain }: ForetoldHour): string =>
  [
    hourText(hour),
    hundredth(temperature),
    orEmpty(wind),
    orEmpty(cloud, 100),
    orEmpty(radiation),
    orEmpty(rain),
  ].join(",");

const HOURS = "hour,temperature (C),wind (m/s),cloud (%),radiation (W/m2),rain (mm)";

/** A forecast as the folder keeps it: its days and, where it goes by hours, these below. */
export function writeForecast({ issued, source, days, hours = [] }: Forecast): string {
  const from = source === undefined ? "" : `,from ${source}`;
  const below = hours.length === 0 ? [] : [HOURS, ...hours.map(hourLine)];
  return `${[`leafpace forecast 1,issued ${minuteText(issued)}${from}`, ...dayLines(days), ...below].join("\n")}\n`;
}

const sourceIn = ({ cells }: Row): string | null =>
  cells.map((cell) => /^"?from (.+?)"?$/u.exec(cell.trim())?.[1]).find((name) => name !== undefined) ?? null;

/** Reads a kept forecast back. */
export function readForecast(table: Table): ReadForecast {
  const title = table.rows[0];
  const text = title?.cells.join(",") ?? "";
  if (title === undefined || !text.startsWith("leafpace forecast 1")) {
    const problem: Problem = {
      code: "forecast-version",
      weight: "stops",
      file: table.file,
      line: 1,
      column: null,
      expected: 'a first line "leafpace forecast 1"',
      received: shown(text),
      hint: "This folder is written by leafpace import; keep other files elsewhere.",
    };
    return { forecast: null, issuedBy: null, problems: [problem] };
  }
  const below = table.rows.findIndex(({ cells }) => cells[0]?.trim() === "hour");
  const above = below < 0 ? table.rows : table.rows.slice(0, below);
  const { days, problems: inDays } = forecastDays({ file: table.file, rows: above }, null, "metric");
  const { hours, problems: inHours } =
    below < 0 ? { hours: [], problems: [] } : keptHours({ file: table.file, rows: table.rows.slice(below) });
  const problems = [...inDays, ...inHours];
  const first =
    hours[0] === undefined ? days[0] && instantAt("UTC", days[0].date, 0) : startOf(hours[0].hour);
  // A spreadsheet may have rewritten the title; the file's name tells the moment as well.
  const issued = titledIssue([title], "UTC") ?? first;
  if (issued === undefined || problems.some(({ weight }) => weight === "stops"))
    return { forecast: null, issuedBy: null, problems: collapsed(problems) };
  const source = sourceIn(title);
  return {
    forecast: {
      issued,
      ...(source === null ? {} : { source }),
      days,
      ...(hours.length === 0 ? {} : { hours }),
    },
    issuedBy: "file",
    problems,
  };
}
