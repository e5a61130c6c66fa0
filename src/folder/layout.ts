import type { Problem } from "../problem/index.ts";
import { isCalled } from "./columnRole.ts";
import type { Dialect } from "./dialect.ts";
import { shown, type Units } from "./faults.ts";
import { type HeaderOptions, headerRows, isHeader } from "./logHeader.ts";
import type { TimeColumns } from "./moments.ts";
import { columnName, readingColumns } from "./readingColumns.ts";
import type { Row } from "./row.ts";
import { type Scale, scaleNamed } from "./scale.ts";
import { headerOffset, titleOffset } from "./statedOffset.ts";
import { timeColumns, timeIndices } from "./timeColumns.ts";

/** A column of readings. */
export interface ReadingColumn {
  readonly index: number;
  readonly name: string;
  /** As the row of units, its header or a line above says it; nearest first. */
  readonly scale: Scale | null;
  readonly scaleBy: "header" | "title";
  /** Time of day all its readings have, where a row holds a whole day. */
  readonly clock: string | null;
}

/** What the columns of one part of a log are, from its header and its first rows. */
export interface Layout {
  /** Line of the header, or of the first reading where there is none. */
  readonly line: number;
  readonly header: boolean;
  readonly names: readonly string[];
  readonly titles: readonly string[];
  readonly times: TimeColumns;
  readonly of:
    | { readonly kind: "hours"; readonly columns: readonly ReadingColumn[] }
    | { readonly kind: "days"; readonly low: ReadingColumn; readonly high: ReadingColumn };
  /** Columns that say whose reading, of what, in which unit. */
  readonly station: number | null;
  readonly element: number | null;
  readonly unit: number | null;
  /** Offset from universal time stated for all times. [min] */
  readonly offset: number | null;
  /** Names of columns not looked at. */
  readonly ignored: readonly string[];
  /** Where in the rows given the readings begin. */
  readonly begins: number;
}

export interface LayoutOptions extends HeaderOptions {
  readonly file: string;
  /** The farm's. */
  readonly zone: string;
  readonly units: Units;
}

/** Rows looked at to tell what columns hold. */
const SAMPLE = 40;

/** Column that is called a station, an element or a unit, and is none of temperature. */
function called(
  names: readonly string[],
  kind: "station" | "element" | "unit",
  dialect: Dialect,
): number | null {
  const index = names.findIndex(
    (name) => isCalled(name, kind, dialect) && scaleNamed(name, dialect) === null,
  );
  return index < 0 ? null : index;
}

/** The unit that the lines above the header name, if they name one. */
function titleScale(titles: readonly string[], dialect: Dialect): Scale | null {
  const scales = titles.map((title) => scaleNamed(title, dialect, true)).filter((scale) => scale !== null);
  const [first] = scales;
  return scales.every(({ unit, step }) => unit === first?.unit && step === first.step)
    ? (first ?? null)
    : null;
}

/** Finds what the columns of a log are in its first rows, from a title or a header on, none of them blank. */
export function findLayout(
  rows: readonly Row[],
  options: LayoutOptions,
): { readonly layout: Layout } | { readonly problem: Problem } {
  const { file, zone, dialect, kinds, units, column: asked, sensors } = options;
  const stop = (code: string, line: number | null, expected: string, received: string, hint: string) => ({
    problem: { code, weight: "stops", file, line, column: null, expected, received, hint } as const,
  });
  const found = headerRows(rows, options);
  const below = found === null ? [] : rows.slice(found.begins);
  const next = below.findIndex((row) => isHeader(row, options));
  const sample = below.slice(0, Math.min(SAMPLE, next < 0 ? SAMPLE : next)).map(({ cells }) => cells);
  const times = found === null ? null : timeColumns(found.names, sample, kinds, dialect, zone);
  if (found === null || times === null) {
    const first = found?.header ?? rows.find(({ cells }) => cells.some((cell) => cell.trim() !== ""));
    return stop(
      "log-header-missing",
      first?.line ?? null,
      "a header line with a date, a time and a temperature column",
      shown(first?.cells.join(", ") ?? ""),
      `Name the columns in the line above the readings, like Date,Time,Temp (${units === "US" ? "F" : "C"}).`,
    );
  }
  const { names, header, titles, between, begins } = found;
  const line = header?.line ?? rows[begins]!.line;
  const [station, element, unit] = (["station", "element", "unit"] as const).map((kind) =>
    called(names, kind, dialect),
  ) as [number | null, number | null, number | null];
  const taken = [...timeIndices(times), station, element, unit];
  const width = Math.max(names.length, ...sample.map((cells) => cells.length));
  const free = Array.from({ length: width }, (_, index) => index).filter((index) => !taken.includes(index));
  const unitRow = Array.from({ length: width }, (_, index) =>
    between.map(({ cells }) => cells[index] ?? "").join(" "),
  );
  const chosen = readingColumns({
    names,
    units: unitRow,
    sample,
    free,
    element,
    dayOf: (cells) => `${dateIn(times, cells)} ${station === null ? "" : cells[station]}`,
    asked,
    sensors,
    kinds,
    dialect,
  });
  if (chosen.kind === "problem")
    return stop(chosen.code, line, chosen.expected, chosen.received, chosen.hint);

  const titled = titleScale(titles, dialect);
  const column = (index: number, clock: string | null): ReadingColumn => {
    const own = scaleNamed(unitRow[index] ?? "", dialect) ?? scaleNamed(names[index] ?? "", dialect);
    const scaleBy = own === null ? "title" : "header";
    return { index, name: columnName(names, index), scale: own ?? titled, scaleBy, clock };
  };
  const of: Layout["of"] =
    chosen.kind === "days"
      ? { kind: "days", low: column(chosen.low, null), high: column(chosen.high, null) }
      : {
          kind: "hours",
          columns: chosen.columns.map((index) =>
            column(index, chosen.kind === "wide" ? names[index]! : null),
          ),
        };
  const used = chosen.kind === "days" ? [chosen.low, chosen.high] : chosen.columns;
  const offsets = [
    ...timeIndices(times).map((index) => headerOffset(names[index] ?? "", zone, dialect)),
    ...titles.map((title) => titleOffset(title, zone, dialect)),
  ];
  return {
    layout: {
      line,
      header: header !== null,
      names,
      titles,
      // A day has no time of day; times beside lows and highs are those at which someone looked.
      times: of.kind === "days" && times.kind === "moment" ? { ...times, clock: null, half: null } : times,
      of,
      station,
      element,
      unit,
      offset: offsets.find((offset) => offset !== null) ?? null,
      ignored: free
        .filter((index) => !used.includes(index) && (names[index] ?? "") !== "")
        .map((index) => columnName(names, index)),
      begins,
    },
  };
}

/** A row's date as written, without its time. */
function dateIn(times: TimeColumns, cells: readonly string[]): string {
  if (times.kind === "parts")
    return [times.year, times.month ?? -1, times.day].map((index) => cells[index]).join("-");
  return (cells[times.moment] ?? "")
    .trim()
    .replace(/(?<=\d)(?:T|,?\s+)\d{1,2}[:.h]\d{2}.*$/u, "")
    .replace(/^(\d{5})[.,]\d+$/u, "$1");
}
