import { spawnSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { formatProblem, type Problem } from "../../src/problem/index.ts";
import { shell } from "../cli/shell.ts";
import { readBack } from "./readBack.ts";

const here = dirname(fileURLToPath(import.meta.url));
const corpus = join(here, "corpus");

/** UTC hour, mean, readings, lowest, highest. [°C] */
type Hour = readonly [string, number, number, number, number];
/** Date, low, high. [°C] */
type Day = readonly [string, number, number];

interface Expected {
  readonly about: string;
  /** Name of the file as found. */
  readonly file: string;
  /** Options on the command line. */
  readonly args: readonly string[];
  readonly farm: {
    readonly zone: string;
    readonly units: "US" | "metric";
    readonly sensors: readonly string[];
  };
  readonly hours?: Readonly<Record<string, readonly Hour[]>>;
  readonly days?: Readonly<Record<string, readonly Day[]>>;
  /** Hours that may hold anything. */
  readonly unchecked?: readonly string[];
  readonly read?: {
    readonly rows?: number;
    readonly used?: number;
    readonly dropped?: Readonly<Record<string, number>>;
  };
  /** Present: the reader may warn, and must with these codes. Absent: it must not. */
  readonly warns?: readonly string[];
  /** One of the problems has one of the codes, the line, and a message with all the names; nothing is stored. */
  readonly problem?: {
    readonly code?: string | readonly string[];
    readonly line?: number;
    readonly names?: readonly string[];
  };
}

interface Answer {
  readonly files?: readonly {
    readonly read?: {
      readonly rows: number;
      readonly used: number;
      readonly dropped: readonly { readonly reason: string; readonly count: number }[];
    };
  }[];
  readonly problems: readonly Problem[];
}

const expectedOf = (name: string): Expected =>
  JSON.parse(readFileSync(join(corpus, name, "expected.json"), "utf8")) as Expected;

const farmText = ({ farm: { zone, units, sensors } }: Expected): string => `name: Little Field
units: ${units}
place: { latitude: 44.12, longitude: -72.84, elevation: 190 m, zone: ${zone} }
markets:
  - { id: friday, day: Friday, picks: [ { time: "6:00" } ] }
tunnels:
  - { id: T1, length: 15 m, hoops: wire }
sensors: { ${sensors.map((sensor) => `${sensor}: ${sensor === "outside" ? "outside" : "T1"}`).join(", ")} }
`;

/** Imports a log into a farm folder of its own and reads back what is stored. */
async function imported(name: string, expected: Expected) {
  const folder = shell(null);
  try {
    writeFileSync(join(folder.dir, "farm.yaml"), farmText(expected));
    copyFileSync(join(corpus, name, expected.file), join(folder.dir, expected.file));
    const { code, all, stdout } = await folder.run(["import", expected.file, "--json", ...expected.args]);
    const answer = stdout.startsWith("{") ? (JSON.parse(stdout) as Answer) : { problems: [] };
    return { code, all, answer, stored: await readBack(folder.dir) };
  } finally {
    folder.end();
  }
}

/** A hundredth at most apart, the store's thousandth included. [°C] */
const WITHIN = 0.0065;
const near = (found: number, wanted: number): boolean => Math.abs(found - wanted) <= WITHIN;

/** The wanted row where the found one is near it, so that a difference shows the numbers that differ. */
const laidOver = <Row extends readonly (string | number)[]>(
  found: readonly Row[],
  wanted: readonly Row[],
): readonly Row[] => {
  const byKey = new Map(wanted.map((row) => [row[0], row]));
  return found.map((row) => {
    const other = byKey.get(row[0]!);
    const same = other?.every((cell, index) => {
      const own = row[index];
      return typeof cell === "number" && typeof own === "number" ? near(own, cell) : cell === own;
    });
    return same === true ? other! : row;
  });
};

const CODES = (code: string | readonly string[]): readonly string[] =>
  typeof code === "string" ? [code] : code;

async function check(name: string): Promise<void> {
  const expected = expectedOf(name);
  const { code, all, answer, stored } = await imported(name, expected);
  expect(all).not.toMatch(/\bNaN\b|\bundefined\b|\n\s+at .*:\d+/u);
  const { problem } = expected;
  if (problem !== undefined) {
    // The log's own name says nothing: it often ends with csv.
    const words = (told: Problem): string =>
      formatProblem({ ...told, file: told.file === expected.file ? "" : told.file }).toLowerCase();
    const fitting = answer.problems.filter(
      (told) =>
        (problem.code === undefined || CODES(problem.code).includes(told.code)) &&
        (problem.line === undefined || problem.line === told.line) &&
        (problem.names ?? []).every((word) => words(told).includes(word.toLowerCase())),
    );
    expect([code, fitting.length, answer.problems], all).toEqual([2, 1, answer.problems]);
    expect(stored).toEqual({ hours: {}, days: {} });
    return;
  }
  expect(code, all).toBe(0);
  const codes = answer.problems.map((told) => told.code);
  if (expected.warns === undefined) expect(codes).toEqual([]);
  else expect(codes).toEqual(expect.arrayContaining([...expected.warns]));
  for (const kind of ["hours", "days"] as const) {
    const wanted = expected[kind] ?? {};
    expect(Object.keys(stored[kind]).sort()).toEqual(Object.keys(wanted).sort());
    for (const [sensor, rows] of Object.entries(wanted)) {
      const found = stored[kind][sensor]!.filter(([when]) => !expected.unchecked?.includes(when));
      expect(laidOver<readonly (string | number)[]>(found, rows), sensor).toEqual(rows);
    }
  }
  if (expected.read === undefined) return;
  const read = answer.files![0]!.read!;
  const { rows = read.rows, used = read.used, dropped = {} } = expected.read;
  expect([read.rows, read.used]).toEqual([rows, used]);
  const found = Object.fromEntries(read.dropped.map(({ reason, count }) => [reason, count]));
  expect(found).toMatchObject(dropped);
}

describe("a log as found", () => {
  for (const name of readdirSync(corpus).sort())
    test(`${name}: ${expectedOf(name).about}`, () => check(name));
});

/** Every file below a folder, with its bytes. */
const contents = (folder: string): ReadonlyMap<string, string> =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .map((path) => [relative(folder, path), readFileSync(path, "latin1")]),
  );

test("the corpus is what make.mjs writes", () => {
  const made = mkdtempSync(join(tmpdir(), "leafpace-"));
  spawnSync(process.execPath, [join(here, "make.mjs"), made]);
  const [own, fresh] = [contents(corpus), contents(made)];
  rmSync(made, { recursive: true });
  const different = [...new Set([...own.keys(), ...fresh.keys()])].filter(
    (path) => own.get(path) !== fresh.get(path),
  );
  expect(different).toEqual([]);
});
