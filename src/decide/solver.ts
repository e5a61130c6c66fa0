/** A row of a program that is being built, by its number. */
export type ProgramRow = number;

/** What a relaxed program comes to. */
export interface Relaxed {
  readonly objective: number;
  readonly values: Float64Array;
  /** What one more unit of each row's bound would bring. */
  readonly prices: Float64Array;
}

/** What a program with whole numbers comes to. */
export interface Whole {
  readonly objective: number;
  readonly values: Float64Array;
  /** No better whole solution exists, up to the gap asked for. */
  readonly proved: boolean;
  /** Nothing can be worth more than this. */
  readonly bound: number;
}

/** A linear program whose objective is to be as large as possible; it grows and is solved again. */
export interface Program {
  addRow(lower: number, upper: number): ProgramRow;
  /** A column from 0 up to a bound; its number is returned. */
  addColumn(worth: number, upper: number, rows: readonly ProgramRow[], amounts: readonly number[]): number;
  /** Holds a column to another bound from now on. */
  limit(column: number, upper: number): void;
  relaxed(): Relaxed;
  /** @param columns - Those that must be whole. @param nodes - Most places of the solver's own tree, the same on every machine. */
  whole(columns: readonly number[], nodes: number): Whole;
  close(): void;
}

/** Solves linear programs and those with whole numbers; passed in, because it needs more than the language has. */
export interface Solver {
  open(): Program;
}
