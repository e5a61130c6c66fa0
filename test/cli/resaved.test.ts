import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decoded, textOrNot } from "../../src/cli/encoding.ts";
import { allRows, heldTable } from "../../src/cli/table.ts";
import { notText } from "../../src/cli/unreadable.ts";
import { catalogue, type Farm } from "../../src/farm/index.ts";
import { readFolder, type Table } from "../../src/folder/index.ts";
import { formatProblem, type Problem, type Read } from "../../src/problem/index.ts";

const FOLDER = new URL("../../examples/hollow-creek/", import.meta.url);
const NAMES = ["successions.csv", "pieces.csv", "notes.csv"] as const;
type Name = (typeof NAMES)[number];

const bytesOf = (name: string): Buffer => readFileSync(new URL(name, FOLDER));
const KNOWN = catalogue();

/** The example's folder with some of its files in other bytes. */
async function folderWith(changed: ReadonlyMap<string, Buffer>): Promise<Read<Farm>> {
  const unread: Problem[] = [];
  const table = async (file: Name): Promise<Table | null> => {
    const opened = heldTable(changed.get(file) ?? bytesOf(file), file);
    if (opened.table !== null) return { file, rows: await allRows(opened.table, unread) };
    unread.push(opened.problem);
    return null;
  };
  const bytes = changed.get("farm.yaml") ?? bytesOf("farm.yaml");
  const kind = textOrNot(bytes);
  const farm = "encoding" in kind ? { file: "farm.yaml", text: decoded(bytes, kind.encoding) } : null;
  if ("looksLike" in kind) unread.push(notText("farm.yaml", kind.looksLike));
  const [successions, pieces, notes] = await Promise.all([table(NAMES[0]), table(NAMES[1]), table(NAMES[2])]);
  return readFolder({ farm, successions, pieces, notes, unread }, KNOWN);
}

/** A farm without the lines its notes stand on, which a spreadsheet may move. */
const content = (farm: Farm | null): unknown =>
  farm === null ? null : { ...farm, notes: farm.notes.map((note) => ({ ...note, line: 0 })) };

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

type Parts = readonly [year: string, month: string, day: string];
const bare = (text: string): number => Number(text);
const days = ([year, month, day]: Parts): number =>
  Date.UTC(bare(year), bare(month) - 1, bare(day)) / 86_400_000 + 25_569;

/** Ways a spreadsheet writes a date, and a moment. */
const DATES: readonly ((parts: Parts) => string)[] = [
  (parts) => parts.join("-"),
  (parts) => parts.join("/"),
  ([year, month, day]) => `${bare(month)}/${bare(day)}/${year}`,
  ([year, month, day]) => `${bare(month)}/${bare(day)}/${year.slice(2)}`,
  ([year, month, day]) => `${day}.${month}.${year}`,
  ([year, month, day]) => `${bare(day)}. ${bare(month)}. ${year}`,
  ([year, month, day]) => `${day}/${month}/${year}`,
  ([year, month, day]) => `${bare(day)}-${MONTHS[bare(month) - 1]}-${year.slice(2)}`,
  ([year, month, day]) => `${MONTHS[bare(month) - 1]} ${bare(day)} ${year}`,
  ([year, month, day]) => `${MONTHS[bare(month) - 1]} ${bare(day)}, ${year}`,
];

const CLOCKS: readonly ((hour: number, minute: string) => string)[] = [
  (hour, minute) => `${hour}:${minute}`,
  (hour, minute) => `${String(hour).padStart(2, "0")}:${minute}:00`,
  (hour, minute) => `${hour % 12 === 0 ? 12 : hour % 12}:${minute} ${hour < 12 ? "AM" : "PM"}`,
];

interface Habit {
  readonly separator: string;
  readonly stated: boolean;
  readonly encoding: (text: string) => Buffer;
  readonly mark: boolean;
  readonly lineEnd: string;
  readonly quoteAll: boolean;
  readonly decimalComma: boolean;
  readonly date: number;
  readonly serial: boolean;
  readonly clock: number;
  readonly order: readonly number[];
  readonly emptyColumns: number;
  readonly emptyRows: number;
  readonly apostrophe: boolean;
}

