import type { Succession } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { OtherUnits } from "../quantity/index.ts";
import type { Units } from "./faults.ts";
import type { Table } from "./row.ts";
import type { Column } from "./tableHeader.ts";
import { tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "id", required: true },
  { name: "crop", required: true },
  { name: "tunnel", required: true },
  { name: "from", required: true, kind: "length" },
  { name: "to", required: true, kind: "length" },
  { name: "sown", required: true, dates: true },
  { name: "market", required: false },
  { name: "cuts", required: false },
  { name: "net", required: false },
];

const YES = new Set(["yes", "y", "x", "true", "1"]);
const NO = new Set(["no", "n", "", "false", "0", "-"]);

/** A value read from a table with the line it came from, so that later checks can point at it. */
export interface Placed<Value> {
  readonly value: Value;
  readonly line: number;
}

/** A value with null for every part that could not be read: what is left is still looked at. */
export type Draft<Value> = { readonly [Key in keyof Value]: Value[Key] | null };

/** Reads successions.csv. Whether crops, tunnels and markets exist is asked when the folder is joined. */
export function successionsFile(
  table: Table,
  other?: OtherUnits,
  units?: Units,
): {
  readonly successions: readonly Placed<Succession>[];
  /** Every line, also one that cannot be read whole. */
  readonly drafts: readonly Placed<Draft<Succession>>[];
  readonly problems: readonly Problem[];
} {
  const { entries, problems } = tableReader(table, COLUMNS, other, units);
  const successions: Placed<Succession>[] = [];
  const drafts: Placed<Draft<Succession>>[] = [];
  for (const entry of entries) {
    const { line } = entry;
    const id = entry.named("id", "a name for the succession");
    const crop = entry.named("crop", "a crop");
    const tunnel = entry.named("tunnel", "a tunnel");
    const from = entry.quantity("from", "length");
    const to = entry.quantity("to", "length");
    const sown = entry.date("sown", "2026-03-01");
    const cuts = /^\d*$/u.test(entry.text("cuts"))
      ? Number(entry.text("cuts"))
      : entry.fault("cuts", "count-unreadable", "a number of cuts like 0 or 1", "Leave it empty for none.");
    const answer = entry.text("net").toLowerCase();
    const net =
      YES.has(answer) || NO.has(answer)
        ? YES.has(answer)
        : entry.fault("net", "yes-no-unreadable", "yes or no", "Leave it empty for no.");
    const market = entry.text("market") === "" ? null : entry.text("market");
    drafts.push({ value: { id, crop, tunnel, from, to, sown, market, cuts, net }, line });
    if (from !== null && to !== null && (from < 0 || to <= from)) {
      entry.fault(
        "to",
        "bed-backwards",
        `more than the start, ${entry.text("from")}`,
        "A bed runs from its start to its end.",
      );
      continue;
    }
    if (id === null || crop === null || tunnel === null || from === null || to === null) continue;
    if (sown === null || cuts === null || net === null) continue;
    successions.push({ value: { id, crop, tunnel, from, to, sown, market, cuts, net }, line });
  }
  return { successions, drafts, problems };
}
