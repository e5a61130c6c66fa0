import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { shell, words } from "./cli/shell.ts";
import { accuracyTable } from "./proof/accuracy.ts";
import { limitsTable } from "./proof/limits.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const readme = readFileSync(join(root, "README.md"), "utf8");
const pack = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
  readonly description: string;
  readonly scripts: Readonly<Record<string, string>>;
};

const blocks = (language: string): readonly string[] =>
  [...readme.matchAll(/```(\w+)\n([\s\S]*?)```/gu)]
    .filter(([, name]) => name === language)
    .map(([, , text]) => text!);

const marked = (mark: string): string =>
  new RegExp(`<!-- ${mark} -->\n([\\s\\S]*?)\n<!-- /${mark} -->`, "u").exec(readme)![1]!;

const shown = blocks("sh").flatMap((block) => block.trim().split("\n"));

/** The first farm begins in a folder of its own; every other command runs in a copy of the example. */
const first = shown.filter((line) => line.includes("my-farm"));
const commands = shown.filter((line) => line.startsWith("leafpace ") && !first.includes(line));

/** Commands whose output stands in the README, so that it is compared as well. */
const PROMISE = commands.find((each) => each.endsWith("--promise -"))!;
const CREW = [
  ["crew", "leafpace week --on 2026-04-20 --crew -"],
  ["crew-es", "leafpace week --on 2026-04-20 --crew - --language es"],
] as const;
const compared: readonly string[] = [PROMISE, ...CREW.map(([, line]) => line)];

let folder: string;
let copy: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "leafpace-readme-"));
  copy = join(folder, "my-copy");
  cpSync(join(root, "examples", "hollow-creek"), copy, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const node = (parameters: readonly string[], cwd: string) =>
  spawnSync(process.execPath, parameters, { cwd, encoding: "utf8", env: { ...process.env, NO_COLOR: "1" } });

/** What npm start runs. */
const start = () => node(pack.scripts.start!.replace(/^node /u, "").split(" "), root);

const ran = new Map<string, ReturnType<typeof node>>();
/** What a line of the README comes to in a folder; each is run once. */
function leafpace(line: string, cwd: string): ReturnType<typeof node> {
  const key = `${cwd} ${line}`;
  if (!ran.has(key)) ran.set(key, node([join(root, "dist", "main.js"), ...words(line).slice(1)], cwd));
  return ran.get(key)!;
}

/** Every line of an excerpt is printed, in that order; … stands for lines left out. */
function expectPrinted(excerpt: string, stdout: string): void {
  const printed = stdout.split("\n");
  let at = 0;
  for (const line of excerpt.split("\n").slice(1, -1)) {
    if (line === "…" || line === "") continue;
    const found = printed.indexOf(line, at);
    expect(
      found,
      `"${line}" is printed after line ${at}; if the sheet has changed, run node test/proof/readme.mjs`,
    ).toBeGreaterThanOrEqual(at);
    at = found + 1;
  }
}

describe("the README", () => {
  test("says what the program is in one line, as package.json does", () => {
    const [title, , line] = readme.split("\n");
    expect(title).toBe("# Leafpace");
    expect(line).toBe(pack.description);
    expect(line!.length).toBeLessThan(120);
  });

  test("ends with the licence", () => {
    const headings = [...readme.matchAll(/^## (.*)$/gmu)].map(([, heading]) => heading);
    expect(headings.at(-1)).toBe("Licence");
    expect(readme.trimEnd().split("\n").at(-1)).toBe("MIT");
  });

  test("links to no heading and no file that is not there", () => {
    const anchors = [...readme.matchAll(/^## (.*)$/gmu)].map(
      ([, heading]) => `#${heading!.toLowerCase().replaceAll(" ", "-")}`,
    );
    const links = [...readme.matchAll(/\]\(([^)]+)\)/gu)].map(([, link]) => link!);
    expect(links.filter((link) => link.startsWith("#") && !anchors.includes(link))).toEqual([]);
    for (const link of links.filter((other) => !other.startsWith("#")))
      expect(readFileSync(join(root, link), "utf8")).not.toBe("");
  });

  test("shows only commands that are tested here, set up the machine, or lead to the copied example", () => {
    const others = shown.filter((line) => !line.startsWith("leafpace ") && line !== "npm start");
    expect(others).toEqual([
      "npm test",
      "npm install",
      "npx leafpace",
      "npm install -g .",
      "cp -r examples/hollow-creek my-copy",
      "cd my-copy",
    ]);
  });

  test("shows a sheet whose every line npm start prints, in that order", () => {
    const { status, stdout } = start();
    expect(status).toBe(0);
    expect(marked("sheet").split("\n").length).toBeLessThan(74);
    expectPrinted(marked("sheet"), stdout);
  });

  test("gives a first answer in two minutes whose every line is printed, in that order", () => {
    const here = join(folder, "first");
    mkdirSync(here);
    writeFileSync(join(here, "forecast.txt"), blocks("text")[0]!);
    const answers = first.filter((line) => !line.includes(" note ")).map((line) => leafpace(line, here));
    expect(answers.map(({ status, stderr }) => [status, /error/iu.test(stderr)])).toEqual(
      answers.map(() => [0, false]),
    );
    expectPrinted(marked("first"), answers.at(-1)!.stdout);
  });

  test("shows the list of what is safe to offer as it is printed", () => {
    const { status, stdout, stderr } = leafpace(PROMISE, copy);
    expect([status, stderr]).toEqual([0, ""]);
    expect(marked("promise")).toBe(`\`\`\`text\n${stdout.trimEnd()}\n\`\`\``);
  });

  test.each(CREW)("shows messages for the %s that its command prints, line by line", (mark, line) => {
    expect(commands).toContain(line);
    const { status, stdout: printed, stderr } = leafpace(line, copy);
    expect([status, stderr]).toEqual([0, ""]);
    const excerpt = marked(mark).split("\n").slice(1, -2).join("\n");
    expect(printed.startsWith(excerpt)).toBe(true);
  });

  test("sums up the numbers from outside as the program compares them", () => {
    expect(marked("accuracy")).toBe(accuracyTable());
  });

  test("gives the limits of covers as the code computes them on measured weather", () => {
    expect(marked("limits")).toBe(limitsTable());
  });

  test("imports the library in an example that runs", () => {
    const [example] = blocks("js");
    const library = pathToFileURL(join(root, "dist", "index.js")).href;
    const file = join(folder, "example.mjs");
    writeFileSync(file, example!.replace('"leafpace"', JSON.stringify(library)));
    const { status, stdout, stderr } = node([file], folder);
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(stdout).toMatch(/^18 days after emergence at 14 °C: \d+\.\d cm\n/u);
  });
});

describe("a command the README shows ends well in a copy of the example:", () => {
  // Without a process each: the tests above run the built command.
  const here = shell(null);
  afterAll(here.end);
  test.each(commands.filter((line) => !compared.includes(line)))("%s", async (line) => {
    const { code, stderr } = await here.run(words(line).slice(1), { cwd: copy });
    expect(stderr).not.toMatch(/error/iu);
    expect(code).toBe(0);
  });
});
