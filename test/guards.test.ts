import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, test } from "vitest";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const src = join(root, "src");
const PLAY = join(src, "play.ts");

/** Rooms from the ground up: a room may use those of the rows above its own, and no other. */
const FLOORS: readonly (readonly string[])[] = [
  ["quantity", "problem"],
  ["farm"],
  ["weather"],
  ["folder", "cover"],
  ["growth"],
  ["watch", "learn"],
  ["decide"],
  ["sheet"],
  ["stories"],
  ["cli"],
];

const sources = (): string[] =>
  readdirSync(src, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(src, name));

const inRepository = (path: string): string => relative(root, path).split(sep).join("/");

/** Files right under src/ tell a whole story each; together they are the last room before the command. */
function roomOf(path: string): string | null {
  const match = /^src\/(?:([a-z]+)\/)?[^/]+\.ts$|^src\/([a-z]+)\//u.exec(path);
  return match === null ? null : (match[1] ?? match[2] ?? "stories");
}

const floorOf = (room: string): number => FLOORS.findIndex((rooms) => rooms.includes(room));

/** Wrong imports of one file, types as well as values, each as a sentence. */
function wrongImports(path: string, text: string): string[] {
  const room = roomOf(path);
  if (room === null) return [];
  if (floorOf(room) < 0) return [`${path} stands in a room "${room}" that the design does not know.`];
  const own = [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*"(\.[^"]+)"/gu)].map(([, imported]) =>
    join(dirname(path), imported!).split(sep).join("/"),
  );
  return own.flatMap((imported) => {
    const used = roomOf(imported);
    if (used === null || used === room || floorOf(used) < floorOf(room)) return [];
    return [`${path} imports ${imported}, but ${room} may not use ${used}.`];
  });
}

test("rooms import only along the arrows of the design", () => {
  const wrong = sources().flatMap((path) => wrongImports(inRepository(path), readFileSync(path, "utf8")));
  expect(wrong).toEqual([]);
});

test("an import against the arrow is named in a sentence, also one of a type alone", () => {
  const text = 'import type { Sheet } from "../sheet/index.ts";\nimport { x } from "./farm.ts";\n';
  expect(wrongImports("src/farm/crop.ts", text)).toEqual([
    "src/farm/crop.ts imports src/sheet/index.ts, but farm may not use sheet.",
  ]);
});

test("no file outside cli knows Node", () => {
  const knowing = sources()
    .filter((path) => roomOf(inRepository(path)) !== "cli")
    .filter((path) =>
      /(?:from|import)\s*\(?\s*["'](?:node:|fs["']|path["']|process["'])/u.test(readFileSync(path, "utf8")),
    )
    .map(inRepository);
  expect(knowing).toEqual([]);
});

test("everything but cli type-checks without Node and without a browser", () => {
  const require = createRequire(import.meta.url);
  const tsc = join(dirname(require.resolve("typescript/package.json")), "bin", "tsc");
  const { stdout, status } = spawnSync(process.execPath, [tsc, "-p", "src"], { cwd: root, encoding: "utf8" });
  expect([stdout, status]).toEqual(["", 0]);
});

test("the page's bundle holds no Node, no unit library and no reader of files", async () => {
  const { metafile } = await build({
    entryPoints: [PLAY],
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "browser",
    absWorkingDir: root,
    outdir: "unused",
    logLevel: "silent",
  });
  const held = Object.entries(metafile.inputs).flatMap(([path, { imports }]) => [
    path,
    ...imports.map(({ path: imported }) => imported),
  ]);
  const strangers = held.filter((path) =>
    /^node:|^src\/(?:cli|folder)\/|node_modules\/(?:mathjs|yaml|csv-parse|commander)\//u.test(path),
  );
  expect(strangers).toEqual([]);
});
