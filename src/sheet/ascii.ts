const QUARTERS: Readonly<Record<string, string>> = { "¼": ".25", "½": ".5", "¾": ".75" };

const PLAIN: Readonly<Record<string, string>> = {
  "°": "",
  "–": "-",
  "—": "-",
  "−": "-",
  "…": "...",
  "×": "x",
  "·": ".",
  "²": "2",
  "’": "'",
  "‘": "'",
  "“": '"',
  "”": '"',
  "€": "EUR ",
  "£": "GBP ",
  ß: "ss",
  æ: "ae",
  ø: "o",
  ł: "l",
};

/**
 * A text in the 95 printable characters every terminal has: fractions as decimals, letters without their accents, a
 * question mark for what has no plain form.
 *
 * @example ascii("3½ in, 26 °F, Café") // => "3.5 in, 26 F, Cafe"
 */
export function ascii(text: string): string {
  return text
    .replace(/(\d?)([¼½¾])/g, (_, whole: string, part: string) => `${whole || "0"}${QUARTERS[part]!}`)
    .replace(/[^\n -~]/gu, (character) => PLAIN[character] ?? character)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\n -~]/gu, "?");
}
