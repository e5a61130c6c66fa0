import type { Dialect } from "./dialect.ts";
import type { Reason } from "./drops.ts";
import type { Layout, ReadingColumn } from "./layout.ts";
import { ON_A_FARM } from "./onAFarm.ts";
import { readingReader } from "./reading.ts";
import { type Scale, scaleNamed, toCelsius } from "./scale.ts";

/** Different numbers beyond all air that are still counted one by one. */
const COUNTED = 50;

/** What tells the unit of a number. */
export type ScaleBy = "option" | "cells" | "column" | "header" | "title";

/** A cell whose meaning nothing tells, with its line. */
export interface Spotted {
  readonly line: number;
  readonly text: string;
}

/** What was found about units while reading. */
export interface Scales {
  /** The first of each source. */
  readonly bySource: ReadonlyMap<string, { readonly scale: Scale; readonly by: ScaleBy }>;
  /** First number without a unit. */
  readonly unitless: Spotted | null;
  /** Numbers no air has, and how many different ones. */
  readonly implausible: { readonly count: number; readonly different: number };
}

export interface ValueReader {
  /** A column's reading in a row in °C, or why there is none. */
  read(
    column: ReadingColumn,
    line: number,
    cells: readonly string[],
    source: string,
  ): number | Reason | "noUnit";
  scales(): Scales;
}

/**
 * Reads numbers as temperatures. The grower's word counts most, then what is nearest to the number: its own cell, a column
 * of units, the header with its row of units, a line above.
 */
export function valueReader(layout: Layout, said: Scale | null, dialect: Dialect): ValueReader {
  const reading = readingReader(dialect);
  const bySource = new Map<string, { scale: Scale; by: ScaleBy }>();
  const beyond = new Set<number>();
  let count = 0;
  let unitless: Spotted | null = null;
  return {
    read(column, line, cells, source) {
      const cell = cells[column.index] ?? "";
      const read = reading(cell);
      if (typeof read === "string") return read;
      const number = typeof read === "number" ? read : read.number;
      let scale = said;
      let by: ScaleBy = "option";
      if (scale === null && typeof read !== "number") [scale, by] = [read.scale, "cells"];
      if (scale === null && layout.unit !== null) {
        scale = scaleNamed(cells[layout.unit] ?? "", dialect);
        by = "column";
      }
      if (scale === null) {
        scale = column.scale;
        by = column.scaleBy;
      }
      if (scale === null) {
        unitless ??= { line, text: cell.trim() };
        return "noUnit";
      }
      if (!bySource.has(source)) bySource.set(source, { scale, by });
      const value = toCelsius(number, scale);
      if (value >= ON_A_FARM.coldest && value <= ON_A_FARM.warmest) return value;
      count += 1;
      if (beyond.size < COUNTED) beyond.add(number);
      return "outOfRange";
    },
    scales: () => ({ bySource, unitless, implausible: { count, different: beyond.size } }),
  };
}
