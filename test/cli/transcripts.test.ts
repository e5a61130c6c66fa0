import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { shell } from "./shell.ts";

const transcripts = join(dirname(fileURLToPath(import.meta.url)), "transcripts");

/** `WRITE_TRANSCRIPTS=1 npx vitest run test/cli` writes them anew, to be read before they are kept. */
const writing = process.env.WRITE_TRANSCRIPTS === "1" && process.env.CI === undefined;

/** First line: the folder it happens in. Then commands behind $, each with what it printed and its exit code. */
test.each(readdirSync(transcripts).filter((name) => name.endsWith(".txt")))("%s", async (name) => {
  const path = join(transcripts, name);
  const text = readFileSync(path, "utf8").replaceAll("\r\n", "\n");
  const [first = "", ...lines] = text.split("\n");
  const folder = /^in (\w+)$/u.exec(first)?.[1] ?? null;
  const here = shell(folder === "nothing" ? null : folder);
  try {
    let found = `${first}\n`;
    for (const line of lines.filter((one) => one.startsWith("$ "))) {
      const { all, code } = await here.run(line.slice("$ leafpace".length));
      found += `\n${line}\n${all.trimEnd()}\n[exit ${code}]\n`;
    }
    if (writing) writeFileSync(path, found);
    else expect(found).toBe(text);
  } finally {
    here.end();
  }
});
