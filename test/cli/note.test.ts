import { existsSync, mkdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { encoded } from "../../src/cli/encode.ts";
import type { Encoding } from "../../src/cli/encoding.ts";
import { withNotes, withoutNotes } from "../../src/cli/notesAppend.ts";
import { allRows, heldTable } from "../../src/cli/table.ts";
import { guarded, notesFile, noteValue } from "../../src/folder/index.ts";
import { type Shell, shell } from "./shell.ts";

const open: Shell[] = [];
const begin = (): Shell => {
  const here = shell("walked");
  open.push(here);
  return here;
};
afterEach(() => {
  for (const here of open.splice(0)) here.end();
});

const notes = (here: Shell): string => join(here.dir, "notes.csv");
const bytes = (here: Shell): string => readFileSync(notes(here), "latin1");
const write = (here: Shell, text: string): void => writeFileSync(notes(here), text, "latin1");

describe("notes are appended in the form the file has", () => {
  test.each([
    [
      "semicolons, line ends and order of columns",
      "remark;value;about;kind;when\r\n;4 in;S01;leaf;2026-04-18\r\n",
      "a, b; c;4.5 in;S01;leaf;2026-04-19\r\n".replace("a, b; c", '"a, b; c"'),
    ],
    ["tabs", "when\tkind\tabout\tvalue\tremark\n", "2026-04-19\tleaf\tS01\t4.5 in\ta, b; c\n"],
    [
      "a last line without its end, a byte order mark, letters of two bytes",
      "\xef\xbb\xbfwhen,kind,about,value,remark\n2026-04-18,leaf,S01,4 in,caf\xc3\xa9",
      '\n2026-04-19,leaf,S01,4.5 in,"a, b; c"\n',
    ],
    [
      "letters of one byte, a column that is the grower's own",
      "when,kind,about,value,who,remark\n2026-04-18,leaf,S01,4 in,Zo\xe9,\n",
      '2026-04-19,leaf,S01,4.5 in,,"a, b; c"\n',
    ],
    ["remarks alone", "# mine\n", 'when,kind,about,value,remark\n2026-04-19,leaf,S01,4.5 in,"a, b; c"\n'],
    ["nothing", "", 'when,kind,about,value,remark\n2026-04-19,leaf,S01,4.5 in,"a, b; c"\n'],
  ])("%s", async (_what, before, added) => {
    const here = begin();
    write(here, before);
    const { code } = await here.run(["note", "S01", "4½", "in", "yesterday", "-", "a, b; c"]);
    expect([code, bytes(here)]).toEqual([0, before + added]);
    expect((await here.run("check")).code).toBe(0);
    await here.run("note --undo");
    expect(bytes(here)).toBe(before);
  });

  test("a folder without notes.csv gets one, and loses it again", async () => {
    const here = begin();
    const { unlinkSync } = await import("node:fs");
    unlinkSync(notes(here));
    await here.run("note S01 4 in yesterday");
    expect(bytes(here)).toBe("when,kind,about,value,remark\n2026-04-19,leaf,S01,4 in,\n");
    await here.run("note --undo");
    expect([existsSync(notes(here)), existsSync(join(here.dir, ".leafpace.undo.json"))]).toEqual([
      false,
      false,
    ]);
  });

  test("a remark no letter of the file can hold is refused, and nothing is written", async () => {
    const here = begin();
    const before = "when,kind,about,value,remark\n2026-04-18,leaf,S01,4 in,Zo\xe9\n";
    write(here, before);
    const { stderr, code } = await here.run(["note", "S01", "4", "in", "-", "日光"]);
    expect([code, stderr, bytes(here)]).toEqual([
      2,
      "notes.csv: expected remarks in the letters of windows-1252, as the file is written, received others. Save the file as UTF-8, or write the remark in plain letters.\nNothing was noted.\n",
      before,
    ]);
  });

  test("letters of one byte far down a long file are its own, and stay so", async () => {
    const here = begin();
    const line = "2026-04-18,leaf,S01,4 in,\n";
    const before = `when,kind,about,value,remark\n${line.repeat(4000)}2026-04-19,leaf,S01,5 in,Zo\xe9\n`;
    write(here, before);
    const { stderr, code } = await here.run(["note", "S01", "4½", "in", "yesterday", "-", "près"]);
    expect([code, stderr]).toEqual([0, 'See "leafpace week" for the schedule.\n']);
    expect(bytes(here)).toBe(`${before}2026-04-19,leaf,S01,4.5 in,pr\xe8s\n`);
    await here.run("note --undo");
    expect(bytes(here)).toBe(before);
  });

  test("what a spreadsheet would run stays text", async () => {
    const here = begin();
    await here.run(["note", "S01", "4", "in", "yesterday", "#", "=HYPERLINK(1)"]);
    expect(bytes(here).split("\n").at(-2)).toBe("2026-04-19,leaf,S01,4 in,'=HYPERLINK(1)");
  });
});

describe("taking back", () => {
  test("goes run by run, and a walk is one", async () => {
    const here = begin();
    const before = bytes(here);
    await here.run("note S01 4 in yesterday");
    const between = bytes(here);
    await here.run("note --file -", { input: "S02 3 in\nS09 up\n" });
    await here.run("note --undo");
    expect(bytes(here)).toBe(between);
    await here.run("note --undo");
    expect(bytes(here)).toBe(before);
    expect((await here.run("note --undo")).stderr).toBe(
      'notes.csv: expected a line that "leafpace note" has written, received none that is remembered. Take lines out by hand.\n',
    );
  });

  test("is refused where the grower wrote on, with the lines to take out", async () => {
    const here = begin();
    await here.run("note --file -", { input: "S02 3 in yesterday\nS09 up yesterday\n" });
    const after = `${bytes(here)}2026-04-20,leaf,S01,4 in,mine\n`;
    write(here, after);
    const { stderr, code } = await here.run("note --undo");
    expect([code, stderr, bytes(here)]).toEqual([
      2,
      `notes.csv:5: expected the last notes at its end, as they were written, received changes since; there is still "2026-04-19,leaf,S02,3 in,". Take this line out by hand.
notes.csv:6: expected the last notes at its end, as they were written, received changes since; there is still "2026-04-19,emerged,S09,,". Take this line out by hand.

2 problems to put right first.
`,
      after,
    ]);
  });

  test("reaches back twenty runs", async () => {
    const here = begin();
    for (let run = 1; run <= 22; run++) await here.run(`note S01 ${run} cm yesterday`);
    const kept = JSON.parse(readFileSync(join(here.dir, ".leafpace.undo.json"), "utf8"));
    expect(kept.appended.flatMap(({ lines }: { lines: string[] }) => lines)).toEqual(
      Array.from({ length: 20 }, (_, run) => `2026-04-19,leaf,S01,${run + 3} cm,`),
    );
  });

  test("goes on to the run before once the lines are taken out by hand", async () => {
    const here = begin();
    const before = bytes(here);
    await here.run("note S01 4 in yesterday");
    const between = bytes(here);
    await here.run("note S02 3 in yesterday");
    write(here, between);
    await here.run("note --undo");
    expect(bytes(here)).toBe(before);
  });

  test("works although earlier lines were edited", async () => {
    const here = begin();
    await here.run("note S01 4 in yesterday");
    write(here, bytes(here).replace("first cut", "cut by Jo"));
    await here.run("note --undo");
    expect(bytes(here).endsWith("2.8 in,\n")).toBe(true);
    expect(bytes(here)).toContain("cut by Jo");
  });

  test("a memory nobody can read is as good as none", async () => {
    const here = begin();
    await here.run("note S01 4 in yesterday");
    const after = bytes(here);
    for (const text of ["", "{", "null", '{"format":"leafpace undo","appended":[{}]}', "[]"]) {
      writeFileSync(join(here.dir, ".leafpace.undo.json"), text);
      expect((await here.run("note --undo")).code).toBe(2);
    }
    expect(bytes(here)).toBe(after);
    expect((await here.run("note S02 4 in yesterday")).code).toBe(0);
  });
});

test("what another run has noted meanwhile is known", async () => {
  const here = begin();
  const walk = "S01 4 in yesterday\nS02 3 in yesterday\n";
  const answers = await Promise.all(
    Array.from({ length: 3 }, () => here.run("note --file -", { input: walk })),
  );
  expect(answers.map(({ stderr }) => stderr).sort()).toEqual([
    "Nothing new to write.\n",
    "Nothing new to write.\n",
    'See "leafpace week" for the schedule.\n',
  ]);
  expect(bytes(here).match(/^2026-04-19,leaf,S0[12],/gmu)).toHaveLength(2);
});

test("nothing is written while another leafpace writes into the folder", async () => {
  const here = begin();
  const before = bytes(here);
  const lock = join(here.dir, ".leafpace.lock");
  mkdirSync(lock);
  const ahead = Date.now() / 1000 + 3600;
  utimesSync(lock, ahead, ahead);
  const { code, stderr } = await here.run("note S01 4 in");
  expect([code, bytes(here)]).toEqual([2, before]);
  expect(stderr).toBe(
    ".leafpace.lock: expected no other leafpace writing into this folder, received one that still is. Wait until it has finished, then run this again.\n",
  );
});

test("the same walk pasted once more writes nothing", async () => {
  const here = begin();
  const input =
    "Sun walk:\nS01 4 in\nCreek 1 cover off\nS09 up\nS03 cut 14 lb last\nS04 lost 20 %\nS05 resown\n";
  await here.run("note --file -", { input });
  const after = bytes(here);
  const again = await here.run("note --file -", { input });
  expect([bytes(here), again.stderr]).toEqual([after, "Nothing new to write.\n"]);
  expect(again.stdout.match(/^Already noted: /gmu)).toHaveLength(6);
});

/** A note's cells, with its remark as the grower wrote it. */
const row = fc.record({
  when: fc.constantFrom("2026-04-18", "2026-04-19 07:10"),
  kind: fc.constant("leaf"),
  about: fc.constantFrom("S01", "S02"),
  value: fc.constantFrom("4 in", "4 in 3.5 in"),
  remark: fc
    .oneof(
      fc.constantFrom("", "=1", "'=1", "-", "'", "#", "@x", '4" long', "a;b,c\td", "é"),
      fc.string({ unit: fc.constantFrom(..."abcé=+-@'\"#,; ") }),
    )
    .map((text) => text.replace(/\s+/gu, " ").trim()),
});

const form = fc.record({
  encoding: fc.constantFrom<Encoding>("utf-8", "utf-16le", "windows-1252"),
  mark: fc.boolean(),
  separator: fc.constantFrom(",", ";", "\t"),
  lineEnd: fc.constantFrom("\n", "\r\n"),
  ended: fc.boolean(),
  columns: fc.shuffledSubarray(["when", "kind", "about", "value", "remark"], { minLength: 5 }),
  lines: fc.integer({ min: 0, max: 3 }),
});

test("a note is appended behind what is there, read back as it is, and taken back byte for byte", async () => {
  const clock = { zone: "America/New_York", walks: { morning: 7, evening: 18 } };
  const cells: Record<string, string> = {
    when: "2026-04-17",
    kind: "leaf",
    about: "S01",
    value: "5 in",
    remark: "Zoé saw it",
  };
  await fc.assert(
    fc.asyncProperty(form, fc.array(row, { minLength: 1, maxLength: 4 }), async (how, rows) => {
      const { encoding, mark, separator, lineEnd, ended, columns, lines } = how;
      const line = columns.map((name) => cells[name]).join(separator);
      const all = [columns.join(separator), ...new Array<string>(lines).fill(line)];
      const text = all.join(lineEnd) + (ended ? lineEnd : "");
      const marked = encoding === "utf-16le" || (mark && encoding === "utf-8") ? `\ufeff${text}` : text;
      const before = encoded(marked, encoding)!;
      // Without a letter beyond the plain ones, a file of one byte a letter is one of any other.
      fc.pre(encoding !== "windows-1252" || lines > 0);
      const after = await withNotes(
        before,
        rows.map((each) => ({ ...each, remark: guarded(each.remark) })),
      );
      if ("problem" in after) throw new Error(JSON.stringify(after.problem));
      expect(after.bytes.subarray(0, before.length).equals(before)).toBe(true);
      expect(withoutNotes(after.bytes, after.appended)!.equals(before)).toBe(true);
      const { table } = heldTable(after.bytes, "notes.csv");
      const read = notesFile({ file: "notes.csv", rows: await allRows(table!, []) }, clock, []);
      expect(read.problems).toEqual([]);
      const found = [...read.notes].sort((a, b) => a.line - b.line).slice(lines);
      expect(
        found.map((note) => ({
          kind: note.kind,
          about: note.kind === "leaf" ? note.succession : null,
          value: noteValue(note, "US"),
          remark: note.remark,
        })),
      ).toEqual(rows.map(({ when: _when, ...rest }) => rest));
    }),
    { numRuns: 300, seed: 7 },
  );
});
