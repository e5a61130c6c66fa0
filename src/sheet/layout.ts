import type { Size } from "./bedsTable.ts";
import type { Page } from "./page.ts";

/** Widths of columns as their text wants them, kept between bounds; the one at `flexible` takes what the others leave. */
export function filled(
  out: Page,
  rows: readonly (readonly string[])[],
  bounds: readonly (readonly [least: number, most: number])[],
  flexible: number,
  indent = 0,
): number[] {
  const widths = out.natural(rows, bounds);
  const others = widths.reduce((sum, width, i) => (i === flexible ? sum : sum + width), 0);
  const room = out.width - indent - others - (widths.length - 1);
  return widths.map((width, i) => (i === flexible ? Math.max(8, Math.min(width, room)) : width));
}

/** A value over the range four of five cases lie in. */
export const over = (middle: string, range: string | null): string =>
  range === null ? middle : `${middle}\n${range}`;

/** A size over its range. */
export const sized = ({ middle, range }: Size): string => over(middle, range);

/** A heading and its sentences; nothing when there are none. */
export function section(out: Page, heading: string, sentences: readonly string[]): void {
  if (sentences.length === 0) return;
  out.gap();
  out.head(heading);
  for (const sentence of sentences) out.say(sentence, { mark: "- " });
}
