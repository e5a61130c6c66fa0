/** One line of a table, cut into cells. Whoever opened the file counted the lines, the first being 1. */
export interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A whole table, small enough to hold. */
export interface Table {
  /** Name people know it by, as in problems. */
  readonly file: string;
  readonly rows: readonly Row[];
}
