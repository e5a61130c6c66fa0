import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { MINIMAL } from "../folder/fixtures.ts";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const main = join(root, "dist", "main.js");
const dir = mkdtempSync(join(tmpdir(), "leafpace-"));

const leafpace = (parameters: readonly string[], env: Readonly<Record<string, string>> = {}) =>
  spawnSync(process.execPath, [main, ...parameters], {
    cwd: dir,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 100_000_000,
  });

beforeAll(() => {
  if (!existsSync(main)) spawnSync(process.execPath, [join(root, "src", "build.mjs")], { stdio: "inherit" });
  writeFileSync(join(dir, "farm.yaml"), MINIMAL);
  const lines = Array.from({ length: 4000 }, (_, index) => `S${index},tomato,T1,0,5,2026-03-01`);
  writeFileSync(join(dir, "successions.csv"), `id,crop,tunnel,from (m),to (m),sown\n${lines.join("\n")}\n`);
});

afterAll(() => rmSync(dir, { recursive: true, force: true }));

test("--version prints the package's version", () => {
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  expect(leafpace(["--version"])).toMatchObject({ stdout: `${version}\n`, stderr: "", status: 0 });
});

test("the same fault on thousands of lines is told once and counted", () => {
  const { stdout, status } = leafpace(["check", "--json"]);
  const { problems } = JSON.parse(stdout) as { problems: readonly { code: string; hint: string }[] };
  const unknown = problems.filter(({ code }) => code === "crop-unknown");
  expect([unknown.length, unknown[0]?.hint.split(". ").at(-1), status]).toEqual([
    1,
    "The same in 3999 more lines, to line 4001.",
    2,
  ]);
});

test("a pipe gets all of a long result, and standard output holds nothing else", () => {
  const example = join(root, "examples", "hollow-creek");
  const { stdout, stderr, status } = leafpace(["--farm", example, "week", "--on", "2026-04-20", "--json"]);
  expect(stdout.length).toBeGreaterThan(500_000);
  const { successions } = JSON.parse(stdout) as { successions: readonly unknown[] };
  expect(successions).toHaveLength(18);
  expect([stderr, status]).toEqual(["", 0]);
});

test("a reader that has seen enough gets no stack trace", async () => {
  const child = spawn(process.execPath, [main, "check"], { cwd: dir });
  let stderr = "";
  child.stderr.on("data", (chunk: Buffer) => {
    stderr += chunk.toString();
  });
  child.stdout.once("data", () => child.stdout.destroy());
  await new Promise((done) => child.on("close", done));
  expect(stderr).toBe("");
});

test("a home that does not exist is no hindrance", () => {
  expect(leafpace(["start", "green"], { HOME: "", USERPROFILE: "" }).status).toBe(0);
});
