/**
 * Something that is not as it must be, as a value: found at the border, collected, shown all at once.
 * `stops`: nothing is written and the command cannot run. `needsYou`: the sheet is printed and says it.
 */
export interface Problem {
  /** Short stable name, e.g. "crop-unknown". */
  readonly code: string;
  readonly weight: "stops" | "needsYou";
  readonly file: string;
  readonly line: number | null;
  /** Name or number of the column, or the setting's path in a settings file. */
  readonly column: string | number | null;
  readonly expected: string;
  readonly received: string;
  /** The next step, a whole sentence. */
  readonly hint: string;
}

/** What a reader gives back: the value only when nothing stops. */
export type Read<Value> =
  | { readonly value: Value; readonly problems: readonly Problem[] }
  | { readonly value: null; readonly problems: readonly Problem[] };
