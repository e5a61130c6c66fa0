import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";

const examples = fileURLToPath(new URL("../../examples/", import.meta.url));
const made = mkdtempSync(join(tmpdir(), "made-"));

beforeAll(() => {
  execFileSync(process.execPath, [join(examples, "make.mjs"), made]);
});
afterAll(() => rmSync(made, { recursive: true }));

test.each(["logger-export.csv", "forecast.csv", "logger-wednesday.csv", "forecast-wednesday.csv"])(
  "the script that made %s makes the same bytes again",
  (file) => {
    const again = readFileSync(join(made, file));
    const kept = readFileSync(join(examples, "hollow-creek", file));
    expect(again.equals(kept)).toBe(true);
  },
);
