const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Pictures phones put in, with what joins and colours them, and marks nobody sees. */
const UNSEEN =
  /[\d#*]\ufe0f?\u20e3|[\p{Extended_Pictographic}\p{Emoji_Modifier}\p{RI}\p{Cf}\p{Co}\p{Cn}]|\ufe0f|\u20e3/gu;

/** What stands before a line of a list: bullets, numbers, ticked boxes, marks of a heading. */
const BULLET = /^(?:[-*+>•◦▪●○‣·]+\s+|[•◦▪●○‣]|\[\s*[xX]\s*\]|\(?\d{1,2}[.)]\s+|#+\s+)\s*/u;

/** A box that is not ticked: something still to be done. */
export const isOpenBox = (line: string): boolean => /^[\s\-*+•]*(?:\[\s*\]|☐)/u.test(line);

/** Lines of a text, however it was pasted. */
export const linesOf = (text: string): readonly string[] => text.split(/\r\n|[\n\r\v\f\u0085\u2028\u2029]/u);

/** A text in plain signs: without pictures, quotes and dashes straight, fractions as 1/2, every blank a space. */
export const plainSigns = (text: string): string =>
  text
    .replace(/[½¼¾⅓⅔⅛⅜⅝⅞]/gu, (sign) => ` ${FRACTIONS[sign]} `)
    .replace(/[“”„″]/gu, '"')
    .replace(/[‘’‚′]/gu, "'")
    .replace(/''/gu, '"')
    .replace(/[‐‑‒–—―−]/gu, "-")
    .replace(/⁄/gu, "/")
    .replace(UNSEEN, " ")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim();

/**
 * A line as a phone or a word processor writes it, in plain signs, without bullets and the punctuation at its end.
 *
 * @example plainLine("• S01 4½ in.") // => "S01 4 1/2 in"
 */
export function plainLine(line: string): string {
  let plain = plainSigns(line);
  for (let before = ""; before !== plain; ) {
    before = plain;
    plain = plain.replace(BULLET, "").trim();
  }
  return plain.replace(/[\s.,;:!]+$/u, "");
}
