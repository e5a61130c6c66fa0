import { ENGLISH, OTHER_LANGUAGES } from "./languages.ts";
import type { Words } from "./words.ts";

/** Order of the parts of a date. */
export type DateOrder = "ymd" | "mdy" | "dmy";

/** How one family of logs writes things. Data, so that another family needs no code. */
export interface Dialect extends Words {
  readonly name: string;
  /** Numbers that stand for no reading, in any unit. */
  readonly missing: readonly number[];
  /** Names of offsets from universal time. Several zones share a name. [min] */
  readonly offsets: Readonly<Record<string, readonly number[]>>;
  /** Signs between cells; a blank stands for any run of blanks. */
  readonly separators: readonly string[];
  /** Lines above the header that may hold titles. */
  readonly titleLines: number;
}

/** A dialect that also knows the words of others. */
function together(own: Dialect, others: readonly Partial<Words>[]): Dialect {
  const words = Object.fromEntries(
    others
      .flatMap((other) => Object.keys(other) as (keyof Words)[])
      .filter((key) => key !== "months")
      .map((key) => [key, [own, ...others].flatMap((other) => other[key] ?? [])]),
  );
  const months = own.months.map((begins, index) => [
    ...begins,
    ...others.flatMap((other) => other.months?.[index] ?? []),
  ]);
  return { ...own, ...words, months };
}

/** What most loggers' exports have in common, in every language known. */
export const PLAIN: Dialect = together(
  {
    ...ENGLISH,
    name: "plain",
    // None of these is a temperature of air in any unit: 99.9 °F would be one.
    missing: [
      -99.9, -99.99, -999, -999.9, 999.9, -9999, 9999, -9999.9, 6999, -6999, 32767, -32768, 3276.7, -3276.8,
    ],
    offsets: {
      est: [-300],
      edt: [-240],
      cst: [-360, 480],
      cdt: [-300],
      mst: [-420],
      mdt: [-360],
      pst: [-480],
      pdt: [-420],
      akst: [-540],
      akdt: [-480],
      ast: [-240],
      adt: [-180],
      nst: [-210],
      ndt: [-150],
      wet: [0],
      west: [60],
      bst: [60],
      ist: [60, 330],
      cet: [60],
      cest: [120],
      mez: [60],
      mesz: [120],
      eet: [120],
      eest: [180],
      jst: [540],
      aest: [600],
      aedt: [660],
      acst: [570],
      acdt: [630],
      awst: [480],
      nzst: [720],
      nzdt: [780],
    },
    separators: [",", ";", "\t", "|", " "],
    titleLines: 40,
  },
  OTHER_LANGUAGES,
);

/**
 * A text as words are compared: lower case, without accents, marks and doubled blanks.
 *
 * @example plainWords("outTemp_°C") // => "out temp °c"
 */
export const plainWords = (text: string): string =>
  text
    .replace(/^\uFEFF/u, "")
    .replace(/(\p{Ll}{2})(\p{Lu})/gu, "$1 $2")
    .normalize("NFD")
    .replace(/\p{M}+/gu, "")
    .normalize("NFC")
    .toLowerCase()
    .replace(/[_"]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();

/** Letters from which on a word also counts within a longer one. */
const LONG = 5;

/** @example names("lufttemperatur", ["temperatur"]) // => true */
export function names(text: string, words: readonly string[]): boolean {
  const tokens = ` ${plainWords(text)
    .replace(/[^\p{L}\p{N}.%]+/gu, " ")
    .trim()} `;
  return words.some((word) => tokens.includes(` ${word} `) || (word.length >= LONG && tokens.includes(word)));
}

/** Cells in a line, cut by a separator without regard to what stands between quotes. */
const cellsIn = (line: string, separator: string): number =>
  separator === " "
    ? line.trim().split(/\s+/u).length
    : line.replace(/"[^"]*"/gu, "").split(separator).length;

/**
 * The separator that cuts most of a file's first lines into equally many cells; a comma when none cuts any.
 * Remarks do not count, nor does a last line the sample may have cut off. Blanks only where no sign does.
 *
 * @example separatorOf("a;b;c\n1,5;2;3\n", PLAIN) // => ";"
 */
export function separatorOf(sample: string, dialect: Dialect): string {
  const all = sample.split(/\r\n|\n|\r/u);
  const lines = (all.length > 1 ? all.slice(0, -1) : all)
    .filter((line) => line.trim() !== "" && !line.startsWith("#"))
    .slice(-200);
  // Titles stand above, and their words are no cells.
  const lower = lines.slice(lines.length >> 1);
  const score = (separator: string, among = lines): number => {
    const counts = new Map<number, number>();
    for (const line of among) {
      const cells = cellsIn(line, separator);
      if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
    }
    return Math.max(0, ...counts.values());
  };
  const ranked = dialect.separators
    .filter((separator) => separator !== " ")
    .map((separator) => ({ separator, lines: score(separator) }))
    .sort((a, b) => b.lines - a.lines);
  const best = ranked[0]!;
  const most = (separator: string): boolean => score(separator, lower) * 2 > lower.length;
  const cuts = best.lines * 2 > lines.length || most(best.separator);
  if (dialect.separators.includes(" ") && !cuts && most(" ")) return " ";
  if (best.lines === 0) return ",";
  const rivals = ranked.filter(({ lines: agreeing }) => agreeing === best.lines);
  // A comma may be a decimal comma; any other separator that does as well is the real one.
  return (rivals.find(({ separator }) => separator !== ",") ?? best).separator;
}
