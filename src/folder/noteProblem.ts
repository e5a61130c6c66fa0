import type { Farm } from "../farm/index.ts";
import { didYouMean, type Problem } from "../problem/index.ts";
import { parseQuantity } from "../quantity/index.ts";
import { shown } from "./faults.ts";
import { wordsOfCovers } from "./noteCover.ts";
import { noteLine, noteWithRemark } from "./noteLine.ts";
import { ROLES } from "./noteParts.ts";
import type { LineRead, Misread, NoteSetting } from "./noteRead.ts";
import { plainLine } from "./noteText.ts";
import { noteWords } from "./noteWords.ts";

/** A note as it may be written, in the farm's words. */
export const noteExample = ({ successions, units }: Farm): string =>
  `${successions[0]?.id ?? "S01"} ${units === "US" ? "4 in" : "10 cm"}`;

/** Letters that are easily taken for digits. */
const digits = (word: string): string => word.replace(/o/giu, "0").replace(/[il]/giu, "1");

const isUnit = (word: string): boolean =>
  (["leaf", "mass"] as const).some((kind) => parseQuantity(`1 ${word}`, kind, null).fault === null);

/** Words a line about a farm may hold. */
export const knownWords = ({ farm, names }: Pick<NoteSetting, "farm" | "names">): readonly string[] => [
  ...names.words,
  ...Object.keys(ROLES),
  ...wordsOfCovers(farm),
];

/** Put right into a word near to it, the line would say the opposite. */
const DENIES = /^(?:no|not|non|none|without)$/iu;

/** A line with words nobody knows put right, where that is possible. */
export function mended(
  line: string,
  unknown: readonly string[],
  words: readonly string[],
): readonly string[] {
  const known = words.filter((word) => word.length > 1);
  let text = line;
  for (const word of unknown) {
    if (isUnit(word) || word.length < 2 || DENIES.test(word)) continue;
    const same = known.find((name) => name.toLowerCase() === digits(word).toLowerCase());
    const near = same ?? didYouMean(word, known);
    const at = text.toLowerCase().indexOf(word.toLowerCase());
    if (near !== null && at >= 0) text = text.slice(0, at) + near + text.slice(at + word.length);
  }
  return text === line ? [] : [text];
}

/** How far from the end of a line the words of a remark without a sign before it are looked for. judgement */
const WORDS = 8;

/** Lines near to one, the nearest first, and how they are read. */
function* nearby(
  line: string,
  unknown: readonly string[],
  setting: NoteSetting,
): Generator<{ readonly text: string; readonly read: LineRead }> {
  for (const text of mended(line, unknown, knownWords(setting)))
    yield { text, read: noteLine(text, setting) };
  // As much as can be understood, and the rest as a remark.
  for (const { 0: blank, index } of [...line.matchAll(/\s+/gu)].slice(-WORDS).reverse()) {
    const [head, remark] = [line.slice(0, index), line.slice(index + blank.length)];
    yield { text: `${head} - ${remark}`, read: noteWithRemark(head, remark, setting) };
  }
}

/** The nearest line that is understood, in plain form; null when none is near. */
function nearest(line: string, { unknown }: Misread, setting: NoteSetting): string | null {
  if (unknown.length === 0) return null;
  for (const { text, read } of nearby(plainLine(line), unknown, setting)) {
    if (read.kind !== "notes") continue;
    const [one] = read.notings;
    if (one === undefined || read.notings.length > 1) return text;
    const said = read.said.date !== null || read.said.hour !== null ? `, ${one.moment.when}` : "";
    const remark = one.note.remark === "" ? "" : ` - ${one.note.remark}`;
    return `${noteWords(one.note, setting.farm)}${said}${remark}`;
  }
  return null;
}

/** A line that is not understood, as a problem that names the nearest one that is. */
export function noteProblem(
  spot: Pick<Problem, "file" | "line">,
  line: string,
  misread: Misread,
  setting: NoteSetting,
): Problem {
  const near = nearest(line, misread, setting);
  const begins = misread.part === undefined ? -1 : line.indexOf(misread.part);
  return {
    ...spot,
    column: begins < 0 ? null : begins + 1,
    code: misread.code,
    weight: "stops",
    expected: misread.expected ?? `a note like "${noteExample(setting.farm)}"`,
    received: misread.received === null ? shown(line.trim()) : `${misread.received} in ${shown(line.trim())}`,
    hint: near === null ? misread.hint : `Did you mean "${near}"?`,
  };
}
