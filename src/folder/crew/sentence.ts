/** Vowels lose their accents, as phones write them; ñ is in the alphabet every text message has (GSM 03.38, from memory). */
const phone = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/(?<![nN])\p{M}|(?<=[nN])(?!\u0303)\p{M}/gu, "")
    .normalize("NFC");

/**
 * A sentence with its holes filled, in letters every text message holds; what fills them stays as it is.
 *
 * @example filled("Mañana más: {who}", { who: "José" }) // => "Mañana mas: José"
 */
export const filled = (sentence: string, holes: Readonly<Record<string, string>>): string =>
  phone(sentence).replace(/\{(\w+)\}/gu, (hole, name: string) => holes[name] ?? hole);

/** Letters without case and accents, to compare by. */
export const letters = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

const escaped = (text: string): string =>
  letters(text)
    .replace(/[.*+?^${}()|[\]\\]/gu, "\\$&")
    .replace(/\s+/gu, "\\s+");

/** One of several texts, the longer before the shorter. */
export const anyOf = (texts: readonly string[]): string =>
  texts.length === 0
    ? "(?!)"
    : `(?:${[...texts]
        .sort((a, b) => b.length - a.length)
        .map(escaped)
        .join("|")})`;

/** A sentence as the body of a pattern, each hole by the pattern that fills it. */
export const sentenceBody = (sentence: string, holes: Readonly<Record<string, string>>): string =>
  sentence
    .split(/(\{\w+\})/u)
    .map((part) => {
      const hole = /^\{(\w+)\}$/u.exec(part)?.[1];
      return hole === undefined ? escaped(part) : `(?:${holes[hole] ?? ".+?"})`;
    })
    .join("");

/**
 * The pattern by which a line that is this sentence is known again, in letters without case and accents. The punctuation at
 * its end, and a hole behind its last colon, may be gone.
 */
export function sentencePattern(sentence: string, holes: Readonly<Record<string, string>>): RegExp {
  const [, head, last] = /^(.*): (\{\w+\})$/u.exec(sentence) ?? [];
  return head === undefined
    ? new RegExp(`^${sentenceBody(sentence.replace(/[\s.,;:!]+$/u, ""), holes)}$`, "u")
    : new RegExp(`^${sentenceBody(head, holes)}(?:\\s*:\\s*${sentenceBody(last!, holes)})?$`, "u");
}
