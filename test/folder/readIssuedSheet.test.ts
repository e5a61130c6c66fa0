import { describe, expect, test } from "vitest";
import { readIssuedSheet, sheetName, sheetNamed } from "../../src/folder/index.ts";
import { formatProblem } from "../../src/problem/index.ts";
import { instant } from "../../src/quantity/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import { FRIDAY, sample } from "../sheet/sample.ts";

const FILE = "sheets/2026-04-20T1059Z.json";
const text = weekJson(sample());
const told = (changed: string): readonly string[] =>
  readIssuedSheet(FILE, changed).problems.map(formatProblem);
/** As much of its form as is changed here. */
interface Loose {
  readonly successions: { sown: unknown; crop: unknown; readonly reach: { planned: unknown } }[];
}

/** The sheet with something in it changed. */
const changed = (change: (sheet: Loose) => void): string => {
  const sheet = JSON.parse(text);
  change(sheet);
  return JSON.stringify(sheet);
};
const AGAIN = "It was changed by hand or cut off: take it away or bring it back from a copy.";

describe("an issued sheet", () => {
  test("is read back as it was given out", () => {
    const { sheet, problems } = readIssuedSheet(FILE, text);
    const outcome = sample();
    expect(problems).toEqual([]);
    expect([sheet!.version, sheet!.on, sheet!.days]).toEqual([1, outcome.on, outcome.days]);
    const planned = outcome.tunnels.flatMap(({ changes }) => changes);
    expect(sheet!.changes.map(({ walk, tunnel, from, to }) => [walk.at, tunnel, from, to])).toEqual(
      planned.map(({ walk, tunnel, from, to }) => [walk.at, tunnel.id, from, to]),
    );
    for (const [i, outlook] of outcome.successions.entries()) {
      const read = sheet!.successions[i]!;
      expect(read).toMatchObject({
        succession: outlook.succession.id,
        crop: outlook.crop.id,
        cropName: outlook.crop.name,
        sown: outlook.succession.sown,
        smallest: outlook.crop.smallest,
        largest: outlook.crop.largest,
        reach: outlook.reach.planned,
        early: outlook.reach.spread.planned.early,
        late: outlook.reach.spread.planned.late,
      });
      expect(read.atPicks.map(({ size, odds, weight }) => ({ size, odds, weight }))).toEqual(
        outlook.atPicks.map(({ planned, odds, weight }) => ({ size: planned, odds, weight })),
      );
      const { fate } = outlook;
      expect(read.fate?.as ?? "none").toBe(fate.kind === "none" ? "none" : fate.as);
      if (fate.kind === "hold") expect(read.fate?.cut).toBe(fate.cut);
    }
    expect(sheet!.products.map(({ product, expected, ordered }) => ({ product, expected, ordered }))).toEqual(
      outcome.products.map(({ product, expected, ordered }) => ({ product, expected, ordered })),
    );
    expect(sheet!.walks).toEqual(outcome.walks.map(({ at, date, part }) => ({ at, date, part })));
    expect(sheet!.tunnels).toEqual(outcome.tunnels.map(({ tunnel }) => tunnel.id));
    expect(sheet!.promises).toEqual(
      outcome.promises.map(({ product, market, marketDate, safe }) => ({
        product,
        market,
        marketDate,
        safe,
      })),
    );
    expect(sheet!.products[0]!.pick).toEqual({
      market: "stall",
      marketDate: FRIDAY.marketDate,
      at: FRIDAY.at,
      planned: true,
    });
  });

  test("may hold fields nobody knew when this was written", () => {
    const more = changed((sheet) => {
      Object.assign(sheet, { share: { rounds: 3 } });
      for (const each of sheet.successions) Object.assign(each, { clock: [1, null] });
    });
    expect(readIssuedSheet(FILE, more)).toEqual(readIssuedSheet(FILE, text));
  });

  test("of the time before there were promises has none", () => {
    const { promises, ...before } = JSON.parse(text) as { promises: unknown };
    expect(promises).not.toEqual([]);
    const { sheet, problems } = readIssuedSheet(FILE, JSON.stringify(before));
    expect([sheet!.promises, problems]).toEqual([[], []]);
  });

  test("that is broken is told, every place at once, and passed over", () => {
    const broken = changed((sheet) => {
      const [first, second] = sheet.successions;
      first!.sown = "16 March";
      first!.reach.planned = 3;
      second!.crop = "oregano";
    });
    expect(readIssuedSheet(FILE, broken).sheet).toBeNull();
    expect(readIssuedSheet(FILE, broken).problems.every(({ weight }) => weight === "needsYou")).toBe(true);
    expect(told(broken)).toEqual([
      `${FILE} "successions[0].sown": expected a date like 2026-04-20, received "16 March". ${AGAIN}`,
      `${FILE} "successions[0].reach.planned": expected a date, received "3". ${AGAIN}`,
      `${FILE} "successions[1].crop": expected a crop of the sheet's own list, received "oregano". ${AGAIN}`,
    ]);
  });

  test("cut off, of another kind or newer than this program is told in words", () => {
    expect(told(text.slice(0, 5000))).toEqual([
      `${FILE}: expected a whole JSON text, received a text that is none, or is cut off. Take the file away or bring it back from a copy; leafpace only passes it over.`,
    ]);
    expect(told(text.replace('"leafpace": "week"', '"leafpace": "beds"'))).toEqual([
      `${FILE} "leafpace": expected "week", received "beds". This folder is written by leafpace week --issue; keep other files elsewhere.`,
    ]);
    expect(told(text.replace('"version": 1', '"version": 2'))).toEqual([
      `${FILE} "version": expected version 1, the newest this leafpace knows, received "2". Bring leafpace up to date; the one that wrote it is newer.`,
    ]);
    expect(told("[]").length).toBe(2);
    expect(told("").length).toBe(1);
  });

  test("never throws, whatever is cut out of it", () => {
    for (let from = 0; from < text.length; from += 997)
      expect(readIssuedSheet(FILE, text.slice(0, from) + text.slice(from + 60)).problems).toBeDefined();
    for (const value of ["null", "3", '"x"', "{}", '{"leafpace":"week","version":1}'])
      expect(readIssuedSheet(FILE, value).sheet).toBeNull();
  });
});

describe("its name", () => {
  test("is the moment planned from, with a number from the second on", () => {
    const on = instant(Date.parse("2026-04-20T10:59:30Z"));
    expect([sheetName(on, 1), sheetName(on, 2)]).toEqual([
      "2026-04-20T1059Z.json",
      "2026-04-20T1059Z-2.json",
    ]);
    for (const copy of [1, 2, 10])
      expect(sheetNamed(sheetName(on, copy))).toEqual({ on: Date.parse("2026-04-20T10:59Z"), copy });
  });

  test("is no other file's", () => {
    for (const name of [
      "notes.json",
      "2026-04-20T1059Z.csv",
      "2026-04-20T1059Z-1.json",
      "2026-13-40T1059Z.json",
    ])
      expect(sheetNamed(name)).toBeNull();
  });
});
