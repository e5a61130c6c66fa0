import type { CellKinds } from "./cellKind.ts";
import { airRank, isCalled, isLow, isTimeHeader, sensorKey, speaksOfTemperature } from "./columnRole.ts";
import { type Dialect, PLAIN, plainWords } from "./dialect.ts";
import type { Row } from "./row.ts";

/** What helps to tell a header from titles and readings. */
export interface HeaderOptions {
  /** The column the grower asks for. */
  readonly column: string | null;
  /** The farm's sensors. */
  readonly sensors: readonly string[];
  readonly dialect: Dialect;
  readonly kinds: CellKinds;
}

/** Where the header and the readings below it stand among a log's first rows. */
export interface HeaderRows {
  /** Names of the columns; none without a header. */
  readonly names: readonly string[];
  readonly header: Row | null;
  readonly titles: readonly string[];
  /** Rows of units and the like between header and readings. */
  readonly between: readonly Row[];
  /** Place of the first reading. */
  readonly begins: number;
}

const holdsData = ({ cells }: Row, kinds: CellKinds): boolean =>
  cells.some((cell) => kinds.isNumber(cell) || kinds.isDate(cell));

/** Does a row hold names of columns: one for the time and one that speaks of a temperature, and neither dates nor numbers? */
export function isHeader(row: Row, { dialect, kinds, sensors, column }: HeaderOptions): boolean {
  const { cells } = row;
  if (!cells.some((cell) => isTimeHeader(cell, dialect)) || holdsData(row, kinds)) return false;
  const keys = sensors.map((sensor) => sensorKey(sensor, dialect));
  const meant = (cell: string): boolean =>
    speaksOfTemperature(cell, dialect) ||
    keys.includes(sensorKey(cell, dialect)) ||
    (column !== null && plainWords(cell) === plainWords(column));
  return cells.some(meant) || cells.filter(kinds.isTime).length > 1;
}

/** Does a line name columns, one of them a temperature? Lines of a typed forecast do not. */
export const namesTemperature = (cells: readonly string[]): boolean =>
  cells.length > 1 &&
  (cells.some((cell) => airRank(cell, PLAIN) > 0) ||
    (cells.some((cell) => isCalled(cell, "date", PLAIN)) && cells.some((cell) => isLow(cell, PLAIN)))) &&
  !cells.some((cell) => /^\s*[-+]?\d/u.test(cell));

/** Where no words tell a header, the first row with a date and a number is a reading, and the row above may be one. */
function byContents(
  rows: readonly Row[],
  kinds: CellKinds,
): { readonly header: number; readonly below: number } | null {
  const below = rows.findIndex(
    ({ cells }) =>
      cells.some(kinds.isDate) && cells.filter((cell) => !kinds.isDate(cell)).some(kinds.isNumber),
  );
  if (below < 0) return null;
  const above = rows[below - 1];
  const isNames =
    above !== undefined &&
    above.cells.filter((cell) => cell.trim() !== "").length > 1 &&
    !holdsData(above, kinds);
  return { header: isNames ? below - 1 : -1, below };
}

/** Names over two rows: what stands above a column that shares its name with others belongs to its name. */
function namesIn(header: Row, above: Row | undefined, kinds: CellKinds): readonly string[] {
  const own = header.cells.map((cell) => cell.replace(/^\uFEFF/u, "").trim());
  const shared = own.some((name, index) => name !== "" && own.indexOf(name) !== index);
  if (!shared || above === undefined || above.cells.length > own.length || holdsData(above, kinds))
    return own;
  return own.map((name, index) => `${above.cells[index] ?? ""} ${name}`.trim());
}

/** Finds header and readings in a log's first rows; null where neither words nor contents tell them. */
export function headerRows(rows: readonly Row[], options: HeaderOptions): HeaderRows | null {
  const { dialect, kinds } = options;
  const worded = rows.slice(0, dialect.titleLines).findIndex((row) => isHeader(row, options));
  const found = worded >= 0 ? { header: worded, below: worded + 1 } : byContents(rows, kinds);
  if (found === null) return null;
  const below = rows.slice(found.below);
  const skipped = below.findIndex((row) => holdsData(row, kinds));
  const between = skipped < 0 ? below : below.slice(0, skipped);
  const header = rows[found.header] ?? null;
  return {
    names: header === null ? [] : namesIn(header, rows[found.header - 1], kinds),
    header,
    titles: rows.slice(0, Math.max(0, found.header)).map(({ cells }) => cells.join(" ").trim()),
    between,
    begins: found.below + between.length,
  };
}

/** A line of dashes between header and rows. */
export const isRuled = ({ cells }: Row): boolean =>
  cells.every((cell) => /^[\s|:+=_-]*$/u.test(cell)) && cells.some((cell) => /[-=_]{2}/u.test(cell));
