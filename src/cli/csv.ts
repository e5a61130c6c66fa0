import { stringify } from "csv-stringify/sync";

/**
 * Rows as a CSV for spreadsheets: cells that one would run as a formula begin with an apostrophe, and it opens with a
 * byte-order mark, by which spreadsheets know Unicode.
 */
export const csv = (rows: readonly (readonly string[])[]): string =>
  stringify(rows as string[][], { bom: true, escape_formulas: true, record_delimiter: "windows" });
