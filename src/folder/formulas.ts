import type { Cutter } from "./alignedColumns.ts";

/** A cell written as a formula, ="12.5", to keep a spreadsheet from changing it; or one whose quotes stand behind a blank. */
export const isFormula = (cell: string): boolean => /^\s*=?"/u.test(cell);

export const withoutFormulas: Cutter = (cells) =>
  cells.map((cell) => cell.replace(/^\s*=?"(.*)"\s*$/u, "$1"));