const habit: fc.Arbitrary<Habit> = fc.record({
  separator: fc.constantFrom(",", ";", "\t"),
  stated: fc.boolean(),
  encoding: fc.constantFrom<Habit["encoding"]>(
    (text) => Buffer.from(text),
    (text) => Buffer.from(text, "utf16le"),
    (text) => Buffer.from(text, "utf16le").swap16(),
    (text) => Buffer.from(text.replace("\uFEFF", ""), "latin1"),
  ),
  mark: fc.boolean(),
  lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
  quoteAll: fc.boolean(),
  decimalComma: fc.boolean(),
  date: fc.nat(DATES.length - 1),
  serial: fc.boolean(),
  clock: fc.nat(CLOCKS.length - 1),
  order: fc.array(fc.nat(), { minLength: 9, maxLength: 9 }),
  emptyColumns: fc.nat(3),
  emptyRows: fc.nat(3),
  apostrophe: fc.boolean(),
});

function cellAs(cell: string, how: Habit): string {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?: (\d\d):(\d\d))?$/u.exec(cell);
  if (match !== null) {
    const [, year, month, day, hour, minute] = match as unknown as string[];
    const parts: Parts = [year!, month!, day!];
    if (how.serial) {
      const share = hour === undefined ? "" : ((bare(hour) + bare(minute!) / 60) / 24).toFixed(6).slice(1);
      const number = `${days(parts)}${share}`;
      return how.decimalComma && how.separator !== "," ? number.replace(".", ",") : number;
    }
    const date = DATES[how.date]!(parts);
    return hour === undefined ? date : `${date} ${CLOCKS[how.clock]!(bare(hour), minute!)}`;
  }
  if (how.decimalComma && how.separator !== ",") return cell.replace(/(\d)\.(\d)/gu, "$1,$2");
  return how.apostrophe && /^S\d/u.test(cell) ? `'${cell}` : cell;
}

/** A table of the example as a spreadsheet with these habits saves it. */
function resaved(name: Name, how: Habit): Buffer {
  const records = parse(bytesOf(name), { relax_column_count: true }) as string[][];
  const columns = records[0]!.map((_, index) => index).sort((a, b) => how.order[a]! - how.order[b]!);
  const cell = (text: string): string =>
    how.quoteAll || text.includes(how.separator) ? `"${text.replaceAll('"', '""')}"` : text;
  const lines = records.map((record) => {
    const cells = columns.map((index) => cell(cellAs(record[index]!, how)));
    return [...cells, ...Array.from({ length: how.emptyColumns }, () => "")].join(how.separator);
  });
  const empty = how.separator.repeat(records[0]!.length + how.emptyColumns - 1);
  const text = [
    ...(how.stated ? [`sep=${how.separator}`] : []),
    ...lines,
    ...Array.from({ length: how.emptyRows }, () => empty),
    "",
  ].join(how.lineEnd);
  return how.encoding(how.mark ? `\uFEFF${text}` : text);
}

describe("the example's own files", () => {
  test("re-saved by any spreadsheet they read to the same farm", async () => {
    const before = await folderWith(new Map());
    expect(before.problems.map(formatProblem)).toEqual([]);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...NAMES), habit, async (name, how) => {
        const after = await folderWith(new Map([[name, resaved(name, how)]]));
        expect(after.problems.map(formatProblem)).toEqual([]);
        expect(content(after.value)).toEqual(content(before.value));
      }),
      { numRuns: 120, seed: 4 },
    );
  });

  test("with any bytes changed they give a farm or problems, and nothing breaks", async () => {
    const change = fc.record({
      at: fc.nat(),
      cut: fc.nat(6),
      put: fc.oneof(
        fc.uint8Array({ maxLength: 4 }),
        fc
          .constantFrom('"', ",", "\n", ":", "- ", "[", "\u0000", "é", "1e999", "-", "0")
          .map((text) => Buffer.from(text)),
      ),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...NAMES, "farm.yaml"),
        fc.array(change, { minLength: 1, maxLength: 3 }),
        async (name, changes) => {
          let bytes = bytesOf(name);
          for (const { at, cut, put } of changes) {
            const from = at % (bytes.length + 1);
            bytes = Buffer.concat([bytes.subarray(0, from), put, bytes.subarray(from + cut)]);
          }
          const { value, problems } = await folderWith(new Map([[name, bytes]]));
          expect(value === null).toBe(problems.some(({ weight }) => weight === "stops"));
          for (const problem of problems) {
            expect(formatProblem(problem)).not.toMatch(/NaN|undefined|Infinity|\[object|null/u);
            expect(problem.hint).not.toBe("");
          }
        },
      ),
      { numRuns: 300, seed: 9 },
    );
  });
});
