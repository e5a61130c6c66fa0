import { decoded, type Encoding } from "./encoding.ts";

/** Bytes of the letters an encoding with one byte a letter has. */
const singleBytes = (encoding: Encoding): ReadonlyMap<string, number> =>
  // Byte 13 is left out: reading makes a line feed of it.
  new Map(
    Array.from({ length: 256 }, (_, byte) => byte)
      .filter((byte) => byte !== 13)
      .map((byte) => [decoded(Uint8Array.of(byte), encoding), byte]),
  );

/** The bytes of a text; null when the encoding does not have all its letters. */
export function encoded(text: string, encoding: Encoding): Buffer | null {
  if (encoding === "utf-8") return Buffer.from(text, "utf8");
  if (encoding === "utf-16le") return Buffer.from(text, "utf16le");
  if (encoding === "utf-16be") return Buffer.from(text, "utf16le").swap16();
  const known = singleBytes(encoding);
  const bytes = [...text].map((letter) => (letter === "\r" ? 13 : known.get(letter)));
  return bytes.includes(undefined) ? null : Buffer.from(bytes as number[]);
}
