import { describe, expect, test } from "vitest";
import type { AtPick, Right, SuccessionOutlook } from "../../src/decide/index.ts";
import { addDays, type LocalDate } from "../../src/quantity/index.ts";
import { bedsText, weekHtml, weekJson, weekText } from "../../src/sheet/index.ts";
import { sample } from "./sample.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** Three Saturdays, the last two beyond the days planned. */
function atSaturdays(like: AtPick, rights: readonly Right[]): AtPick[] {
  return rights.map((right, weeks) => ({
    ...like,
    right,
    pick: {
      ...like.pick,
      date: addDays(like.pick.date, 7 * weeks),
      marketDate: addDays(like.pick.marketDate, 7 * weeks),
      planned: weeks === 0,
    },
  }));
}

/** The sample with three beds: early, held by covers, and not within reach. */
function outcome() {
  const whole = sample();
  const [like] = whole.successions[0]!.atPicks;
  const rights: readonly (readonly Right[])[] = [
    ["asItIs", "withCovers", "no"],
    ["no", "asItIs", "withCovers"],
    ["no", "no", "no"],
  ];
  const dates = (earliest: string | null, latest: string | null) => ({
    earliest: earliest as LocalDate | null,
    unchanged: latest as LocalDate | null,
    latest: latest as LocalDate | null,
  });
  const reach = [
    dates("2026-04-19", "2026-04-19"),
    dates("2026-04-28", "2026-05-02"),
    dates(null, null),
  ] as const;
  const successions = whole.successions.slice(0, 3).map(
    (outlook, i): SuccessionOutlook => ({
      ...outlook,
      atPicks: atSaturdays(like!, rights[i]!),
      reach: { ...outlook.reach, ...reach[i]! },
    }),
  );
  return { ...whole, successions };
}

const section = (text: string): string => {
  const lines = plain(text).split("\n");
  const from = lines.findIndex((line) => line.startsWith("SALAD SIZE WITH COVERS"));
  const until = lines.findIndex((line, i) => i > from && line === "");
  return lines.slice(from, until).join("\n");
};

const TABLE = `SALAD SIZE WITH COVERS, MARKET BY MARKET
As it is: salad size for that market with nothing changed. Covers: with covers
at hand. No: with none of them.
Succession    Earliest …       Sat      Sat      Sat
              latest           Apr 25   May 2    May 9
arugula (A12) since Apr 19     as it is covers   no
spinach (S4)  Apr 28 … May 2   no       as it is covers
mustard (M3)  later            no       no       no`;

describe("which market a succession can be in salad size for", () => {
  test("stands in the week and in where the beds stand, market by market", () => {
    expect(section(weekText(outcome(), { width: 80, unicode: true, color: false }))).toBe(TABLE);
    expect(section(bedsText(outcome(), { width: 80, unicode: true, color: false }))).toBe(TABLE);
  });

  test("is told in sentences where there is no room for columns", () => {
    expect(section(weekText(outcome(), { width: 60, unicode: true, color: false }))).toBe(
      `SALAD SIZE WITH COVERS, MARKET BY MARKET
- Arugula (A12), since Apr 19: as it is for Sat Apr 25; with
  covers for Sat May 2; not for Sat May 9.
- Spinach (S4), Apr 28 … May 2: as it is for Sat May 2; with
  covers for Sat May 9; not for Sat Apr 25.
- Mustard (M3), later: not for Sat Apr 25, Sat May 2 and
  Sat May 9.`,
    );
  });

  test("stands on the page as a table, and for paper by market", () => {
    const page = plain(weekHtml(outcome()));
    expect(page).toContain(
      '<th scope="row">spinach (S4)</th><td data-label="salad size">Apr 28 … May 2</td>',
    );
    expect(page).toContain('<td data-label="Sat May 9">covers</td>');
    const paper = page.slice(page.indexOf('<ul class="said paper"><li><b>Sat Apr 25'));
    expect(paper.slice(0, paper.indexOf("</ul>")).replace(/<[^>]*>/gu, "")).toBe(
      "Sat Apr 25: as it is A12. Sat May 2: as it is S4; with covers A12 (since Apr 19). Sat May 9: with covers S4 (Apr 28 … May 2). ",
    );
  });

  test("is in the data with each pick", () => {
    const { successions } = JSON.parse(weekJson(outcome())) as {
      successions: { atPicks: { right: string }[] }[];
    };
    expect(successions.map(({ atPicks }) => atPicks.map(({ right }) => right))).toEqual([
      ["asItIs", "withCovers", "no"],
      ["no", "asItIs", "withCovers"],
      ["no", "no", "no"],
    ]);
  });
});
