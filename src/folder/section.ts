import type { Joiner } from "./bareCommas.ts";
import { clockReader } from "./clockTime.ts";
import { isHigh, isLow, speaksOfTemperature } from "./columnRole.ts";
import { type DatesBy, dateCandidates } from "./dateCandidates.ts";
import type { DayRange } from "./daySums.ts";
import type { DateOrder, Dialect } from "./dialect.ts";
import { type Dropped, drops, type Reason } from "./drops.ts";
import type { Sums } from "./hourSums.ts";
import type { Layout, ReadingColumn } from "./layout.ts";
import { lostHalves } from "./lostHalves.ts";
import { momentReader, type When } from "./moments.ts";
import { type Scales, type Spotted, valueReader } from "./readingValue.ts";
import type { Scale } from "./scale.ts";

export interface SectionOptions {
  /** The zone its clock shows. */
  readonly zone: string;
  /** What the grower says. */
  readonly scale: Scale | null;
  readonly dates: DateOrder | null;
  readonly dialect: Dialect;
  /** Joins decimal commas that fell apart. */
  readonly join: Joiner | null;
}

/** What one source recorded, under the date order that stands. */
export type Series =
  | { readonly kind: "hours"; readonly sums: Sums }
  | { readonly kind: "days"; readonly days: readonly DayRange[] };

/** What a part of a log holds, once all of it is read. */
export interface SectionFound {
  readonly layout: Layout;
  readonly rows: number;
  readonly dropped: readonly Dropped[];
  /** null: nothing settles the order of its dates. */
  readonly settled: { readonly order: DateOrder; readonly by: DatesBy } | null;
  /** By the name of the column or the station. */
  readonly series: ReadonlyMap<string, Series>;
  readonly scales: Scales;
  /** First row whose date has several meanings, whose date cannot be read, whose time may be morning or evening. */
  readonly ambiguous: Spotted | null;
  readonly undated: Spotted | null;
  readonly halvesLost: Spotted | null;
  /** Rows with a date and no time of day. */
  readonly untimed: number;
  /** Latest time on its clock, with its line. [ms] */
  readonly latest: { readonly line: number; readonly wall: number } | null;
  /** The year it begins with, where its clock was not set then. */
  readonly unset: number | null;
}

export interface Section {
  readonly layout: Layout;
  /** Takes in one row. false: its moment cannot be read; it may be another header, else it is to be left out. */
  feed(line: number, cells: readonly string[]): boolean;
  /** Leaves a row out. */
  drop(reason: Reason, line: number): void;
  finish(): SectionFound;
}

/** Reads the rows below one header. */
export function section(layout: Layout, options: SectionOptions): Section {
  const { dialect, zone, join } = options;
  const { of, times, station, element } = layout;
  const whenIn = momentReader(times, dialect, zone);
  const columnClock = clockReader(dialect, zone, "clock");
  const values = valueReader(layout, options.scale, dialect);
  const dates = dateCandidates(zone, options.dates, dialect);
  const halves = lostHalves();
  const dropped = drops();
  const wide = of.kind === "hours" && of.columns[0]?.clock !== null;
  let rows = 0;
  let untimed = 0;
  let undated: Spotted | null = null;

  const stationIn = (cells: readonly string[], column: string): string =>
    station === null ? column : (cells[station] ?? "").trim();

  const takeDay = (line: number, cells: readonly string[], walls: readonly number[]): void => {
    if (of.kind !== "days") return;
    const source = stationIn(cells, "");
    const what = element === null ? null : (cells[element] ?? "");
    const degrees = (column: ReadingColumn, placeholder: number): number | null => {
      const value = values.read(column, line, cells, source);
      if (typeof value === "number") return value;
      // Nothing without a unit is stored; but its date may still settle the order.
      if (value === "noUnit") return placeholder;
      if (value !== "noReading") dropped.add(value, line);
      return null;
    };
    const low = what === null || isLow(what, dialect) ? degrees(of.low, 0) : null;
    const high = what === null || isHigh(what, dialect) ? degrees(of.high, 1) : null;
    if (what !== null && !isLow(what, dialect) && !isHigh(what, dialect)) dropped.add("otherElement", line);
    else dates.day(line, walls, source, low, high);
  };

  const takeHours = (line: number, cells: readonly string[], walls: readonly number[], when: When): void => {
    if (of.kind !== "hours") return;
    if (element !== null && !speaksOfTemperature(cells[element] ?? "", dialect)) {
      dropped.add("otherElement", line);
      return;
    }
    for (const column of of.columns) {
      const source = stationIn(cells, wide ? "" : column.name);
      const value = values.read(column, line, cells, source);
      if (typeof value === "string" && value !== "noUnit") {
        dropped.add(value, line);
        continue;
      }
      const clock = column.clock === null ? 0 : (columnClock(column.clock)?.ms ?? 0);
      const at = clock === 0 ? walls : walls.map((wall) => wall + clock);
      // Nothing without a unit is stored; but its date may still settle the order.
      dates.hour(line, at, when.offset, source, value === "noUnit" ? 0 : value);
    }
  };

  return {
    layout,
    drop(reason, line) {
      rows += 1;
      dropped.add(reason, line);
    },
    feed(line, row) {
      const cells = join === null ? row : join(row);
      if (cells === null) {
        rows += 1;
        dropped.add("unreadable", line);
        return true;
      }
      const when = whenIn(cells);
      const walls = when === null ? null : dates.walls(line, when);
      if (when === null || walls === null) {
        undated ??= {
          line,
          text:
            times.kind === "moment"
              ? [times.moment, times.clock]
                  .map((index) => (index === null ? "" : (cells[index] ?? "").trim()))
                  .join(" ")
                  .trim()
              : cells.join(" "),
        };
        return false;
      }
      rows += 1;
      if (of.kind === "days") takeDay(line, cells, walls);
      else if (when.timed || wide) {
        if (!wide) halves.watch(line, when);
        takeHours(line, cells, walls, when);
      } else {
        untimed += 1;
        dropped.add("unreadable", line);
      }
      return true;
    },
    finish() {
      const settled = dates.settled();
      const chosen = dates.first();
      const series = new Map<string, Series>([
        ...[...(chosen?.hours ?? [])].map(
          ([source, sums]) => [source, { kind: "hours", sums: sums.finish() }] as const,
        ),
        ...[...(chosen?.days ?? [])].map(
          ([source, days]) => [source, { kind: "days", days: days.finish() }] as const,
        ),
      ]);
      return {
        layout,
        rows,
        dropped: [...dropped.list(), ...(chosen?.dropped.list() ?? [])],
        settled: settled === null ? null : { order: settled.chosen.order, by: settled.by },
        series,
        scales: values.scales(),
        ambiguous: dates.ambiguous(),
        undated,
        halvesLost: halves.found(),
        untimed,
        latest: chosen?.latest() ?? null,
        unset: chosen?.unset.began() ?? null,
      };
    },
  };
}
