/** A space at which no line may break. Used inside quantities and dates so that a number stays with its unit. */
export const TIED = "\u00a0";

const WIDE: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x20000, 0x3fffd],
];

function widthOf(character: string): number {
  const code = character.codePointAt(0)!;
  if (code < 0x300) return 1;
  if (code === 0x200c || code === 0x200d || /\p{M}/u.test(character)) return 0;
  const wide = WIDE.some(([from, to]) => code >= from && code <= to);
  return wide || /\p{Emoji_Presentation}/u.test(character) ? 2 : 1;
}

/** Columns a text takes in a terminal. @example displayWidth("3½ in") // => 5 */
export function displayWidth(text: string): number {
  let width = 0;
  for (const character of text) width += widthOf(character);
  return width;
}

/** The part of a text that fits in `width` columns and the rest. Takes at least one character, so that it always gets on. */
function cut(text: string, width: number): readonly [string, string] {
  let used = 0;
  let end = 0;
  for (const character of text) {
    used += widthOf(character);
    if (used > width && end > 0) break;
    end += character.length;
  }
  return [text.slice(0, end), text.slice(end)];
}

/** Words no longer than `width`: one that is longer breaks at its tied spaces, and where that is not enough, anywhere. */
function pieces(word: string, width: number): string[] {
  if (displayWidth(word) <= width) return [word];
  if (word.includes(TIED)) return wrap(word.replaceAll(TIED, " "), width);
  const [head, rest] = cut(word, width);
  return rest === "" ? [head] : [head, ...pieces(rest, width)];
}

/**
 * A text as lines of at most `width` columns, broken between words. A newline in the text begins a new line.
 *
 * @example wrap("Put on row cover 19 g.", 12) // => ["Put on row", "cover 19 g."]
 */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split("\n")) {
    let line = "";
    for (const word of paragraph.split(" ").flatMap((whole) => pieces(whole, width))) {
      if (line !== "" && displayWidth(line) + 1 + displayWidth(word) > width) {
        lines.push(line);
        line = word;
      } else line = line === "" ? word : `${line} ${word}`;
    }
    lines.push(line);
  }
  return lines.map((line) => line.replaceAll(TIED, " "));
}

/** A text filled with spaces to `width` columns. @example pad("bare", 6) // => "bare  " */
export const pad = (text: string, width: number): string =>
  text + " ".repeat(Math.max(0, width - displayWidth(text)));
