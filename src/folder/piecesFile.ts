import type { Piece } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { OtherUnits } from "../quantity/index.ts";
import type { Units } from "./faults.ts";
import type { Table } from "./row.ts";
import type { Draft, Placed } from "./successionsFile.ts";
import type { Column } from "./tableHeader.ts";
import { tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "id", required: true },
  { name: "cover", required: true },
  { name: "length", required: true, kind: "length" },
  { name: "count", required: false },
  { name: "spans", required: false },
  { name: "lies on", required: false },
];

/** Reads pieces.csv: the cloth the farm owns. */
export function piecesFile(
  table: Table,
  other?: OtherUnits,
  units?: Units,
): {
  readonly pieces: readonly Placed<Piece>[];
  /** Every line, also one that cannot be read whole. */
  readonly drafts: readonly Placed<Draft<Piece>>[];
  readonly problems: readonly Problem[];
} {
  const { entries, problems } = tableReader(table, COLUMNS, other, units);
  const pieces: Placed<Piece>[] = [];
  const drafts: Placed<Draft<Piece>>[] = [];
  for (const entry of entries) {
    const id = entry.named("id", "a name for the piece");
    const cover = entry.named("cover", "a cover");
    const length = entry.quantity("length", "length");
    const counted = (column: string, what: string): number | null => {
      const written = entry.text(column);
      return /^(?:[1-9]\d*)?$/u.test(written)
        ? Number(written === "" ? 1 : written)
        : entry.fault(
            column,
            "count-unreadable",
            `a number of ${what} like 1 or 3`,
            "Leave it empty for one.",
          );
    };
    const count = counted("count", "pieces");
    const spans = counted("spans", "tunnels side by side");
    const liesOn = entry
      .text("lies on")
      .split(/[\s;,]+/u)
      .filter((tunnel) => tunnel !== "");
    drafts.push({ value: { id, cover, length, count, spans, liesOn }, line: entry.line });
    if (length !== null && length <= 0) {
      entry.fault(
        "length",
        "length-not-positive",
        "a length above zero",
        "Measure the piece along the tunnel.",
      );
      continue;
    }
    if (id === null || cover === null || length === null || count === null || spans === null) continue;
    pieces.push({ value: { id, cover, length, count, spans, liesOn }, line: entry.line });
  }
  return { pieces, drafts, problems };
}
