import { catalogue, type Farm, type Note } from "../farm/index.ts";
import { didYouMean } from "../problem/index.ts";
import { localDate } from "../quantity/index.ts";
import { walkCodeIn } from "./crew/code.ts";
import { ACTS, type CrewLanguage } from "./crew/language.ts";
import { CREW_LANGUAGES } from "./crew/languages.ts";
import { type CardLine, cardReader, type Ids, idsByName } from "./crew/readers.ts";
import { anyOf, letters } from "./crew/sentence.ts";
import { crewTerms } from "./crew/terms.ts";
import { lastSuch } from "./dayInWords.ts";
import { listed, shown } from "./faults.ts";
import { tokensOf } from "./noteAmount.ts";
import { noteLine, stillAhead } from "./noteLine.ts";
import { type NoteMoment, walkMoment } from "./noteMoment.ts";
import { successionNotes } from "./noteOfBed.ts";
import { type LineRead, type Misreading, misread, misreadBy, type NoteSetting } from "./noteRead.ts";
import { hoopsBroken } from "./noteRules.ts";

const LANGUAGES: readonly CrewLanguage[] = Object.values(CREW_LANGUAGES);

/** A line of a card of which nothing is to be noted. */
const CARD: LineRead = { kind: "card" };

/** How people say that something was not done, before or behind it. */
const NOT_DONE: string = anyOf(LANGUAGES.flatMap(({ notDone }) => notDone));
const NOT_DONE_BEFORE = new RegExp(`^${NOT_DONE}\\s*[:-]\\s*`, "u");
const NOT_DONE_BEHIND = new RegExp(`[\\s,;:(-]*(?<![\\p{L}\\p{N}])${NOT_DONE}\\)?$`, "u");

const WEIGHT_WORDS: Readonly<Record<string, string>> = Object.assign(
  {},
  ...LANGUAGES.map(({ weightWords }) => weightWords),
);

interface Named {
  readonly ids: readonly string[];
  /** What is no name. */
  readonly strange: readonly string[];
}

/** Pieces in brackets, which only tell. */
const piecesPattern = ({ pieces }: Farm): RegExp => {
  const one = anyOf(pieces.map(({ id }) => id));
  return new RegExp(`\\(\\s*${one}(?:\\s*,\\s*${one})*\\s*\\)`, "gu");
};

