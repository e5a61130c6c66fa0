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

test("a pipe gets all of a long result, and standard output holds nothing else", () => {
  const { stdout, stderr, status } = leafpace(["check", "--json"]);
  expect(stdout.length).toBeGreaterThan(500_000);
  const { problems } = JSON.parse(stdout) as { problems: readonly { code: string }[] };
  expect(problems.filter(({ code }) => code === "crop-unknown")).toHaveLength(4000);
  expect([stderr, status]).toEqual(["", 2]);
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
