import type { Problem } from "../problem/index.ts";
import {
  type LocalDate,
  type OtherUnits,
  parseQuantity,
  type QuantityKind,
  type QuantityOf,
} from "../quantity/index.ts";
import { type DateColumn, dateColumn } from "./dateColumn.ts";
import { quantityProblem, type Spot, shown, type Units } from "./faults.ts";
import { parseDate } from "./moment.ts";
import type { Row, Table } from "./row.ts";
import { type Column, findColumns, headerAt, noHeader, type Place } from "./tableHeader.ts";

/** One line of a table with its cells found by name. */
export interface Entry {
  readonly line: number;
  /** The cell without the blanks around it and the apostrophe a spreadsheet puts before a text; "" where there is none. */
  text(column: string): string;
  spot(column: string): Spot;
  /** Adds a problem about one cell. */
  fault(column: string, code: string, expected: string, hint: string): null;
  /** The cell as a quantity; null with a problem added. */
  quantity<Kind extends QuantityKind>(column: string, kind: Kind): QuantityOf[Kind] | null;
  /** The cell as a date; null with a problem added. `example`: a date in the form that is expected. */
  date(column: string, example: string): LocalDate | null;
  /** Why the date in a cell is none, a whole sentence; null when it is not for its month being too short. */
  noSuchDay(column: string): string | null;
  /** The cell, which may not be empty; null with a problem added. */
  named(column: string, what: string): string | null;
}

export interface TableReader {
  readonly entries: readonly Entry[];
  /** Problems found so far; readers add theirs. */
  readonly problems: Problem[];
  /** Where each known column stands in a line, the first being 0; none without a header. */
  readonly indexOf: ReadonlyMap<string, number>;
}

const isRemark = ({ cells }: Row): boolean => cells[0]?.trimStart().startsWith("#") ?? true;
const isEmpty = ({ cells }: Row): boolean => cells.every((cell) => cell.trim() === "");

const cellAt = ({ cells }: Row, place: Place | undefined): string =>
  place === undefined ? "" : (cells[place.index] ?? "").trim().replace(/^'\s*/u, "");

/** Cells behind the last column hold what a separator within a cell has cut off. */
function surplus({ file }: Table, header: Row, row: Row, last: Column | undefined): readonly Problem[] {
  if (last?.free === true || row.cells.slice(header.cells.length).every((cell) => cell.trim() === ""))
    return [];
  return [
    {
      code: "cells-too-many",
      weight: "stops",
      file,
      line: row.line,
      column: null,
      expected: `at most ${header.cells.length} cells, as the first line has`,
      received: `${row.cells.length}`,
      hint: "Is there a comma within a cell? Write a point, or put the cell in quotes.",
    },
  ];
}

/** Settles every column of dates, and tells of those that nothing settles. */
function dateColumns(
  { file }: Table,
  rows: readonly Row[],
  columns: readonly Column[],
  places: ReadonlyMap<string, Place>,
  problems: Problem[],
): ReadonlyMap<string, DateColumn> {
  const found = new Map<string, DateColumn>();
  for (const { name } of columns.filter(({ dates }) => dates === true)) {
    const texts = rows.map((row) => cellAt(row, places.get(name)));
    const dates = dateColumn(texts, null);
    found.set(name, dates);
    if (dates.ambiguous === null) continue;
    const { text, meanings } = dates.ambiguous;
    problems.push({
      code: "dates-ambiguous",
      weight: "stops",
      file,
      line: rows[texts.indexOf(text)]!.line,
      column: name,
      expected: "dates whose order can be told",
      received: shown(text),
      hint: `Write ${meanings.join(" or ")}, whichever is meant, and so down the column.`,
    });
  }
  return found;
}

/**
 * Finds a table's header and columns by name. Lines that begin with # and empty lines are passed over.
 *
 * @param units - The farm's, for examples in problems.
 */
export function tableReader(
  table: Table,
  columns: readonly Column[],
  other?: OtherUnits,
  units: Units = "US",
): TableReader {
  const problems: Problem[] = [];
  const rows = table.rows.filter((row) => !isRemark(row) && !isEmpty(row));
  const start = headerAt(rows, columns);
  const header = rows[Math.max(0, start)];
  if (header === undefined) return { entries: [], problems, indexOf: new Map() };
  if (start < 0)
    return { entries: [], problems: [noHeader(table, header, columns, units)], indexOf: new Map() };
  const places = findColumns(table, header, columns, problems, other);
  const indexOf = new Map([...places].map(([name, { index }]) => [name, index]));
  if (columns.some(({ name, required }) => required && !places.has(name)))
    return { entries: [], problems, indexOf };
  const { file } = table;
  const body = rows.slice(start + 1);
  const last = columns.find(({ name }) => places.get(name)?.index === header.cells.length - 1);
  const whole = body.filter((row) => {
    const faults = surplus(table, header, row, last);
    problems.push(...faults);
    return faults.length === 0;
  });
  const dated = dateColumns(table, whole, columns, places, problems);
  const entries = whole.map((row): Entry => {
    const { line } = row;
    const text = (column: string): string => {
      const cell = cellAt(row, places.get(column));
      return dated.get(column)?.yearFirst(cell) ?? cell;
    };
    const spot = (column: string): Spot => ({ file, line, column });
    const fault = (column: string, code: string, expected: string, hint: string): null => {
      // Dates that nothing settles are told once, not again for every line.
      if (dated.get(column)?.doubtful(cellAt(row, places.get(column)))) return null;
      problems.push({
        ...spot(column),
        code,
        weight: "stops",
        expected,
        received: shown(text(column)),
        hint,
      });
      return null;
    };
    const noSuchDay = (column: string): string | null => dated.get(column)?.noSuchDay(text(column)) ?? null;
    return {
      line,
      text,
      spot,
      fault,
      noSuchDay,
      date: (column, example) =>
        parseDate(text(column)) ??
        fault(
          column,
          "date-unreadable",
          `a date like ${example}`,
          noSuchDay(column) ?? "Use year-month-day.",
        ),
      named: (column, what) =>
        text(column) !== ""
          ? text(column)
          : fault(column, "cell-empty", what, "Fill it in or take the line out."),
      quantity: (column, kind) => {
        const place = places.get(column);
        const read = parseQuantity(text(column), kind, place?.unit ?? null, other);
        if (read.fault === null) return read.value;
        if (read.fault === "noUnit" && place?.broken === true) return null;
        problems.push(quantityProblem(spot(column), text(column), kind, read.fault, column, units));
        return null;
      },
    };
  });
  return { entries, problems, indexOf };
}
