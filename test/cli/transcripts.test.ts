import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { shell } from "./shell.ts";

const transcripts = join(dirname(fileURLToPath(import.meta.url)), "transcripts");

/** `WRITE_TRANSCRIPTS=1 npx vitest run test/cli` writes them anew, to be read before they are kept. */
const writing = process.env.WRITE_TRANSCRIPTS === "1" && process.env.CI === undefined;

/** Transcripts of this folder and of those in it. */
const names = readdirSync(transcripts, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".txt"))
  .sort();

/** A file a transcript writes first: its text behind `> name`, up to the next empty line; `> name as X` in other bytes. */
function write(dir: string, [head, ...lines]: readonly string[]): void {
  const [, name = "", form] = /^> (\S+)(?: as (.+))?$/u.exec(head!) ?? [];
  const path = join(dir, name);
  mkdirSync(dirname(path), { recursive: true });
  rmSync(path, { force: true });
  if (form === "a folder") mkdirSync(path);
  else writeFileSync(path, FORMS[form ?? "plain"]!(lines.map((line) => `${line}\n`).join("")));
}

/** Bytes of a file as other programs write it. */
const FORMS: Readonly<Record<string, (text: string) => Buffer>> = {
  plain: (text) => Buffer.from(text),
  "UTF-16": (text) => Buffer.from(`\uFEFF${text}`, "utf16le"),
  "Windows-1252 with CRLF": (text) => Buffer.from(text.replaceAll("\n", "\r\n"), "latin1"),
  "a workbook": () => Buffer.from("PK\x03\x04\x14\x00\x06\x00\x08\x00", "latin1"),
  "a picture": () => Buffer.from("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "latin1"),
};

/**
 * First line: the folder it happens in. Then, each after an empty line, files to write and commands behind $ with what is
 * typed into them behind <, what they printed and their exit code. A line of # tells readers what it is about.
 */
test.each(names)("%s", async (name) => {
  const path = join(transcripts, name);
  const text = readFileSync(path, "utf8").replaceAll("\r\n", "\n");
  const [first = "", ...blocks] = text.trimEnd().split(/\n\n(?=[$>#] )/u);
  const folder = /^in ([\w-]+)$/u.exec(first)?.[1] ?? null;
  const here = shell(folder === "nothing" ? null : folder);
  try {
    const found = [first];
    for (const block of blocks) {
      const lines = block.split("\n");
      if (block.startsWith(">")) write(here.dir, lines);
      if (!block.startsWith("$")) found.push(block);
      else {
        const typed = lines.filter((line) => line.startsWith("< "));
        const input = typed.map((line) => `${line.slice(2)}\n`).join("");
        const { all, code } = await here.run(lines[0]!.slice("$ leafpace".length), { input });
        found.push([lines[0], ...typed, all.replaceAll("\r\n", "\n").trimEnd(), `[exit ${code}]`].join("\n"));
      }
    }
    const told = `${found.join("\n\n")}\n`;
    if (writing) writeFileSync(path, told);
    else expect(told).toBe(text);
  } finally {
    here.end();
  }
});
