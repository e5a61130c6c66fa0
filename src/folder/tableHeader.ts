import { didYouMean, type Problem } from "../problem/index.ts";
import { type OtherUnits, parseQuantity, type QuantityKind } from "../quantity/index.ts";
import { quantityProblem, shown, type Units, usualUnit } from "./faults.ts";
import type { Row, Table } from "./row.ts";

/** A column a table may have. `kind`: it holds quantities, and its header may state their unit. */
export interface Column {
  readonly name: string;
  readonly required: boolean;
  readonly kind?: QuantityKind;
  /** It holds dates, with or without a time: however they are written, their cells are read year first. */
  readonly dates?: true;
  /** It holds words of the grower's own, in which a separator does no harm. */
  readonly free?: true;
}

/** Where a column stands in a line, and the unit its header states. */
export interface Place {
  readonly index: number;
  readonly unit: string | null;
  /** The header states a unit that cannot be used; told once, not again for every line. */
  readonly broken: boolean;
}

/** Splits `from (ft)` into the column's name and the unit it states. */
function heading(cell: string): { readonly name: string; readonly unit: string | null } {
  const match = /^([^([]*?)\s*(?:[([](.+)[)\]])?\s*$/u.exec(cell.replace(/^\uFEFF/u, "").trim());
  const name = match?.[1] ?? cell;
  return {
    name: name
      .toLowerCase()
      .replace(/[\s_]+/gu, " ")
      .trim(),
    unit: match?.[2]?.trim() ?? null,
  };
}

/** Finds the columns in a header, by their names. */
export function findColumns(
  { file }: Table,
  header: Row,
  columns: readonly Column[],
  problems: Problem[],
  other: OtherUnits | undefined,
): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  const names = columns.map(({ name }) => name);
  const problem = (
    column: string,
    code: string,
    expected: string,
    hint: string,
    weight: Problem["weight"],
  ): void => {
    problems.push({ code, weight, file, line: header.line, column, expected, received: shown(column), hint });
  };
  header.cells.forEach((cell, index) => {
    const { name, unit } = heading(cell);
    if (name === "") return;
    const column = columns.find((known) => known.name === name);
    if (column === undefined) {
      const near = didYouMean(name, names);
      const hint = near === null ? `It is not read. Known: ${names.join(", ")}.` : `Did you mean "${near}"?`;
      problem(cell.trim(), "column-unknown", "a known column", hint, "needsYou");
    } else if (places.has(name)) {
      problem(cell.trim(), "column-twice", "each column once", "Take one of the two out.", "stops");
    }
    if (column === undefined || places.has(name)) return;
    const fault =
      unit === null || column.kind === undefined
        ? null
        : parseQuantity(`1 ${unit}`, column.kind, null, other).fault;
    if (fault !== null) {
      const spot = { file, line: header.line, column: cell.trim() };
      problems.push(quantityProblem(spot, unit!, column.kind!, fault, null));
    }
    places.set(name, { index, unit: fault === null ? unit : null, broken: fault !== null });
  });
  for (const { name, required } of columns)
    if (required && !places.has(name))
      problems.push({
        code: "column-missing",
        weight: "stops",
        file,
        line: header.line,
        column: null,
        expected: `a column "${name}"`,
        received: header.cells.map((cell) => cell.trim()).join(", "),
        hint: "Add it to the first line; the order does not matter.",
      });
  return places;
}

/** The first line that names at least two columns: a spreadsheet may put a title above it. -1: none does. */
export function headerAt(rows: readonly Row[], columns: readonly Column[]): number {
  const names = new Set(columns.map(({ name }) => name));
  return rows.findIndex(({ cells }) => cells.filter((cell) => names.has(heading(cell).name)).length >= 2);
}

/** A table whose first line is no header. */
export const noHeader = (
  { file }: Table,
  { line, cells }: Row,
  columns: readonly Column[],
  units: Units,
): Problem => {
  const needed = columns.filter(({ required }) => required);
  const written = needed.map(({ name, kind }) =>
    kind === undefined ? name : `${name} (${usualUnit(kind, units)})`,
  );
  return {
    code: "header-missing",
    weight: "stops",
    file,
    line,
    column: null,
    expected: "a first line that names the columns",
    received: shown(cells.join(", ")),
    hint: `Put this line on top: ${written.join(",")}`,
  };
};
