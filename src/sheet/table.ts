import { displayWidth, pad, wrap } from "./wrap.ts";

/** A table whose cells wrap in their columns, as lines. Widths are those of the columns; one space stands between them. */
export function table(rows: readonly (readonly string[])[], widths: readonly number[]): string[] {
  return rows.flatMap((cells) => {
    const wrapped = widths.map((width, i) => wrap(cells[i] ?? "", width));
    const height = Math.max(...wrapped.map(({ length }) => length));
    return Array.from({ length: height }, (_, line) =>
      widths
        .map((width, i) => pad(wrapped[i]?.[line] ?? "", width))
        .join(" ")
        .trimEnd(),
    );
  });
}

/** The width each column would like: its widest word-wrapped cell, kept between bounds. */
export function natural(
  rows: readonly (readonly string[])[],
  bounds: readonly (readonly [least: number, most: number])[],
): number[] {
  return bounds.map(([least, most], i) => {
    const widest = Math.max(
      0,
      ...rows.flatMap((cells) => (cells[i] ?? "").split("\n").map((line) => displayWidth(line))),
    );
    return Math.min(most, Math.max(least, widest));
  });
}
