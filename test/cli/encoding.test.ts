import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { decoded, decoderOf, type Encoding, textOrNot } from "../../src/cli/encoding.ts";
import { allRows, heldTable, openTable } from "../../src/cli/table.ts";

const TEXT = "id,crop,length (ft)\r\nS01,spinach,½ ft\r\n";

const read = (bytes: Uint8Array): string => {
  const kind = textOrNot(bytes);
  return "encoding" in kind ? `${kind.encoding}: ${decoded(bytes, kind.encoding)}` : kind.looksLike;
};

const bigEndian = (text: string): Buffer => Buffer.from(text, "utf16le").swap16();
const marked = (text: string): string => `\uFEFF${text}`;
const LINES = TEXT.replaceAll("\r\n", "\n");

test.each<readonly [string, Buffer, Encoding]>([
  ["universal", Buffer.from(TEXT), "utf-8"],
  ["universal with its mark", Buffer.from(marked(TEXT)), "utf-8"],
  ["two bytes a letter, small end first", Buffer.from(TEXT, "utf16le"), "utf-16le"],
  ["the same with its mark", Buffer.from(marked(TEXT), "utf16le"), "utf-16le"],
  ["two bytes a letter, big end first", bigEndian(TEXT), "utf-16be"],
  ["the same with its mark, big end first", bigEndian(marked(TEXT)), "utf-16be"],
  ["one byte a letter", Buffer.from(TEXT, "latin1"), "windows-1252"],
])("%s reads as it was written, without mark and with one kind of line end", (_, bytes, encoding) => {
  expect(read(bytes)).toBe(`${encoding}: ${LINES}`);
});

test("quotes and dashes of Windows, and accents and degrees of the older Macintosh, are theirs", () => {
  expect(read(Buffer.from("crop\nlamb\x92s lettuce \x96 early\n", "latin1"))).toBe(
    "windows-1252: crop\nlamb’s lettuce – early\n",
  );
  expect(read(Buffer.from("Temp (\xa1F)\r1\r", "latin1"))).toBe("macintosh: Temp (°F)\n1\n");
  expect(read(Buffer.from("name\rm\x89che frise\x8e\r", "latin1"))).toBe("macintosh: name\nmâche friseé\n");
});

test("what is no text is named", () => {
  const looks = (start: string): string => read(Buffer.from(start, "latin1"));
  expect(looks("PK\x03\x04\x14\x00")).toBe("a spreadsheet workbook");
  expect(looks("\xd0\xcf\x11\xe0\xa1\xb1")).toBe("a spreadsheet workbook");
  expect(looks("\x89PNG\r\n\x1a\n\x00")).toBe("a picture");
  expect(looks("%PDF-1.7")).toBe("a PDF document");
  expect(looks("ab\x00\x01\x00\x00\x02cd")).toBe("a file that holds no text");
  expect(looks("")).toBe("utf-8: ");
});

test("a letter or a line end cut between two pieces stays whole", () => {
  const bytes = Buffer.from("a,½\r\nb,é\rc\r");
  for (let at = 0; at <= bytes.length; at++) {
    const decode = decoderOf("utf-8");
    expect(decode(bytes.subarray(0, at)) + decode(bytes.subarray(at)) + decode()).toBe("a,½\nb,é\nc\n");
  }
});

test("a table is read as all of it is written, in memory or not, also where its first bytes cut a letter", async () => {
  const dir = mkdtempSync(join(tmpdir(), "leafpace-"));
  const path = join(dir, "t.csv");
  const lastCell = async (bytes: Buffer): Promise<readonly (string | undefined)[]> => {
    writeFileSync(path, bytes);
    const opened = [heldTable(bytes, "t.csv"), await openTable(path, "t.csv")];
    const all = await Promise.all(opened.map(({ table }) => allRows(table!, [])));
    return all.map((rows) => rows.at(-1)!.cells[1]);
  };
  const long = (width: number): string => `id,name\n${"x".repeat(width)},y\n`;
  try {
    expect(await lastCell(Buffer.from(`${long(100_000)}S01,Zo\xe9\n`, "latin1"))).toEqual(["Zoé", "Zoé"]);
    for (const width of [65_520, 65_521, 65_522, 65_523])
      expect(await lastCell(Buffer.from(`${long(width)}é,Zoé½\n`))).toEqual(["Zoé½", "Zoé½"]);
  } finally {
    rmSync(dir, { recursive: true });
  }
});

test("the whole of a text counts, to its last letter", () => {
  expect(read(Buffer.from("name\nZo\xe9", "latin1"))).toBe("windows-1252: name\nZoé");
});
