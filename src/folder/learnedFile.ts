import {
  type KeptLearned,
  type KeptValue,
  type KeptWhat,
  SEASONS_OF_YEAR,
  type SeasonOfYear,
} from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { unknownName } from "./faults.ts";
import { guarded } from "./guarded.ts";
import type { Table } from "./row.ts";
import type { Column } from "./tableHeader.ts";
import { type Entry, tableReader } from "./tableReader.ts";

/** One line of learned.csv: a number told as a share of the catalogue's, with the range four of five cases lie in. */
export interface LearnedRow {
  readonly what: KeptWhat;
  readonly name: string;
  readonly season: SeasonOfYear | null;
  /** [1] */
  readonly value: number;
  /** Standard deviation of its logarithm. [1] */
  readonly spread: number;
  /** Part of it that is the farm's own. [0–1] */
  readonly own: number;
  readonly from: string;
  /** The grower's own cells. */
  readonly keep: string;
  readonly remark: string;
}

/** What the grower wrote into a line, and which it is. */
export type LearnedCells = Pick<LearnedRow, "what" | "name" | "season" | "keep" | "remark">;

export const LEARNED_NAME = "learned.csv";

const WHAT: readonly KeptWhat[] = ["requirement", "day warmth", "night warmth", "shade"];
const FOUR_IN_FIVE = 1.2816;

const COLUMNS: readonly Column[] = [
  { name: "what", required: true },
  { name: "name", required: true },
  { name: "season", required: true },
  { name: "value", required: true },
  { name: "least", required: true },
  { name: "most", required: true },
  { name: "own", required: false },
  { name: "from", required: false, free: true },
  { name: "keep", required: true },
  { name: "remark", required: false, free: true },
];

const HEADING = [
  "# What your notes and loggers say beside the catalogue (100 %). Four of five cases lie from least to most.",
  "# All of it is worked out anew from the notes every time. What you write in the column keep stays: as is freezes a line; a value like 110 % counts in its place.",
];

/** Most a value may be of the catalogue's, and least. judgement */
const MOST = 5;
const LEAST = 0.02;
/** A value this far from the middle of its range was typed over. Written are tenths of a percent. */
const TYPED_OVER = 0.005;

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

const cell = (text: string): string => {
  const safe = guarded(text);
  return /[",\n\r]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/** The whole file, as a table for people. */
export function writeLearned(rows: readonly LearnedRow[]): string {
  const lines = rows.map(({ what, name, season, value, spread, own, from, keep, remark }) =>
    [
      what,
      name,
      season ?? "",
      percent(value),
      percent(value * Math.exp(-FOUR_IN_FIVE * spread)),
      percent(value * Math.exp(FOUR_IN_FIVE * spread)),
      percent(own),
      from,
      keep,
      remark,
    ]
      .map(cell)
      .join(","),
  );
  return `${[...HEADING, COLUMNS.map(({ name }) => name).join(","), ...lines].join("\n")}\n`;
}

/** What can be kept of, by its name. */
export interface Keepable {
  readonly crops: ReadonlyMap<string, unknown>;
  readonly covers: ReadonlyMap<string, { readonly kind: string }>;
}

/** What a line is about; null with its problems added. */
function aboutOf(
  entry: Entry,
  { crops, covers }: Keepable,
  problems: Problem[],
): Pick<KeptLearned, "what" | "name" | "season"> | null {
  const what = WHAT.find((known) => known === entry.text("what").toLowerCase());
  if (what === undefined) {
    problems.push(
      unknownName(entry.spot("what"), entry.text("what"), "what was learned", WHAT, "learned-what-unknown"),
    );
    return null;
  }
  const name = entry.text("name");
  const known =
    what === "requirement"
      ? [...crops.keys()]
      : [...covers].flatMap(([id, { kind }]) => ((kind === "shade") === (what === "shade") ? [id] : []));
  const season = SEASONS_OF_YEAR.find((one) => one === entry.text("season").toLowerCase());
  let whole = true;
  if (!known.includes(name)) {
    const meant = what === "requirement" ? "a crop" : "a cover";
    problems.push(unknownName(entry.spot("name"), name, meant, known, "learned-name-unknown"));
    whole = false;
  }
  if (season === undefined && entry.text("season") !== "") {
    const spot = entry.spot("season");
    problems.push(
      unknownName(spot, entry.text("season"), "a season or nothing", SEASONS_OF_YEAR, "season-unknown"),
    );
    whole = false;
  }
  return whole ? { what, name, season: season ?? null } : null;
}

/** A share of the catalogue's; null with a problem added. */
function shareIn(entry: Entry, column: string): number | null {
  const share = entry.quantity(column, "share");
  if (share === null || (share >= LEAST && share <= MOST)) return share;
  return entry.fault(
    column,
    "learned-out-of-range",
    "a share of the catalogue's from 2 to 500 %",
    "100 % is what the catalogue says.",
  );
}

/** What a line keeps; undefined: nothing, it goes on being learned; null: it cannot be read. */
function keptIn(entry: Entry): KeptValue | undefined | null {
  const keep = entry.text("keep");
  const frozen = /^as[\s-]?is$/iu.test(keep);
  if (keep !== "" && !frozen) {
    if (!/\d/u.test(keep))
      return entry.fault(
        "keep",
        "keep-unreadable",
        'nothing, "as is", or a share like 110 %',
        "Leave it empty to go on learning.",
      );
    const share = shareIn(entry, "keep");
    return share === null ? null : { shift: Math.log(share), spread: 0, typed: true };
  }
  const [value, least, most] = [shareIn(entry, "value"), shareIn(entry, "least"), shareIn(entry, "most")];
  if (value === null || least === null || most === null) return null;
  if (least > most)
    return entry.fault("most", "range-backwards", "no less than the least", "Correct one of the two.");
  if (Math.abs(Math.log(value / Math.sqrt(least * most))) > TYPED_OVER)
    return { shift: Math.log(value), spread: 0, typed: true };
  const spread = Math.log(most / least) / (2 * FOUR_IN_FIVE);
  return frozen ? { shift: Math.log(value), spread, typed: false } : undefined;
}

/**
 * Reads learned.csv for what the grower wrote into it: lines frozen as they are, and values set by hand, in the column keep or
 * over the value itself. All else in it is told, not read: it is worked out from the notes.
 */
export function learnedFile(
  table: Table,
  known: Keepable,
): {
  readonly kept: readonly KeptLearned[];
  /** The grower's cells of every line that can be read, to be written again. */
  readonly cells: readonly LearnedCells[];
  readonly problems: readonly Problem[];
} {
  const { entries, problems } = tableReader(table, COLUMNS);
  const kept: KeptLearned[] = [];
  const cells: LearnedCells[] = [];
  const seen = new Map<string, number>();
  for (const entry of entries) {
    const about = aboutOf(entry, known, problems);
    const value = keptIn(entry);
    if (about === null) continue;
    const key = JSON.stringify(about);
    const before = seen.get(key);
    if (before !== undefined) {
      entry.fault(
        "name",
        "learned-twice",
        `each line once; it stands in line ${before} too`,
        "Take one of the two out.",
      );
      continue;
    }
    seen.set(key, entry.line);
    if (value === null) continue;
    if (value !== undefined) kept.push({ ...about, value, line: entry.line });
    const typed = value?.typed === true && entry.text("keep") === "";
    cells.push({
      ...about,
      keep: typed ? percent(Math.exp(value.shift)) : entry.text("keep"),
      remark: entry.text("remark"),
    });
  }
  return { kept, cells, problems };
}
