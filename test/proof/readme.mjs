// Rewrites what README.md shows of the program: the excerpt of the example's sheet, its list of what is safe to offer, messages
// for the crew, the table of limits and the summary of what was compared with numbers from outside, between their marks.
// Needs dist/: npm run build && node test/proof/readme.mjs

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root, withBundle } from "./bundle.mjs";

const readme = join(root, "README.md");

/** Stands for lines left out; and how many lines, tunnels and rows stay. */
const LEFT_OUT = "…";
const DANGER = 9;
const TUNNELS = 1;
const ROWS = 3;

const HEADING = /^[A-Z][A-Z ,]+$/u;

/** The example's whole sheet, by its headings. */
function sheet() {
  const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const [, ...parameters] = scripts.start.split(" ");
  const { stdout, stderr, status } = spawnSync(process.execPath, parameters, { cwd: root, encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
  return cut(stdout);
}

/** A sheet by its headings; what stands before the first is called "". */
function cut(text) {
  const sections = new Map([["", []]]);
  let at = "";
  for (const line of text.split("\n")) {
    if (HEADING.test(line)) {
      at = line;
      sections.set(at, []);
    }
    sections.get(at).push(line);
  }
  return sections;
}

/** Lines cut at blank ones. */
function paragraphs(lines) {
  return lines
    .join("\n")
    .split(/\n\n+/u)
    .map((text) => text.replace(/^\n+|\n+$/gu, "").split("\n"))
    .filter((paragraph) => paragraph.join("") !== "");
}

/** Lines up to the one at which something begins for the nth time. */
function until(lines, begins, n) {
  let seen = 0;
  const end = lines.findIndex((line) => begins(line) && ++seen > n);
  return end < 0 ? lines : [...lines.slice(0, end), LEFT_OUT];
}

/** The first danger, today's walk, the head of the grid and the first pick with something to cut. */
function excerpt() {
  const sections = sheet();
  const find = (name) => {
    const found = [...sections].find(([heading]) => heading.startsWith(name));
    if (found === undefined)
      throw new Error(`expected the heading ${name} in the sheet, found ${[...sections.keys()].join("; ")}`);
    return found[1];
  };
  const [title, ...urgent] = paragraphs(find(""));
  const danger = urgent.find(([line]) => line.startsWith("DANGER")) ?? urgent[0];
  const [pickHeading] = find("PICKS");
  const pick = paragraphs(find("PICKS")).find((lines) => lines.some((line) => line.startsWith("[ ]")));
  const today = find("TODAY").join("\n").trimEnd().split("\n");
  const glance = find("THE DAYS AT A GLANCE").join("\n").trimEnd().split("\n");
  return [
    [...title, "", ...danger.slice(0, DANGER), LEFT_OUT],
    today,
    until(glance, (line) => /, now /u.test(line), TUNNELS),
    [pickHeading, LEFT_OUT, ...until(pick, (line) => line.startsWith("[ ]"), ROWS)],
  ]
    .map((part) => part.join("\n"))
    .join("\n\n");
}

/** A table that a file beside this one computes. */
const table = (name, make) =>
  withBundle(name, async (outfile) => (await import(pathToFileURL(outfile).href))[make]());

/** What the README's first farm gets for an answer: its head and its picks. */
function first() {
  const text = readFileSync(readme, "utf8");
  const part = text.slice(text.indexOf("## A first answer"), text.indexOf("<!-- first -->"));
  const folder = mkdtempSync(join(tmpdir(), "leafpace-first-"));
  try {
    writeFileSync(join(folder, "forecast.txt"), /```text\n([\s\S]*?)```/u.exec(part)[1]);
    const lines = [...part.matchAll(/```sh\n([\s\S]*?)```/gu)].flatMap(([, block]) =>
      block.trim().split("\n"),
    );
    let printed = "";
    for (const line of lines) {
      const parameters = [...line.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain);
      const command = [join(root, "dist", "main.js"), ...parameters.slice(1)];
      const { stdout, stderr, status } = spawnSync(process.execPath, command, {
        cwd: folder,
        encoding: "utf8",
      });
      if (status !== 0) throw new Error(`${line}\n${stderr}`);
      printed = stdout;
    }
    const sections = cut(printed);
    const head = sections.get("").join("\n").trimEnd();
    const picks = sections.get("PICKS").join("\n").trimEnd();
    return `\`\`\`text\n${head}\n${LEFT_OUT}\n\n${picks}\n${LEFT_OUT}\n\`\`\``;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How many of the crew's messages are shown. */
const MESSAGES = 2;

/** The first messages for the crew, as the README's command prints them. */
function messages(language) {
  const example = join(root, "examples", "hollow-creek");
  const parameters = ["--farm", example, "week", "--on", "2026-04-20", "--crew", "-", "--language", language];
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [join(root, "dist", "main.js"), ...parameters],
    {
      encoding: "utf8",
    },
  );
  if (status !== 0) throw new Error(stderr);
  const shown = stdout.split("\n\n").slice(0, MESSAGES).join("\n\n");
  return `\`\`\`text\n${shown}\n${LEFT_OUT}\n\`\`\``;
}

/** A text with what stands between two marks replaced. */
function between(text, mark, inside) {
  const [open, close] = [`<!-- ${mark} -->`, `<!-- /${mark} -->`];
  const [from, to] = [text.indexOf(open), text.indexOf(close)];
  if (from < 0 || to < from) throw new Error(`README.md: expected ${open} … ${close}`);
  return `${text.slice(0, from + open.length)}\n${inside}\n${text.slice(to)}`;
}

/** The example's list of what is safe to offer, by the command the README shows for it. */
function promise() {
  const text = readFileSync(readme, "utf8");
  const [, line] = /^leafpace (week .*--promise -)$/mu.exec(text);
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [join(root, "dist", "main.js"), ...line.split(" ")],
    { cwd: join(root, "examples", "hollow-creek"), encoding: "utf8" },
  );
  if (status !== 0) throw new Error(stderr);
  return `\`\`\`text\n${stdout.trimEnd()}\n\`\`\``;
}

const PARTS = {
  first,
  promise,
  sheet: () => `\`\`\`text\n${excerpt()}\n\`\`\``,
  crew: () => messages("en"),
  "crew-es": () => messages("es"),
  limits: () => table("limits", "limitsTable"),
  accuracy: () => table("accuracy", "accuracyTable"),
};

const before = readFileSync(readme, "utf8");
let after = before;
for (const [mark, make] of Object.entries(PARTS)) {
  if (before.includes(`<!-- ${mark} -->`)) after = between(after, mark, await make());
  else process.stdout.write(`README.md shows no ${mark}: it has no <!-- ${mark} -->.\n`);
}
if (after !== before) writeFileSync(readme, after);
process.stdout.write(
  after === before ? "README.md is as the program prints it.\n" : "README.md rewritten.\n",
);
