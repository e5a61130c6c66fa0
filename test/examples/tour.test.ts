import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { run } from "../../src/cli/run.ts";
import { words } from "../cli/shell.ts";

const example = fileURLToPath(new URL("../../examples/hollow-creek/", import.meta.url));
const here = mkdtempSync(join(tmpdir(), "leafpace-tour-"));
afterAll(() => rmSync(here, { recursive: true, force: true }));

const lines = [
  ...readFileSync(join(example, "README.md"), "utf8").matchAll(/```sh\n([\s\S]*?)```/gu),
].flatMap(([, block]) => block!.trim().split("\n"));

test("the tour from Monday to Friday ends well at every step", async () => {
  expect(lines.slice(0, 2)).toEqual(["cp -r examples/hollow-creek my-copy", "cd my-copy"]);
  const copy = join(here, "my-copy");
  cpSync(example, copy, { recursive: true });
  for (const line of lines.slice(2)) {
    const told: string[] = [];
    const sink = { terminal: false, columns: undefined, write: (text: string) => void told.push(text) };
    const code = await run(words(line).slice(1), {
      stdout: sink,
      stderr: sink,
      env: {},
      cwd: copy,
      zone: "America/New_York",
      now: () => Date.parse("2026-04-24T18:20Z"),
      input: async () => Buffer.alloc(0),
    });
    expect([line, code, told.join("")]).toEqual([line, 0, expect.not.stringMatching(/NaN|undefined/u)]);
  }
  for (const page of ["monday.html", "wednesday.html", "wednesday.csv"])
    expect(existsSync(join(copy, page)), page).toBe(true);
  expect(readFileSync(join(copy, "notes.csv"), "utf8")).toContain("2026-04-24,leaf,S18,3 in 2.75 in");
  expect(readFileSync(join(copy, "notes.csv"), "utf8")).not.toContain("6.5 in");
}, 240_000);
