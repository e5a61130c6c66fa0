/** Functions that run inside a page and answer with plain data. Each stands alone: nothing around it goes into the page. */

/** Elements that run over the right edge of the window. */
export function beyondRightEdge(): string[] {
  const page = document.scrollingElement!;
  const whole =
    page.scrollWidth > innerWidth ? [`the page is ${page.scrollWidth} px wide in ${innerWidth}`] : [];
  const parts = [...document.body.querySelectorAll<HTMLElement>("*")]
    .filter(
      (element) => element.checkVisibility() && element.getBoundingClientRect().right > innerWidth + 0.5,
    )
    .map((element) => `${element.localName} "${(element.textContent ?? "").trim().slice(0, 40)}"`);
  return [...whole, ...parts];
}

/**
 * Boxes whose content is larger than they are. Letters may reach out of tight lines by a fifth of their size; letters of
 * a drawing have no box, and what is for readers aloud only is one pixel.
 */
export function largerThanBox(): string[] {
  return [...document.body.querySelectorAll<HTMLElement>("*:not(svg *)")].flatMap((element) => {
    const { clientWidth, clientHeight, scrollWidth, scrollHeight, localName, textContent } = element;
    if (clientWidth <= 1 || !element.checkVisibility()) return [];
    const reach = 1 + Number.parseFloat(getComputedStyle(element).fontSize) / 5;
    return scrollWidth > clientWidth + 1 || scrollHeight > clientHeight + reach
      ? [
          `${localName} ${scrollWidth} × ${scrollHeight} in ${clientWidth} × ${clientHeight} "${(textContent ?? "").trim().slice(0, 40)}"`,
        ]
      : [];
  });
}

/** Words and numbers of up to fifteen letters that go on in the next line; not what is for readers aloud, in boxes one pixel wide. */
export function brokenWords(): string[] {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const broken: string[] = [];
  while (walker.nextNode() !== null) {
    const text = walker.currentNode as Text;
    if (!text.parentElement!.checkVisibility() || text.parentElement!.closest("svg") !== null) continue;
    let around: Element | null = text.parentElement;
    while (around !== null && around.clientWidth !== 1) around = around.parentElement;
    if (around !== null) continue;
    for (const { 0: word, index } of text.data.matchAll(/[\p{L}\p{N}]+(?:[.,:][\p{N}]+)*/gu)) {
      const range = document.createRange();
      range.setStart(text, index);
      range.setEnd(text, index + word.length);
      const [first, ...others] = range.getClientRects();
      const goesOn = others.some(({ top }) => Math.abs(top - first!.top) > first!.height / 2);
      if (word.length <= 15 && goesOn) broken.push(`${word} in "${text.data.trim().slice(0, 40)}"`);
    }
  }
  return broken;
}

/** A text with the size of its letters. [CSS px] */
export interface Shown {
  readonly text: string;
  readonly size: number;
  /** Made by the style: no part of the document's text. */
  readonly made: boolean;
}

/** Every text that is shown; not what is for readers aloud. */
export function shownTexts(): Shown[] {
  const scaleOf = (element: Element): number =>
    element instanceof SVGGraphicsElement ? (element.getScreenCTM()?.a ?? 1) : 1;
  const shown: Shown[] = [];
  for (const element of [document.body, ...document.body.querySelectorAll("*")]) {
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    if (element.clientWidth === 1 && element.clientHeight === 1) continue;
    const size = Number.parseFloat(getComputedStyle(element).fontSize) * scaleOf(element);
    for (const node of element.childNodes) {
      const text = node.nodeType === Node.TEXT_NODE ? (node.textContent ?? "").trim() : "";
      if (text !== "") shown.push({ text, size, made: false });
    }
    for (const place of ["::before", "::after"]) {
      const { content, fontSize, display } = getComputedStyle(element, place);
      const text = /^"(.*\S.*)"$/u.exec(content)?.[1];
      if (text !== undefined && display !== "none")
        shown.push({ text, size: Number.parseFloat(fontSize), made: true });
    }
  }
  return shown;
}

/** Heights of the boxes to write in. [CSS px] */
export function writeBoxHeights(): number[] {
  return [...document.querySelectorAll("td.write")]
    .filter((box) => box.checkVisibility())
    .map((box) => box.getBoundingClientRect().height);
}

/** A row of a table, an entry of a list, a heading or a paragraph. */
export interface Part {
  readonly kind: "row" | "heading" | "paragraph";
  /** Number of the table it is a row of. */
  readonly table: number | null;
  readonly text: string;
}

/** Puts a link with the part's number around every text, so that the PDF says on which pages each part stands. */
export function linkParts(): Part[] {
  const parts: Part[] = [];
  const numbers = new Map<Element, number>();
  const tables = [...document.querySelectorAll("table")];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const texts: Text[] = [];
  while (walker.nextNode() !== null) texts.push(walker.currentNode as Text);
  for (const text of texts) {
    const around = text.parentElement!;
    const part = around.closest<HTMLElement>("tbody tr, li, h1, h2, h3, p");
    if (part === null || around.closest("a, svg") !== null) continue;
    if (text.data.trim() === "" || !around.checkVisibility()) continue;
    if (!numbers.has(part)) {
      numbers.set(part, parts.length);
      const isRow = /^(?:tr|li)$/u.test(part.localName) && getComputedStyle(part).display !== "inline";
      const table = part.closest("table");
      parts.push({
        kind: isRow ? "row" : /^h/u.test(part.localName) ? "heading" : "paragraph",
        table: table === null ? null : tables.indexOf(table),
        text: (part.textContent ?? "").trim(),
      });
    }
    const link = document.createElement("a");
    link.style.cssText = "all: unset";
    link.href = `https://part.invalid/${numbers.get(part)}`;
    text.replaceWith(link);
    link.append(text);
  }
  return parts;
}

/** Texts of the headings of every table. */
export const tableHeadings = (): string[] =>
  [...document.querySelectorAll("table")].map((table) => table.tHead?.textContent ?? "");

/** What the keyboard should reach, in order, with how it is marked where the focus is now. */
export function stops(): { readonly name: string; readonly focused: boolean; readonly ring: boolean }[] {
  return [...document.querySelectorAll<HTMLElement>("a[href], input, button, summary, [tabindex]")]
    .filter((element) => element.tabIndex >= 0 && element.checkVisibility())
    .map((element, i) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      return {
        name: `${i} ${element.localName}`,
        focused: element === document.activeElement,
        ring: outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 1,
      };
    });
}

/** What could run or fetch: scripts, handlers, addresses with code, and anything that loads. */
export function live(): string[] {
  return [...document.querySelectorAll("*")].flatMap((element) => [
    ...(/^(?:script|img|iframe|object|embed|link|audio|video|form|base)$/u.test(element.localName)
      ? [element.localName]
      : []),
    ...[...element.attributes]
      .filter(({ name, value }) => /^on/u.test(name) || /^\s*javascript:/iu.test(value))
      .map(({ name, value }) => `${name}=${value}`),
  ]);
}
