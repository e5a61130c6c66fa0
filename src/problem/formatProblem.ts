import type { Problem } from "./problem.ts";

/** One problem as one line of text: where, what was expected, what was received, what to do next. */
export function formatProblem({ file, line, column, expected, received, hint }: Problem): string {
  const where = line === null ? file : `${file}:${line}`;
  const which = column === null ? "" : typeof column === "number" ? ` column ${column}` : ` "${column}"`;
  return `${where}${which}: expected ${expected}, received ${received}. ${hint}`;
}
