/** Markup that is safe to print: only `html` makes it. */
export class Html {
  readonly #text: string;
  private constructor(text: string) {
    this.#text = text;
  }
  static made(strings: TemplateStringsArray, values: readonly Value[]): Html {
    let text = strings[0] ?? "";
    values.forEach((value, i) => {
      // Behind an unclosed "<" a value stands in an attribute, where no element may be.
      const inTag = text.lastIndexOf("<") > text.lastIndexOf(">");
      text += printed(value, inTag ? escaped : isolated) + (strings[i + 1] ?? "");
    });
    return new Html(text);
  }
  toString(): string {
    return this.#text;
  }
}

/** What may stand in a template; null and false print nothing. */
export type Value = string | number | Html | null | false | readonly Value[];

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

const escaped = (text: string): string => text.replace(/[&<>"']/gu, (character) => ENTITIES[character]!);

const LETTER =
  "[\\p{Script=Hebrew}\\p{Script=Arabic}\\p{Script=Syriac}\\p{Script=Thaana}\\p{Script=Nko}\\p{Script=Adlam}]";

/** Words written from right to left up to a comma or colon, with what stands between them; a number behind them is their own. */
const RIGHT_TO_LEFT: RegExp = new RegExp(
  `(${LETTER}(?:\\p{M}|[^\\p{L}\\n&;:,<>]*${LETTER})*)(\\)*)((?: \\d+(?=$|[,:;)]))?)`,
  "gu",
);

/** Of the brackets closed behind a run, those that were opened in it. */
function closed(run: string, brackets: string): number {
  const open = run.split("(").length - run.split(")").length;
  return Math.min(brackets.length, Math.max(0, open));
}

/** Escaped, and what runs from right to left set apart, so that it turns nothing beside it. */
const isolated = (text: string): string =>
  escaped(text).replace(RIGHT_TO_LEFT, (_, run: string, brackets: string, number: string) => {
    const inside = closed(run, brackets);
    return inside === brackets.length
      ? `<bdi>${run}${brackets}${number}</bdi>`
      : `<bdi>${run}${brackets.slice(0, inside)}</bdi>${brackets.slice(inside)}${number}`;
  });

const printed = (value: Value, safe: (text: string) => string): string =>
  value === null || value === false
    ? ""
    : value instanceof Html
      ? value.toString()
      : typeof value === "object"
        ? value.map((each) => printed(each, safe)).join("")
        : safe(String(value));

/** A template whose every value is escaped unless it is markup already. @example html`<b>${"<"}</b>`.toString() // => "<b>&lt;</b>" */
export const html = (strings: TemplateStringsArray, ...values: readonly Value[]): Html =>
  Html.made(strings, values);
