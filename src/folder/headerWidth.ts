import type { Problem } from "../problem/index.ts";
import type { Layout } from "./layout.ts";

/** Cells of a row up to the last that holds something. */
export const filledWidth = (cells: readonly string[]): number =>
  cells.findLastIndex((cell) => cell.trim() !== "") + 1;

/**
 * A header with fewer names than the rows have cells, or more: nobody knows which name stands over which column.
 * A separator at the end of every row is no cell.
 *
 * @param rows - Below the header, up to the next one.
 */
export function headerWidth(
  { line, names }: Layout,
  rows: readonly (readonly string[])[],
  file: string,
): Problem | null {
  const named = names.length;
  const wider = rows.filter((cells) => cells.length > named).length * 2 > rows.length;
  const narrower = rows.length > 1 && rows.every((cells) => cells.length < named);
  if (!narrower && !(wider && rows.some((cells) => filledWidth(cells) > named))) return null;
  const usual = rows.map(({ length }) => length).sort((a, b) => a - b)[rows.length >> 1]!;
  return {
    code: "log-header-width",
    weight: "stops",
    file,
    line,
    column: null,
    expected: `a name for each of the ${usual} cells below`,
    received: `${named} names`,
    hint: "Make the header's cells as many as the rows', so that each name stands over its column.",
  };
}