/** Names in a text, each once. `told`: what only tells. */
function namesIn(text: string, known: Ids, told: RegExp): Named {
  const found: string[] = [];
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])${anyOf([...known.keys()])}(?![\\p{L}\\p{N}])`, "gu");
  const rest = text
    .replace(pattern, (name) => {
      found.push(known.get(name.replace(/\s+/gu, " "))!);
      return ",";
    })
    .replace(told, ",");
  const strange = rest.split(/[,;.:!&+]+/u).map((part) => part.trim());
  return { ids: [...new Set(found)], strange: strange.filter((part) => part !== "") };
}

/** A part of a plain line as it was typed, for the place of a problem. */
function typed(plain: string, part: string): string {
  const at = letters(plain).indexOf(part);
  return at < 0 ? part : plain.slice(at, at + part.length);
}

const noted = (moment: NoteMoment, notes: readonly Note[]): LineRead => ({
  kind: "notes",
  said: { date: null, hour: null },
  notings: notes.map((note) => ({ note, moment })),
});

const strangeName = (plain: string, strange: string, what: string, known: readonly string[]): Misreading => {
  const part = typed(plain, strange);
  const near = didYouMean(strange, known);
  const hint = near === null ? `Known: ${listed(known)}.` : `Did you mean "${near}"?`;
  return misread(hint, { code: "card-name-unknown", expected: what, received: shown(part), part });
};

/** The day and hour of a card's code, for the lines below it. */
function codeRead(plain: string, { now, farm }: NoteSetting): LineRead | null {
  const code = walkCodeIn(plain);
  if (code === null) return null;
  const date = lastSuch(code.day, localDate(farm.place.zone, now));
  if (date !== null && code.hour !== null) return { kind: "heading", said: { date, hour: code.hour } };
  return misread("Copy the first line of the card again.", {
    code: "card-code-wrong",
    expected: "the code of a walk, its month, day and clock, like R0420-0700",
    received: shown(code.text),
    part: code.text,
  });
}

const NO_CODE: Misreading = misread("Copy the first line of the card too, or say when with --on.", {
  code: "card-code-missing",
  expected: "the code of its walk above a line of a card, like R0420-0700",
  received: "none",
});

/**
 * Reads lines of crew cards that were sent back, in every language they are written in: what was not done has been deleted,
 * weights have been filled in.
 *
 * @returns null for a line that comes from no card.
 */
export function crewAnswer(farm: Farm): (plain: string, setting: NoteSetting) => LineRead | null {
  const known = catalogue();
  const termed = LANGUAGES.map((language) => ({ language, terms: crewTerms(farm, language, known) }));
  const readers = termed.map(({ language, terms }) => cardReader(farm, language, terms));
  const covers = [...new Set(termed.flatMap(({ terms }) => [...terms.covers.values()]))];
  const tunnelNames = termed[0]!.terms.tunnels;
  const tunnels = idsByName(tunnelNames);
  const pieces = piecesPattern(farm);

  const read = (text: string): CardLine | null => {
    const lines = readers.map((reader) => reader(text)).filter((line) => line !== null);
    return lines.find(({ kind }) => !kind.endsWith("Unknown")) ?? lines[0] ?? null;
  };

  function coverNoted(
    { act, cover, tunnels: said }: CardLine & { readonly kind: "cover" },
    plain: string,
    moment: NoteMoment,
  ): LineRead {
    const whole = namesIn(said, tunnels, pieces);
    const done = whole.strange.length === 0 ? said : said.replace(NOT_DONE_BEHIND, "");
    const { ids, strange } = done === said ? whole : namesIn(done, tunnels, pieces);
    if (strange.length > 0) return strangeName(plain, strange[0]!, "a tunnel", [...tunnelNames.values()]);
    if (done !== said && ids.length > 1) {
      const part = typed(plain, said.slice(done.length).trim());
      return misread("Delete the tunnels where it was not done.", {
        code: "card-not-done",
        expected: "what was not done deleted",
        received: shown(part),
        part,
      });
    }
    const state = ACTS[act];
    if (done !== said || state === null || ids.length === 0) return CARD;
    for (const id of ids) {
      const tunnel = farm.tunnels.find((one) => one.id === id)!;
      const broken = hoopsBroken(tunnel, tunnel.name);
      if (broken !== null) return misreadBy(broken);
    }
    const common = { kind: "cover", at: moment.at, line: 0, remark: "", cover, state } as const;
    return noted(
      moment,
      ids.map((tunnel) => ({ ...common, tunnel })),
    );
  }

  function cutNoted(
    { succession, weight }: CardLine & { readonly kind: "cut" },
    plain: string,
    moment: NoteMoment,
    setting: NoteSetting,
  ): LineRead {
    if (NOT_DONE_BEHIND.test(weight)) return CARD;
    const words = weight
      .replace(/_+/gu, " ")
      .replace(/\p{L}+/gu, (word) => WEIGHT_WORDS[word] ?? word)
      // The unit of the form may come to stand before the number: "lb 12".
      .replace(/^\s*(lb|kg)\b\s*/u, "");
    const tokens = tokensOf(words);
    const last = tokens.some(({ text }) => text === "last");
    const parts = {
      names: { successions: [succession], tunnels: [], crops: [], rest: "" },
      said: { date: null, hour: null, rest: "", on: false, last: false },
      roles: last ? (["cut", "last"] as const) : (["cut"] as const),
      left: tokens.filter(({ text }) => text !== "last"),
      words: [],
    };
    const notes = successionNotes(parts, "cut", moment, setting);
    if (!("kind" in notes)) return noted(moment, notes);
    // What was filled in is all that can be wrong with a weight.
    const { received } = notes.misread;
    const part = typed(plain, weight);
    return received === null
      ? misread("Write one weight behind the colon, and anything else on a line below.", {
          ...notes.misread,
          unknown: [],
          expected: "what was weighed, like 12.5 lb, or nothing",
          received: shown(part),
          part,
        })
      : notes;
  }

  return (plain, setting) => {
    const code = codeRead(plain, setting);
    if (code !== null) return code;
    const text = letters(plain);
    const before = NOT_DONE_BEFORE.exec(text)?.[0].length ?? 0;
    const line = read(text.slice(before));
    if (line === null) return null;
    if (line.kind === "told" || before > 0) return CARD;
    const { date, hour } = setting.said;
    const coded = date !== null && hour !== null;
    // Without a code, or in words of their own, people may well have written a note that is understood.
    if (!coded || line.kind === "coverUnknown" || line.kind === "cutUnknown") {
      const own = noteLine(plain, setting);
      if (own.kind === "notes") return own;
    }
    if (line.kind === "coverUnknown") return strangeName(plain, line.cover, "a cover", covers);
    if (line.kind === "cutUnknown") return null;
    if (!coded) return NO_CODE;
    const clock = { zone: farm.place.zone, walks: farm.walks };
    const at = typeof hour === "number" ? hour : clock.walks[hour];
    const moment = walkMoment(clock, date, at, setting.now);
    if (moment === null) return stillAhead(setting);
    return line.kind === "cover" ? coverNoted(line, plain, moment) : cutNoted(line, plain, moment, setting);
  };
}
