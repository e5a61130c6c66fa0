import { ascii } from "./ascii.ts";
import { natural, table } from "./table.ts";
import { TIED, wrap } from "./wrap.ts";

export interface TextOptions {
  /** Columns. [60–200] */
  readonly width: number;
  /** May letters beyond plain ASCII be used? */
  readonly unicode: boolean;
  readonly color: boolean;
}

/** From this width on there is room for columns; below it, sentences. */
export const COLUMNS = 76;

type Tone = "plain" | "bold" | "danger";

const TONE: Readonly<Record<Tone, readonly [on: string, off: string]>> = {
  plain: ["", ""],
  bold: ["\u001b[1m", "\u001b[0m"],
  danger: ["\u001b[1;31m", "\u001b[0m"],
};

/** Lines for a terminal, collected in order; no line is wider than asked for. */
export interface Page {
  readonly width: number;
  /** One blank line, never two, none at the top. */
  readonly gap: () => void;
  readonly head: (text: string) => void;
  /** A paragraph: `mark` stands before its first line, the lines after it stand under the text. */
  readonly say: (text: string, options?: { mark?: string; indent?: number; tone?: Tone }) => void;
  readonly table: (
    rows: readonly (readonly string[])[],
    widths: readonly number[],
    options?: { indent?: number; headed?: boolean },
  ) => void;
  /** Natural widths of columns as they will be printed. */
  readonly natural: (
    rows: readonly (readonly string[])[],
    bounds: readonly (readonly [least: number, most: number])[],
  ) => number[];
  readonly text: () => string;
}

/** Narrowest and widest a page can be. */
const NARROWEST = 60;
const WIDEST = 200;

export function page({ width: asked, unicode, color }: TextOptions): Page {
  const width = Math.min(WIDEST, Math.max(NARROWEST, Math.floor(asked)));
  const lines: string[] = [];
  const plain = (text: string): string => (unicode ? text : text.split(TIED).map(ascii).join(TIED));
  const put = (line: string, tone: Tone = "plain"): void => {
    const [on, off] = TONE[tone];
    lines.push(color && line !== "" ? on + line + off : line);
  };
  const say: Page["say"] = (text, { mark = "", indent = 0, tone = "plain" } = {}) => {
    const before = " ".repeat(indent);
    wrap(plain(text), width - indent - mark.length).forEach((line, i) => {
      put((before + (i === 0 ? mark : " ".repeat(mark.length)) + line).trimEnd(), tone);
    });
  };
  return {
    width,
    gap: () => {
      if (lines.length > 0 && lines.at(-1) !== "") lines.push("");
    },
    head: (text) => say(text, { tone: "bold" }),
    say,
    table: (rows, widths, { indent = 0, headed = false } = {}) => {
      const before = " ".repeat(indent);
      const cells = rows.map((row) => row.map(plain));
      const heading = headed ? cells.slice(0, 1) : [];
      for (const line of table(heading, widths)) put((before + line).trimEnd(), "bold");
      for (const line of table(cells.slice(heading.length), widths)) put((before + line).trimEnd());
    },
    natural: (rows, bounds) =>
      natural(
        rows.map((row) => row.map(plain)),
        bounds,
      ),
    text: () => `${lines.join("\n").trimEnd()}\n`,
  };
}
