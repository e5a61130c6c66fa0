import type { Problem } from "../problem/index.ts";
import { alignedColumns, type Cutter } from "./alignedColumns.ts";
import { bareCommas, type Joiner } from "./bareCommas.ts";
import { cellKinds } from "./cellKind.ts";
import { PLAIN } from "./dialect.ts";
import { isFormula, withoutFormulas } from "./formulas.ts";
import { filledWidth, headerWidth } from "./headerWidth.ts";
import { findLayout, type Layout, type LayoutOptions } from "./layout.ts";
import { logFound } from "./logFound.ts";
import { isHeader, isRuled } from "./logHeader.ts";
import type { LogOptions, LogReading, LogSaid } from "./logReading.ts";
import type { Row } from "./row.ts";
import { type Section, section } from "./section.ts";
import { offsetZone } from "./statedOffset.ts";
import { strangeText } from "./strangeText.ts";

export interface TemperatureLog {
  feed(row: Row): void;
  /** @param ended - Does the last line end as lines do? A line that does not may be cut. */
  finish(ended: boolean): LogReading;
}

/** Rows looked at before anything is read, to tell how the log is laid out. */
const OPENING = 120;

/** What a header is known by: its words. */
const headerKey = ({ names }: Layout): string => names.map((name) => name.trim()).join(" | ");

/**
 * Reads a logger's temperature log, row by row: titles, header, readings, and further headers with what is below them.
 * Holds the hours, never the rows. Nothing is guessed: what the file does not settle is a problem that names the option
 * which does.
 */
export function temperatureLog(options: LogOptions): TemperatureLog {
  const { file, farm, separator, dialect = PLAIN } = options;
  const said: { -readonly [Key in keyof LogSaid]: LogSaid[Key] } = {
    unit: options.unit,
    dates: options.dates,
    zone: options.zone,
    column: options.column,
    sensor: options.sensor,
  };
  const kinds = cellKinds(dialect, farm.zone);
  const layoutOptions = (): LayoutOptions => ({
    file,
    zone: farm.zone,
    column: said.column,
    sensors: farm.sensors,
    units: farm.units,
    dialect,
    kinds,
  });
  const remembered: (keyof LogSaid)[] = [];
  const sections: Section[] = [];
  let problem: Problem | null = null;
  let header = "";
  let cut: Cutter | null = null;
  let opening: Row[] | null = [];
  let current: Section | null = null;
  let held: Row | null = null;
  // The last line, if no line end closes it, and how many cells the line before it has.
  let unended: number | null = null;
  let usual = 0;
  let seen = false;

  const strange = (row: Row): Problem | null => {
    const text = strangeText(row.cells.join(separator));
    if (text === null) return null;
    const { what, way } = text;
    return {
      code: "log-not-a-table",
      weight: "stops",
      file,
      line: row.line,
      column: null,
      expected: "a table with a row for each reading",
      received: what,
      hint: way,
    };
  };

  const zoneOf = ({ offset }: Layout): string =>
    said.zone ?? (offset === null ? farm.zone : offsetZone(offset));

  /** What was said before of logs with this header counts where nothing is said now. */
  const recall = (header: string): boolean => {
    const before = options.recall?.(header);
    if (before === undefined) return false;
    for (const key of Object.keys(said) as (keyof LogSaid)[]) {
      if (said[key] !== null || before[key] === null) continue;
      Object.assign(said, { [key]: before[key] });
      remembered.push(key);
    }
    return remembered.length > 0;
  };

  const joinerFor = (layout: Layout, cells: readonly (readonly string[])[]): Joiner | null =>
    separator === "," && layout.header ? bareCommas(layout.names.length, cells) : null;

  const widthFault = (layout: Layout, rows: readonly Row[]): Problem | null => {
    const below = rows.slice(layout.begins, layout.begins + OPENING);
    const next = below.findIndex((row) => isHeader(row, layoutOptions()));
    const cells = below.slice(0, next < 0 ? below.length : next).map((row) => row.cells);
    if (!layout.header || separator === " " || joinerFor(layout, cells) !== null) return null;
    return headerWidth(layout, cells, file);
  };

  const sectionFor = (layout: Layout, rows: readonly Row[]): Section => {
    const cells = rows.slice(layout.begins).map((row) => row.cells);
    const sample = cells.slice(0, OPENING);
    return section(layout, {
      zone: zoneOf(layout),
      scale: said.unit === null ? null : { unit: said.unit, step: 1 },
      dates: said.dates,
      dialect,
      join: joinerFor(layout, sample),
    });
  };

  /** Finds the layout of what begins with these rows, and reads them. */
  const open = (rows: readonly Row[]): void => {
    opening = null;
    if (rows.length === 0) return;
    let found = findLayout(rows, layoutOptions());
    if (sections.length === 0) {
      header = "layout" in found ? headerKey(found.layout) : headersKnown(rows);
      if (recall(header)) found = findLayout(rows, layoutOptions());
    }
    if ("problem" in found) {
      problem = found.problem;
      return;
    }
    problem = widthFault(found.layout, rows);
    if (problem !== null) return;
    current = sectionFor(found.layout, rows);
    sections.push(current);
    for (const row of rows.slice(found.layout.begins)) {
      if (opening === null) take(row);
      else (opening as Row[]).push(row);
    }
  };

  /** Words of the header of rows whose layout could not be told without the grower's word. */
  const headersKnown = (rows: readonly Row[]): string =>
    (rows.find((row) => isHeader(row, layoutOptions()))?.cells ?? []).map((name) => name.trim()).join(" | ");

  const take = (row: Row): void => {
    if (current === null) return;
    const before = usual;
    usual = separator === " " ? filledWidth(row.cells) : row.cells.length;
    if (row.line === unended && usual < before) current.drop("cutOff", row.line);
    else if (!current.feed(row.line, row.cells)) {
      if (isHeader(row, layoutOptions())) opening = [row];
      else current.drop(row.cells.some((cell) => /\d/u.test(cell)) ? "unreadable" : "noReading", row.line);
    }
  };

  const pass = (row: Row): void => {
    if (problem !== null) return;
    if (opening === null) take(row);
    else {
      opening.push(row);
      if (opening.length >= OPENING) openNow();
    }
  };

  const openNow = (): void => {
    const rows = opening ?? [];
    const before = cut;
    if (separator === " " && cut === null) cut = alignedColumns(rows.map(({ cells }) => cells[0]!));
    else if (cut === null && rows.some(({ cells }) => cells.some(isFormula))) cut = withoutFormulas;
    if (cut !== null && held !== null) held = cutRow(held);
    open(cut === before ? rows : rows.map(cutRow));
  };

  const cutRow = (row: Row): Row => (cut === null ? row : { line: row.line, cells: cut(row.cells) });

  return {
    feed(row) {
      if (problem !== null) return;
      if (
        row.cells.length === 1 ? row.cells[0]!.trim() === "" : row.cells.every((cell) => cell.trim() === "")
      )
        return;
      if (!seen) {
        seen = true;
        problem = strange(row);
      }
      const ready = cutRow(row);
      if (isRuled(ready)) return;
      if (held !== null) pass(held);
      held = ready;
    },
    finish(ended) {
      if (held !== null) {
        if (!ended) unended = held.line;
        pass(held);
      }
      while (opening !== null && opening.length > 0 && problem === null) openNow();
      if (problem !== null) return { understood: null, sensors: [], problems: [problem], lastDay: null };
      const found = sections.map((each) => each.finish());
      return logFound({ options, said, remembered, sections: found, zoneOf, header });
    },
  };
}
