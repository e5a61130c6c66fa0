import { didYouMean, type Problem } from "../problem/index.ts";
import { type OtherUnits, parseQuantity, type QuantityKind, type QuantityOf } from "../quantity/index.ts";
import { quantityProblem, type Spot, shown, type Units } from "./faults.ts";
import type { Row, Table } from "./row.ts";

/** A column a table may have. `kind`: it holds quantities, and its header may state their unit. */
export interface Column {
  readonly name: string;
  readonly required: boolean;
  readonly kind?: QuantityKind;
}

/** One line of a table with its cells found by name. */
export interface Entry {
  readonly line: number;
  /** The cell without the blanks around it; "" where there is none. */
  text(column: string): string;
  spot(column: string): Spot;
  /** Adds a problem about one cell. */
  fault(column: string, code: string, expected: string, hint: string): null;
  /** The cell as a quantity; null with a problem added. */
  quantity<Kind extends QuantityKind>(column: string, kind: Kind): QuantityOf[Kind] | null;
  /** The cell, which may not be empty; null with a problem added. */
  named(column: string, what: string): string | null;
}

export interface TableReader {
  readonly entries: readonly Entry[];
  /** Problems found so far; readers add theirs. */
  readonly problems: Problem[];
}

interface Place {
  readonly index: number;
  readonly unit: string | null;
  /** The header states a unit that cannot be used; told once, not again for every line. */
  readonly broken: boolean;
}

const isRemark = ({ cells }: Row): boolean => cells[0]?.trimStart().startsWith("#") ?? true;
const isEmpty = ({ cells }: Row): boolean => cells.every((cell) => cell.trim() === "");

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

function findColumns(
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
  const header = rows[0];
  if (header === undefined) return { entries: [], problems };
  const places = findColumns(table, header, columns, problems, other);
  if (columns.some(({ name, required }) => required && !places.has(name))) return { entries: [], problems };
  const { file } = table;
  const entries = rows.slice(1).map(({ line, cells }): Entry => {
    const text = (column: string): string => {
      const place = places.get(column);
      return place === undefined ? "" : (cells[place.index]?.trim() ?? "");
    };
    const spot = (column: string): Spot => ({ file, line, column });
    const fault = (column: string, code: string, expected: string, hint: string): null => {
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
    return {
      line,
      text,
      spot,
      fault,
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
  return { entries, problems };
}
