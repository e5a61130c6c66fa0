import { basename, join, resolve } from "node:path";
import type { Farm } from "../../farm/index.ts";
import {
  heavyCuts,
  NOTHING_SAID,
  noteWalk,
  type PassedOver,
  plainLine,
  type Said,
  saidIn,
  type WalkNote,
  type WalkSource,
} from "../../folder/index.ts";
import type { Problem } from "../../problem/index.ts";
import { type Instant, instant, localDate } from "../../quantity/index.ts";
import { notedSentence, notedText } from "../../sheet/index.ts";
import { bytesIn } from "../batch.ts";
import { COULD_NOT, type Context, DONE, problemText, usage } from "../context.ts";
import { openLoosely, openSettings } from "../farmFolder.ts";
import { locked } from "../lock.ts";
import { otherMoment } from "../moment.ts";
import { NOTES } from "../notesAppend.ts";
import { appendNotes, takeBackNotes } from "../notesStore.ts";
import type { Given, Run } from "../spec.ts";
import { heldText, readText } from "../textFile.ts";

/** The words of the notes and where they come from. */
interface Words extends WalkSource {
  readonly text: string;
}

async function wordsGiven(
  names: readonly string[],
  given: Given,
  { io }: Context,
): Promise<Words | { readonly problem: Problem }> {
  const path = given.file;
  if (typeof path !== "string") return { text: names.join(" "), file: "note", numbered: false };
  if (names.length > 0)
    return {
      problem: usage(
        "--file",
        "either a file or the words of one note",
        names.join(" "),
        "Leave one of the two out.",
      ),
    };
  const file = path === "-" ? "standard input" : basename(path);
  const read = path === "-" ? heldText(await io.input(), file) : await readText(resolve(io.cwd, path), file);
  if ("problem" in read) return read;
  if (read.text !== null) return { text: read.text, file, numbered: true };
  return {
    problem: {
      ...usage(path, "a file that can be read", "", "Look at the name and the folder."),
      received: "no such file",
    },
  };
}

/** The day and hour given with --on, for lines that say none. */
function saidGiven(given: Given, farm: Farm, now: Instant): Said | { readonly problem: Problem } {
  const text = given.on;
  if (typeof text !== "string") return NOTHING_SAID;
  const today = localDate(farm.place.zone, now);
  const said = saidIn(plainLine(text), today, farm.units);
  const expected = "a day and hour like 2026-04-18 7:10, Apr 18 or yesterday morning";
  if ("unclear" in said) return { problem: usage("--on", expected, text, said.unclear) };
  const found = said.date !== null || said.hour !== null;
  if (found && said.rest.replace(/[\s,]/gu, "") === "") return { date: said.date, hour: said.hour };
  return { problem: otherMoment("--on", expected, text, farm, now) };
}

const json = (
  notes: readonly WalkNote[],
  farm: Farm,
  written: boolean,
  passedOver: readonly PassedOver[],
  problems: readonly Problem[],
): string =>
  `${JSON.stringify(
    {
      format: "leafpace note",
      version: 1,
      written,
      notes: notes.map(({ note, row, moment, already }) => ({
        line: note.line,
        ...row,
        remark: note.remark,
        at: new Date(note.at).toISOString(),
        said: moment.said,
        already,
        sentence: notedSentence({ note, moment, already }, farm, written),
      })),
      passedOver,
      problems,
    },
    null,
    2,
  )}\n`;

const NOTHING = "Nothing was noted.\n";
const SEE_WEEK = 'See "leafpace week" for the schedule.\n';

/** Lines in which there was nothing to note, so that a grower can see that nothing was lost. */
const passed = (lines: readonly PassedOver[]): string =>
  lines.length === 0
    ? ""
    : `Passed over, with nothing in ${lines.length === 1 ? "it" : "them"} to note: ${lines.map(({ line, text }) => `line ${line} "${text}"`).join(", ")}.\n`;

/** Problems of the folder that do not concern the note. */
const standing = (number: number): string =>
  number === 0
    ? ""
    : `${number === 1 ? "A problem stands" : `${number} problems stand`} in the folder: see "leafpace check".\n`;

