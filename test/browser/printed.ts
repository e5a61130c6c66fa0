import type { Reader } from "./browser.ts";
import {
  beyondRightEdge,
  brokenWords,
  largerThanBox,
  linkParts,
  type Part,
  type Shown,
  shownTexts,
  tableHeadings,
  writeBoxHeights,
} from "./inPage.ts";
import { letters } from "./letters.ts";
import { type Paper, type PdfPage, pdfPages } from "./pdf.ts";

/** What is known of a sheet on paper: as it was laid out between the margins, and as it stands in the PDF. */
export interface Printed {
  readonly pages: readonly PdfPage[];
  readonly texts: readonly Shown[];
  readonly tooLarge: readonly string[];
  readonly broken: readonly string[];
  /** Heights of the boxes to write in. [CSS px] */
  readonly writeBoxes: readonly number[];
  /** With the pages they stand on, the first being 0. */
  readonly parts: readonly (Part & { readonly on: readonly number[] })[];
  /** Headings of the tables, each as one text. */
  readonly headings: readonly string[];
}

/** [CSS px] */
const MILLIMETRE = 96 / 25.4;

/** Widths of the papers. [mm] */
const WIDTH: Readonly<Record<Paper, number>> = { Letter: 215.9, A4: 210 };

/** Left and right margin of the page's own style together. [CSS px] */
function margins(): number {
  const rules = [...document.styleSheets].flatMap(({ cssRules }) => [...cssRules]);
  const { style } = rules.find((rule) => rule instanceof CSSPageRule)!;
  const probe = document.createElement("div");
  probe.style.width = `calc(${style.marginLeft} + ${style.marginRight})`;
  document.body.append(probe);
  const { width } = probe.getBoundingClientRect();
  probe.remove();
  return width;
}

export async function printed(reader: Reader, html: string, paper: Paper): Promise<Printed> {
  const { page } = await reader.open(html, { width: 1280 });
  await page.emulateMedia({ media: "print" });
  const width = WIDTH[paper] * MILLIMETRE - (await page.evaluate(margins));
  await page.setViewportSize({ width: Math.floor(width), height: 900 });
  const laidOut = {
    texts: await page.evaluate(shownTexts),
    tooLarge: [...(await page.evaluate(largerThanBox)), ...(await page.evaluate(beyondRightEdge))],
    broken: await page.evaluate(brokenWords),
    writeBoxes: await page.evaluate(writeBoxHeights),
    headings: await page.evaluate(tableHeadings),
  };
  const parts = await page.evaluate(linkParts);
  const pages = await pdfPages(await page.pdf({ format: paper }));
  await page.context().close();
  const on = pagesOf(parts, pages);
  return { ...laidOut, pages, parts: parts.map((part, i) => ({ ...part, on: on[i]! })) };
}

/**
 * Pages on which each part stands. Where lines run on from column to column, the browser puts links of one column on the next as
 * well: a text is that part's whose link over it is smallest, of those that say it.
 */
function pagesOf(parts: readonly Part[], pages: readonly PdfPage[]): readonly (readonly number[])[] {
  const own = parts.map(({ text }) => letters(text));
  const on = parts.map(() => new Set<number>());
  pages.forEach(({ texts, links }, page) => {
    const mine = links.flatMap(({ address, left, right, bottom, top }) => {
      const number = /^https:\/\/part\.invalid\/(\d+)$/u.exec(address)?.[1];
      const area = (right - left) * (top - bottom);
      return number === undefined ? [] : [{ number: Number(number), left, right, bottom, top, area }];
    });
    for (const { text, x, y, width, height } of texts) {
      const [across, up] = [x + width / 2, y + height / 4];
      const found = letters(text);
      if (found === "") continue;
      const says = mine.filter(
        ({ number, left, right, bottom, top }) =>
          across > left &&
          across < right &&
          up > bottom &&
          up < top &&
          (own[number]!.includes(found) || found.includes(own[number]!)),
      );
      if (says.length > 0)
        on[says.reduce((least, each) => (each.area < least.area ? each : least)).number]!.add(page);
    }
  });
  return on.map((each) => [...each].sort((a, b) => a - b));
}
