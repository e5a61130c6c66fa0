import type { Problem } from "./problem.ts";

/**
 * One problem as one line of text: where, what was expected, what was received, what to do next.
 *
 * A setting is named by its path, a column of a table by its header, a place in a text by its number.
 */
export function formatProblem({ file, line, column, expected, received, hint }: Problem): string {
  const where = line === null ? file : `${file}:${line}`;
  const table = /\.(?:csv|tsv|txt)$/iu.test(file) ? "column " : "";
  const which =
    column === null ? "" : typeof column === "number" ? ` column ${column}` : ` ${table}"${column}"`;
  return `${where}${which}: expected ${expected}, received ${received}. ${hint}`;
}
