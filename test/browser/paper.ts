import { expect, it } from "vitest";
import { letters } from "./letters.ts";
import { type Paper, type PdfPage, pdfPages } from "./pdf.ts";
import { type Printed, printed } from "./printed.ts";
import { across, describeSheets, PLAIN, SHEETS, type Sheet } from "./sheets.ts";

const PAPERS: readonly Paper[] = ["Letter", "A4"];

/** [CSS px] */
const MILLIMETRE = 96 / 25.4;
const POINT = 96 / 72;

const lettersOn = ({ texts }: PdfPage): string => letters(texts.map(({ text }) => text).join(""));

/** Does a text stand on one of the pages, or begin at the end of one and go on at the next? */
function stands(text: string, pages: readonly string[]): boolean {
  const sought = letters(text);
  return pages.some((page, i) => {
    let here = sought.length;
    while (!page.includes(sought.slice(0, here))) here -= 1;
    return here === sought.length || (pages[i + 1] ?? "").includes(sought.slice(here));
  });
}

describeSheets("the week on paper", (stage) => {
  const known = new Map<string, Promise<Printed>>();
  const onPaper = (sheet: Sheet, paper: Paper): Promise<Printed> => {
    const { chromium, html } = stage();
    const key = `${sheet}, ${paper}`;
    const answer = known.get(key) ?? printed(chromium, html[sheet], paper);
    known.set(key, answer);
    return answer;
  };

  it.each([
    ["the example farm", "Letter", 2],
    ["the example farm", "A4", 2],
    ["12 tunnels", "Letter", 2],
    ["12 tunnels", "A4", 2],
    ["40 tunnels", "Letter", 5],
    ["40 tunnels", "A4", 5],
  ] as const)("the week of %s takes, on %s, %i pages", async (sheet, paper, count) => {
    expect((await onPaper(sheet, paper)).pages).toHaveLength(count);
  });

  it.each(PAPERS)("the longest names take at most 8 pages on %s", async (paper) => {
    expect((await onPaper("odd names", paper)).pages.length).toBeLessThanOrEqual(8);
  });

  it("the links by which parts are found on the pages move nothing", async () => {
    const { chromium, html } = stage();
    const plain = await pdfPages(await chromium.print(html["the example farm"], "Letter"));
    const { pages } = await onPaper("the example farm", "Letter");
    const placed = (all: readonly PdfPage[]): string[] =>
      all.flatMap(({ texts }, i) => texts.map(({ text, x, y }) => `${i} ${text} ${x} ${y}`)).sort();
    expect(placed(pages)).toEqual(placed(plain));
  });

  it.each(across(SHEETS, PAPERS))("every text of %s is on %s", async (sheet, paper) => {
    const { texts, pages } = await onPaper(sheet, paper);
    const all = pages.map(lettersOn);
    expect(texts.filter(({ text, made }) => !made && !stands(text, all))).toEqual([]);
    const outside = pages.flatMap(({ width, height, texts }) =>
      texts.filter(
        ({ text, x, y, width: long, height: high }) =>
          text.trim() !== "" && (x < 0 || y < 0 || x + long > width || y + high > height),
      ),
    );
    expect(outside).toEqual([]);
  });

  it.each(across(SHEETS, PAPERS))("nothing of %s on %s is larger than its box", async (sheet, paper) => {
    expect((await onPaper(sheet, paper)).tooLarge).toEqual([]);
  });

  it.each(across(PLAIN, PAPERS))("words and numbers of %s stay whole on %s", async (sheet, paper) => {
    expect((await onPaper(sheet, paper)).broken).toEqual([]);
  });

  it.each(across(SHEETS, PAPERS))("letters of %s on %s measure 10 points or more", async (sheet, paper) => {
    const { texts } = await onPaper(sheet, paper);
    expect(texts.length).toBeGreaterThan(50);
    expect(texts.filter(({ size }) => size < 10 * POINT - 0.01)).toEqual([]);
  });

  it.each(across(SHEETS, PAPERS))("boxes to write in of %s on %s are 8 mm high", async (sheet, paper) => {
    const { writeBoxes } = await onPaper(sheet, paper);
    expect(writeBoxes.length).toBeGreaterThan(10);
    expect(writeBoxes.filter((height) => height < 8 * MILLIMETRE)).toEqual([]);
  });

  it.each(across(SHEETS, PAPERS))("no row of %s is cut by the end of a page of %s", async (sheet, paper) => {
    const { parts } = await onPaper(sheet, paper);
    expect(parts.filter(({ kind, on }) => kind === "row" && on.length !== 1)).toEqual([]);
  });

  it.each(across(SHEETS, PAPERS))(
    "tables of %s have their headings on every page of %s",
    async (sheet, paper) => {
      const { parts, headings, pages } = await onPaper(sheet, paper);
      const all = pages.map(lettersOn);
      const bare = parts.filter(
        ({ table, on }) => table !== null && !on.every((i) => all[i]!.includes(letters(headings[table]!))),
      );
      expect(bare).toEqual([]);
    },
  );

  it.each(across(SHEETS, PAPERS))(
    "no heading of %s stands alone at the foot of a page of %s",
    async (sheet, paper) => {
      const { parts } = await onPaper(sheet, paper);
      const alone = parts.filter(
        ({ kind, on }, i) => kind === "heading" && i + 1 < parts.length && parts[i + 1]!.on[0] !== on[0],
      );
      expect(alone).toEqual([]);
    },
  );
});
