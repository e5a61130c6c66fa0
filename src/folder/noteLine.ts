import { localDate } from "../quantity/index.ts";
import { noteMoment } from "./noteMoment.ts";
import { successionNotes } from "./noteOfBed.ts";
import { coverNotes } from "./noteOfCover.ts";
import { FILLERS, kindsOf, type Parts, partsOf } from "./noteParts.ts";
import { type LineRead, type Misreading, misread, type NoteSetting, RANGE } from "./noteRead.ts";
import type { Said } from "./noteWhen.ts";

/** Two notes in one line. */
const SEVERAL = "notes-in-line";

/** Words of a heading above a walk's lines. */
const HEADING = new Set("walk walks walked round rounds note notes".split(" "));

export const stillAhead = ({ farm, now }: Pick<NoteSetting, "farm" | "now">): Misreading =>
  misread("Note it once it is done.", {
    code: "note-ahead",
    expected: `a day and hour up to now, ${localDate(farm.place.zone, now)}`,
    received: "one still to come",
  });

/** A line that names nothing but a day, an hour or a walk. */
function isHeading({ names, said, words }: Parts): boolean {
  const named = names.successions.length + names.tunnels.length + names.crops.length;
  const plain = words.every((word) => HEADING.has(word) || FILLERS.has(word));
  const says = said.date !== null || said.hour !== null || words.some((word) => HEADING.has(word));
  return named === 0 && plain && says;
}

/** Misreadings after which no more of the line is taken for a remark. */
const FINAL: ReadonlySet<string> = new Set([RANGE, SEVERAL]);

/** Reads a line without remark. */
function readHead(head: string, setting: NoteSetting): LineRead {
  const plain = head.replace(/[\s.,;:!]+$/u, "");
  const { today } = setting;
  const day = setting.said.date ?? today;
  const alone = partsOf(plain, setting, today);
  // A heading's yesterday is the day before today; that of a note below a heading the day before the heading.
  const parts =
    day === today || (!("kind" in alone) && isHeading(alone)) ? alone : partsOf(plain, setting, day);
  if ("kind" in parts) return parts;
  const found: Said = { date: parts.said.date, hour: parts.said.hour };
  const said: Said = {
    date: found.date ?? setting.said.date,
    hour: found.hour ?? (found.date === null ? setting.said.hour : null),
  };
  const { farm, now } = setting;
  const kinds = kindsOf(parts);
  const kind = kinds[0]!;
  const clock = { zone: farm.place.zone, walks: farm.walks };
  const moment = noteMoment(said, kind === "cover" ? "cover" : "other", clock, now);
  if (moment === null) return stillAhead(setting);
  if (isHeading(parts)) return { kind: "heading", said };
  if (kinds.length > 1) return misread("Write a line for each thing that was seen or done.");
  const notes =
    kind === "cover" ? coverNotes(parts, moment, setting) : successionNotes(parts, kind, moment, setting);
  if ("kind" in notes) return notes;
  return { kind: "notes", notings: notes.map((note) => ({ note, moment })), said: found };
}

/** A # begins a remark, but right behind a number it is the sign of pounds. */
const REMARK = /(?<!\d)#(?!(?<=\d\s#)\s*(?:$|last\b|[-;(]))/iu;

/** What stands before a remark, or within one. */
const MARK = /\s-+\s|\s?;/gu;

/** What stands before the cause of a loss: lost half to pigeons. */
const CAUSE = /\s(?:to|by)\s(?<=\b(?:lost|loss)\b[^;(-]*)/giu;

/** How many of them are tried: a remark has fewer. judgement */
const MARKS = 12;

/** Places where a remark may begin: the whole line has none, then the last place, and so on to the first. */
function* splits(line: string): Generator<readonly [head: string, remark: string]> {
  const hard = REMARK.exec(line);
  const own = hard === null ? line : line.slice(0, hard.index);
  const behind = hard === null ? "" : line.slice(hard.index + 1).trim();
  const bracket = /^(.*\S)\s*\(([^()]*)\)$/u.exec(own.trim());
  yield [own, behind];
  if (bracket !== null) yield [bracket[1]!, [bracket[2]!, behind].filter((part) => part !== "").join(" ")];
  // A sign that was set is surer than a word.
  const marks = [MARK, CAUSE].flatMap((mark) => [...own.matchAll(mark)].slice(-MARKS).reverse());
  for (const { 0: mark, index } of marks)
    yield [
      own.slice(0, index),
      [own.slice(index + mark.length).trim(), behind].filter((part) => part !== "").join(" "),
    ];
}

/** Reads a line of which it is known where its remark begins. */
export function noteWithRemark(head: string, remark: string, setting: NoteSetting): LineRead {
  const read = readHead(head, setting);
  if (read.kind !== "notes" || remark === "") return read;
  if (remark.split(MARK).some((part) => readHead(part, setting).kind === "notes"))
    return misread("Write each note on a line of its own.", { code: SEVERAL });
  const notings = read.notings.map(({ note, moment }) => ({ note: { ...note, remark }, moment }));
  return { ...read, notings };
}

/**
 * Reads one plain line of words: a leaf, an emergence, a cover, a cut, a loss, a bed sown again, or the day of the lines
 * that follow. The more of it is understood, the better: only what is not may be a remark, behind " - ", ";" or "#".
 *
 * @param line - As `plainLine` gives it.
 */
export function noteLine(line: string, setting: NoteSetting): LineRead {
  let first: LineRead | null = null;
  for (const [head, remark] of splits(line)) {
    const read = noteWithRemark(head, remark, setting);
    first ??= read;
    if (read.kind === "notes" || (read.kind === "heading" && remark === "")) return read;
    if (read.kind === "misread" && FINAL.has(read.misread.code)) return read;
  }
  return first!;
}
