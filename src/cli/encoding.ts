import { isUtf8 } from "node:buffer";

/** How a text is written in bytes, by the name TextDecoder knows it by. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252" | "macintosh";

/** First bytes of files that are no text, as Latin-1. */
const NO_TEXT: readonly (readonly [start: string, what: string])[] = [
  ["PK\x03\x04", "a spreadsheet workbook"],
  ["\xd0\xcf\x11\xe0", "a spreadsheet workbook"],
  ["%PDF", "a PDF document"],
  ["\x89PNG", "a picture"],
  ["\xff\xd8\xff", "a picture"],
  ["GIF8", "a picture"],
];

/** Share of zero bytes at every other place from which a text has two bytes a letter. judgement */
const TWO_BYTES = 0.3;

/**
 * Letters and signs that only Mac Roman puts at these bytes, as Latin-1: a degree sign before its unit, and the
 * small letters with accents that stand behind another small letter. judgement
 */
const MAC = /\xa1\s?[CFcf]\b|[\x81\x8d\x8f\x90]|[a-z][\x87\x88\x8a\x8e\x9a\x9f]/u;

const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("latin1");

/** Shares of zeros among the bytes at even and at odd places. */
function zeros(bytes: Uint8Array): readonly [even: number, odd: number] {
  const count = [0, 0];
  bytes.forEach((byte, index) => {
    if (byte === 0) count[index % 2]! += 1;
  });
  const half = Math.max(1, bytes.length / 2);
  return [count[0]! / half, count[1]! / half];
}

/**
 * Tells from the bytes of a file, or from its first ones, how its text is written, or what it is when it is no text.
 *
 * @param bytes - Whole letters: what is cut off within one is not universal. See `wholeLetters`.
 * @example textOrNot(new TextEncoder().encode("id,crop")) // => { encoding: "utf-8" }
 */
export function textOrNot(
  bytes: Uint8Array,
): { readonly encoding: Encoding } | { readonly looksLike: string } {
  const start = latin1(bytes.subarray(0, 8));
  const known = NO_TEXT.find(([magic]) => start.startsWith(magic));
  if (known !== undefined) return { looksLike: known[1] };
  if (start.startsWith("\xff\xfe")) return { encoding: "utf-16le" };
  if (start.startsWith("\xfe\xff")) return { encoding: "utf-16be" };
  const [even, odd] = zeros(bytes);
  if (even < 0.02 && odd > TWO_BYTES) return { encoding: "utf-16le" };
  if (odd < 0.02 && even > TWO_BYTES) return { encoding: "utf-16be" };
  if (even + odd > 0) return { looksLike: "a file that holds no text" };
  if (isUtf8(bytes)) return { encoding: "utf-8" };
  return { encoding: MAC.test(latin1(bytes)) ? "macintosh" : "windows-1252" };
}

/** The first bytes of a longer file, without a letter of several bytes that may be cut at their end. */
export function wholeLetters(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1]! >= 0x80) end -= 1;
  return bytes.subarray(0, end);
}

/** A decoder that is fed piece by piece and gives every line end as one line feed. Called without a piece at the end. */
export function decoderOf(encoding: Encoding): (piece?: Uint8Array) => string {
  // Fed as a stream throughout: given a whole text at once, Node 20 reads Windows-1252 as Latin-1.
  const decoder = new TextDecoder(encoding);
  let held = "";
  return (piece) => {
    let text = held + (piece === undefined ? decoder.decode() : decoder.decode(piece, { stream: true }));
    held = piece !== undefined && text.endsWith("\r") ? "\r" : "";
    if (held !== "") text = text.slice(0, -1);
    return text.includes("\r") ? text.replace(/\r\n?/gu, "\n") : text;
  };
}

/** The whole text in some bytes. */
export function decoded(bytes: Uint8Array, encoding: Encoding): string {
  const decode = decoderOf(encoding);
  return decode(bytes) + decode();
}
