import type { Note } from "../farm/index.ts";
import { list, type Problem } from "../problem/index.ts";
import { type Instant, type OtherUnits, parseQuantities, parseQuantity } from "../quantity/index.ts";
import { quantityProblem, unknownName } from "./faults.ts";
import { type FarmClock, parseMoment } from "./moment.ts";
import {
  type Broken,
  brokenAt,
  KINDS,
  leavesBroken,
  STATES,
  shareBroken,
  weightBroken,
} from "./noteRules.ts";
import type { Table } from "./row.ts";
import type { Column } from "./tableHeader.ts";
import { type Entry, tableReader } from "./tableReader.ts";

const COLUMNS: readonly Column[] = [
  { name: "when", required: true, dates: true },
  { name: "kind", required: true },
  { name: "about", required: true },
  { name: "value", required: true },
  { name: "remark", required: false, free: true },
];

type Base = Pick<Note, "at" | "line" | "remark">;

/** What a line of notes.csv is about, also where the rest of it cannot be read. */
export interface Mention {
  readonly line: number;
  readonly kind: Note["kind"];
  /** A tunnel or a succession; "" for nothing. */
  readonly about: string;
  /** As it is named in a cover note that can be read. */
  readonly cover: string | null;
}

/** The note, unless it breaks a rule, which is a problem. */
function kept(note: Note, broken: Broken | null, entry: Entry, problems: Problem[]): Note | null {
  if (broken === null) return note;
  problems.push(brokenAt(entry.spot("value"), entry.text("value"), broken));
  return null;
}

function leafNote(
  kind: "leaf" | "strip",
  entry: Entry,
  base: Base,
  problems: Problem[],
  other?: OtherUnits,
): Note | null {
  const text = entry.text("value");
  const read = parseQuantities(text, "leaf", null, other);
  if (read.fault !== null) {
    problems.push(quantityProblem(entry.spot("value"), text, "leaf", read.fault, null));
    return null;
  }
  const note: Note = { ...base, kind, succession: entry.text("about"), lengths: read.value };
  return kept(note, leavesBroken(read.value), entry, problems);
}

function coverNote(entry: Entry, base: Base, covers: readonly string[]): Note | null {
  const words = entry.text("value").split(/\s+/u);
  const state = STATES.find((known) => known === words.at(-1)?.toLowerCase());
  if (words.length !== 2 || state === undefined) {
    const expected = "a cover and what was done, like row-cover-19 on";
    const ending = list(STATES, "or");
    const named = covers.length === 0 || words.some((word) => covers.includes(word));
    const hint = named
      ? `End with ${ending}.`
      : `Begin with one of ${covers.join(", ")}; end with ${ending}.`;
    return entry.fault("value", "cover-note-unreadable", expected, hint);
  }
  return { ...base, kind: "cover", tunnel: entry.text("about"), cover: words[0]!, state };
}

function cutNote(entry: Entry, base: Base, problems: Problem[], other?: OtherUnits): Note | null {
  const text = entry.text("value");
  const last = /(?:^|\s)last$/iu.test(text);
  const amount = text.replace(/(?:^|\s)last$/iu, "").trim();
  const read = amount === "" ? { value: null, fault: null } : parseQuantity(amount, "mass", null, other);
  if (read.fault !== null) {
    problems.push(quantityProblem(entry.spot("value"), text, "mass", read.fault, null));
    return null;
  }
  const note: Note = { ...base, kind: "cut", succession: entry.text("about"), weight: read.value, last };
  return kept(note, weightBroken(read.value), entry, problems);
}

function lossNote(entry: Entry, base: Base, problems: Problem[]): Note | null {
  const text = entry.text("value");
  const read = parseQuantity(text, "share", null);
  if (read.fault !== null) {
    problems.push(quantityProblem(entry.spot("value"), text, "share", read.fault, null));
    return null;
  }
  const note: Note = { ...base, kind: "loss", succession: entry.text("about"), share: read.value };
  return kept(note, shareBroken(read.value), entry, problems);
}

/**
 * Reads notes.csv: what was seen or done, on the farm's clock, in the order of time.
 *
 * @param covers - Names of the covers at hand, to be told where a note names none.
 */
export function notesFile(
  table: Table,
  clock: FarmClock,
  covers: readonly string[],
  other?: OtherUnits,
): {
  readonly notes: readonly Note[];
  readonly mentions: readonly Mention[];
  readonly problems: readonly Problem[];
} {
  const { entries, problems } = tableReader(table, COLUMNS, other);
  const notes: Note[] = [];
  const mentions: Mention[] = [];
  for (const entry of entries) {
    const kind = KINDS.find((known) => known === entry.text("kind").toLowerCase());
    if (kind === undefined) {
      problems.push(
        unknownName(entry.spot("kind"), entry.text("kind"), "a kind of note", KINDS, "note-kind-unknown"),
      );
      continue;
    }
    // What is on a tunnel matters to the walk; everything else is good to the day.
    const bare = kind === "cover" ? null : clock.walks.morning;
    const at =
      parseMoment(entry.text("when"), clock, bare) ??
      entry.fault(
        "when",
        "moment-unreadable",
        kind === "cover"
          ? "a date and time like 2026-04-18 07:10"
          : "a date like 2026-04-18, or with the time, 2026-04-18 07:10",
        entry.noSuchDay("when") ??
          "Use year-month-day and the farm's clock; morning and evening stand for the walks.",
      );
    const about = entry.named("about", kind === "cover" ? "a tunnel" : "a succession");
    const { line } = entry;
    // A moment that cannot be read hides nothing else that is wrong in its line.
    const base = { at: at ?? (0 as Instant), line, remark: entry.text("remark") };
    const note: Note | null =
      kind === "leaf" || kind === "strip"
        ? leafNote(kind, entry, base, problems, other)
        : kind === "cover"
          ? coverNote(entry, base, covers)
          : kind === "cut"
            ? cutNote(entry, base, problems, other)
            : kind === "loss"
              ? lossNote(entry, base, problems)
              : { ...base, kind, succession: entry.text("about") };
    if (about !== null)
      mentions.push({ line, kind, about, cover: note?.kind === "cover" ? note.cover : null });
    if (note !== null && at !== null && about !== null) notes.push(note);
  }
  return { notes: notes.sort((a, b) => a.at - b.at || a.line - b.line), mentions, problems };
}

/** Where the columns of notes.csv stand in its lines, the first being 0; none without a header. */
export const noteColumns = (table: Table): ReadonlyMap<string, number> => tableReader(table, COLUMNS).indexOf;
