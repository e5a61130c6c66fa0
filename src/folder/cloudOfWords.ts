/**
 * Share of the sky under cloud in the words of a forecast; of several words the first in this list counts.
 *
 * @source nwsSkyWords, the middle of each stretch of eighths; that rain, snow, thunder and fog stand for a sky as good as
 * covered is judgement.
 */
const WORDS: readonly (readonly [words: RegExp, cloud: number])[] = [
  [/mostly (?:sunny|clear)|fair/u, 1.5 / 8],
  [/partly (?:sunny|cloudy|clear)/u, 4 / 8],
  [/mostly cloudy|considerable cloud/u, 6.5 / 8],
  [/cloud|overcast|rain|shower|snow|drizzle|sleet|thunder|storm|fog|freezing|flurries|wintry/u, 1],
  [/sunny|clear/u, 0],
];

/** @returns null when no word is known. [1] @example cloudOfWords("Partly Cloudy") // => 0.5 */
export function cloudOfWords(text: string): number | null {
  const lower = text.toLowerCase();
  return WORDS.find(([words]) => words.test(lower))?.[1] ?? null;
}