async function refuse(context: Context, problems: readonly Problem[]): Promise<number> {
  const code = await context.refuse(problems);
  if (!context.json) context.say(NOTHING);
  return code;
}

const isSame = (a: Buffer | null, b: Buffer | null): boolean =>
  a === null || b === null ? a === b : a.equals(b);

/**
 * Reads the notes and the farm they are about, and writes them all or none. Only the writing holds the folder; what
 * another run has noted meanwhile is read first.
 */
async function record(
  words: Words,
  dir: string,
  given: Given,
  context: Context,
  dry: boolean,
): Promise<number> {
  const now = instant(context.io.now());
  const seen = await bytesIn(join(dir, NOTES));
  const { value: farm, problems: own } = await openLoosely(context);
  if (farm === null) return refuse(context, own);
  const said = saidGiven(given, farm, now);
  if ("problem" in said) return refuse(context, [said.problem]);
  const { notes, problems, passedOver } = noteWalk(words.text, words, farm, now, said);
  const heavy = heavyCuts(
    { ...words, column: null },
    notes.map(({ note }) => note),
    farm,
  );
  const elsewhere = own.filter(({ weight }) => weight === "stops").length;
  const told = (written: boolean): string =>
    context.json
      ? json(notes, farm, written, passedOver, [...problems, ...heavy])
      : notedText(notes, farm, written, context.look);
  if (problems.length > 0) {
    await context.result(told(false));
    if (context.json) return COULD_NOT;
    context.io.stderr.write(problemText(problems));
    context.say(passed(passedOver));
    context.say(`${NOTHING}${standing(elsewhere)}`);
    return COULD_NOT;
  }
  // Put in words before anything is written, so that nothing is written that is not told.
  const result = told(!dry);
  const fresh = notes.filter(({ already }) => !already).map(({ row }) => row);
  if (!dry) {
    // Also with nothing new to write: what a run that was killed has left in the folder is cleared away.
    const done = await locked(dir, async () => {
      if (!isSame(seen, await bytesIn(join(dir, NOTES)))) return "changed";
      return fresh.length === 0 ? null : appendNotes(dir, fresh, context.io.now());
    });
    if ("problem" in done) return context.refuse([done.problem]);
    if (done.value === "changed") return record(words, dir, given, context, dry);
    if (done.value !== null) return refuse(context, [done.value]);
  }
  await context.result(result);
  if (context.json) return DONE;
  if (heavy.length > 0) context.io.stderr.write(problemText(heavy));
  context.say(passed(passedOver));
  const end = dry ? "Nothing written: --dry-run.\n" : fresh.length === 0 ? "Nothing new to write.\n" : null;
  context.say(end ?? (elsewhere > 0 ? standing(elsewhere) : SEE_WEEK));
  return DONE;
}

async function undo(dir: string, context: Context, dry: boolean): Promise<number> {
  const { lines, problems } = await takeBackNotes(dir, dry);
  if (problems.length > 0) return context.refuse(problems);
  if (context.json)
    await context.result(
      `${JSON.stringify({ format: "leafpace note undo", version: 1, takenBack: !dry, lines }, null, 2)}\n`,
    );
  else {
    const heading = dry ? "Would be taken out of notes.csv:" : "Taken out of notes.csv:";
    await context.result(`${[heading, ...lines.map((line) => `  ${line}`)].join("\n")}\n`);
    if (!dry) context.say(SEE_WEEK);
  }
  return DONE;
}

/** Notes what was seen or done, or takes the last notes back. */
export const run: Run = async (names, given, context) => {
  const { dir, problems } = await openSettings(context);
  if (problems.some(({ code }) => code === "farm-missing")) return context.refuse(problems);
  const dry = given.dryRun === true;
  if (given.undo !== true) {
    const words = await wordsGiven(names, given, context);
    return "problem" in words ? refuse(context, [words.problem]) : record(words, dir, given, context, dry);
  }
  const more = [...names, ...(typeof given.file === "string" ? [given.file] : [])].join(" ");
  if (more !== "")
    return context.refuse([usage("--undo", "no note beside it", more, "Take back first, then note anew.")]);
  if (dry) return undo(dir, context, dry);
  const done = await locked(dir, () => undo(dir, context, dry));
  return "value" in done ? done.value : context.refuse([done.problem]);
};
