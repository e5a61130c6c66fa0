import type { Farm } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, type LocalDate, localDate } from "../quantity/index.ts";
import { isChatter } from "./chatter.ts";
import { crewAnswer } from "./crewAnswer.ts";
import { noteLine } from "./noteLine.ts";
import { namesOf } from "./noteNames.ts";
import { noteExample, noteProblem } from "./noteProblem.ts";
import { type Misreading, misread, type NoteSetting, type Noting } from "./noteRead.ts";
import { type NoteRow, noteRow } from "./noteRow.ts";
import { isOpenBox, linesOf, plainLine } from "./noteText.ts";
import type { Said } from "./noteWhen.ts";

/** A note of a walk, ready to be written. */
export interface WalkNote extends Noting {
  readonly row: NoteRow;
  /** The same stands in notes.csv, or in the walk before it. */
  readonly already: boolean;
}

/** A line of an answer in which there is nothing to note. */
export interface PassedOver {
  readonly line: number;
  readonly text: string;
}

/** Where the lines come from. */
export interface WalkSource {
  /** Name people know it by, as in problems. */
  readonly file: string;
  /** A single line that was typed has no number. */
  readonly numbered: boolean;
}

/** How many lines that are not understood are told one by one. */
const TOLD = 20;

const OPEN_BOX: Misreading = misread("Tick it or take the line out.", {
  code: "note-not-done",
  expected: "a box that is ticked",
  received: "an open one",
});

/** Letters of the longest line that is read: a note has a few words, and so has its remark. judgement */
const LONGEST = 300;

const tooLong = (line: string): Misreading =>
  misread("Write each note on a line of its own, and shorten its remark.", {
    expected: `lines of at most ${LONGEST} letters`,
    received: `${line.length} letters`,
  });

/** By which the same is known again: at the same time, and on the same day for what was said without an hour. */
function keysOf(
  { kind, about, value }: NoteRow,
  at: Instant,
  { place: { zone } }: Farm,
): Readonly<Record<"moment" | "day", string>> {
  const keyAt = (time: Instant | LocalDate): string => JSON.stringify([kind, about, value, time]);
  return { moment: keyAt(at), day: keyAt(localDate(zone, at)) };
}

/**
 * Reads the lines of a walk, one note each, with headings and days between them.
 *
 * @param said - Day and hour for lines that say none; names of days count back from that day, else from now.
 * @returns Every note, a problem for every line that is not understood, and what was passed over: of a crew's answer, lines that are
 * nothing but courtesy.
 */
export function noteWalk(
  text: string,
  { file, numbered }: WalkSource,
  farm: Farm,
  now: Instant,
  said: Said,
): {
  readonly notes: readonly WalkNote[];
  readonly problems: readonly Problem[];
  readonly passedOver: readonly PassedOver[];
} {
  const notes: WalkNote[] = [];
  const unread: { readonly chatter: PassedOver | null; readonly problem: () => Problem }[] = [];
  const known = new Set(
    farm.notes.flatMap((note) => Object.values(keysOf(noteRow(note, "", farm.units), note.at, farm))),
  );
  const whole = { file, line: null, column: null, code: "note-missing", weight: "stops" as const };
  const expected = `a note like "${noteExample(farm)}"`;
  const answered = crewAnswer(farm);
  let cards = 0;
  const today = said.date ?? localDate(farm.place.zone, now);
  let setting: NoteSetting = { farm, names: namesOf(farm), now, today, said };
  linesOf(text).forEach((line, index) => {
    const own = line.trim();
    const plain = own.length > LONGEST ? own : plainLine(own);
    if (plain === "") return;
    const barred = own.length > LONGEST ? tooLong(own) : isOpenBox(own) ? OPEN_BOX : null;
    const card = barred === null ? answered(plain, setting) : null;
    const read = barred ?? card ?? noteLine(plain, setting);
    if (card !== null) cards += 1;
    if (read.kind === "heading") setting = { ...setting, said: read.said };
    if (read.kind === "misread") {
      const spot = { file, line: numbered ? index + 1 : null };
      const here = setting;
      const vague = barred === null && read.misread.code === "note-unreadable";
      unread.push({
        chatter: vague && isChatter(plain) ? { line: index + 1, text: plain } : null,
        problem: () => noteProblem(spot, line, read.misread, here),
      });
    }
    if (read.kind !== "notes") return;
    for (const { note, moment } of read.notings) {
      const row = noteRow(note, moment.when, farm.units);
      const keys = keysOf(row, note.at, farm);
      const already = known.has(moment.said === "day" ? keys.day : keys.moment);
      notes.push({ note: { ...note, line: index + 1 }, moment, row, already });
      known.add(keys.moment).add(keys.day);
      if (!already) setting = { ...setting, farm: { ...setting.farm, notes: [...setting.farm.notes, note] } };
    }
  });
  const passedOver = cards === 0 ? [] : unread.flatMap(({ chatter }) => chatter ?? []);
  const refused = cards === 0 ? unread : unread.filter(({ chatter }) => chatter === null);
  const problems = refused.slice(0, TOLD).map(({ problem }) => problem());
  if (refused.length > TOLD) {
    const received = `${refused.length - TOLD} more lines that are not understood`;
    problems.push({ ...whole, code: "note-unreadable", expected, received, hint: "Is it the right file?" });
  }
  if (notes.length === 0 && refused.length === 0 && cards === 0) {
    const hint = 'Write what was seen or done, or name a file with --file; see "leafpace help note".';
    problems.push({ ...whole, expected, received: "nothing", hint });
  }
  return { notes, problems, passedOver };
}
