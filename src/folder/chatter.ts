import { didYouMean } from "../problem/index.ts";
import type { CrewLanguage } from "./crew/language.ts";
import { CREW_LANGUAGES } from "./crew/languages.ts";
import { anyOf, letters } from "./crew/sentence.ts";
import { knownWords } from "./noteProblem.ts";
import type { NoteSetting } from "./noteRead.ts";

const LANGUAGES: readonly CrewLanguage[] = Object.values(CREW_LANGUAGES);

const wordsIn = (text: string): readonly string[] => letters(text).match(/\p{L}+/gu) ?? [];

/** Shorter words of a card, like "el" and "ya", are said about anything. judgement */
const SHORTEST = 4;

/** Words in capitals are what a card asks to be done; names of cloth and crops are what it is done with. */
const CARD_WORDS: readonly string[] = LANGUAGES.flatMap(({ sentences, covers, crops }) => [
  ...Object.values(sentences).flatMap((sentence) => sentence.match(/\p{Lu}{4,}/gu) ?? []),
  ...[...Object.values(covers), ...Object.values(crops)],
])
  .flatMap(wordsIn)
  .filter((word) => word.length >= SHORTEST);

/** That something was not done changes what the lines around it say. */
const NOT_DONE = new RegExp(
  `(?<![\\p{L}\\p{N}])${anyOf(LANGUAGES.flatMap(({ notDone }) => notDone))}(?![\\p{L}\\p{N}])`,
  "u",
);

/**
 * May a line that is not understood be passed over in an answer? It holds no number, no name, no word of a note or a card, not even
 * one nearly so, and does not say that something was not done.
 *
 * @example isChatter("ok jefe, gracias", setting) // => true
 */
export function isChatter(plain: string, setting: NoteSetting): boolean {
  const text = letters(plain);
  if (/\p{N}/u.test(text) || NOT_DONE.test(text)) return false;
  const known = [...new Set([...knownWords(setting).flatMap(wordsIn), ...CARD_WORDS])];
  return wordsIn(text).every(
    (word) => !known.includes(word) && (word.length < SHORTEST || didYouMean(word, known) === null),
  );
}
