import type { CellKinds } from "./cellKind.ts";
import type { Digits } from "./clockTime.ts";
import { isCalled } from "./columnRole.ts";
import { type Dialect, plainWords } from "./dialect.ts";
import type { TimeColumns } from "./moments.ts";
import { headerOffset } from "./statedOffset.ts";
import type { Words } from "./words.ts";

type Cells = readonly string[];

/** Filled cells of one column. */
const filled = (rows: readonly Cells[], index: number): readonly string[] =>
  rows.map((cells) => cells[index] ?? "").filter((cell) => cell.trim() !== "");

const most = (cells: readonly string[], fits: (cell: string) => boolean): boolean =>
  cells.length > 0 && cells.filter(fits).length * 2 > cells.length;

/**
 * Finds the columns that tell the time: by their headers, and where these say nothing by what the rows hold.
 *
 * @returns null when no column holds dates.
 */
export function timeColumns(
  headers: readonly string[],
  rows: readonly Cells[],
  kinds: CellKinds,
  dialect: Dialect,
  zone: string,
): TimeColumns | null {
  const width = Math.max(headers.length, ...rows.map((cells) => cells.length));
  const indices = Array.from({ length: width }, (_, index) => index);
  const called = (...roles: readonly (keyof Words)[]): readonly number[] =>
    roles.flatMap((role) => indices.filter((index) => isCalled(headers[index] ?? "", role, dialect)));
  const first = (...roles: readonly (keyof Words)[]): number | null => called(...roles)[0] ?? null;
  const digitsOf = (index: number): Digits =>
    isCalled(headers[index] ?? "", "hourMinute", dialect)
      ? "hourMinute"
      : isCalled(headers[index] ?? "", "hour", dialect)
        ? "hour"
        : "clock";
  const clockFor = (taken: readonly number[]): number | null =>
    called("time", "hourMinute", "hour").find(
      (index) => !taken.includes(index) && filled(rows, index).length > 0,
    ) ?? null;

  const year = first("year");
  const day = first("dayOfYear", "day");
  if (year !== null && day !== null) {
    const month = first("month");
    const clock = clockFor([year, day]);
    const digits = clock === null ? "none" : digitsOf(clock);
    const minute = digits === "hour" ? first("minute") : null;
    const ofYear = isCalled(headers[day]!, "dayOfYear", dialect);
    return { kind: "parts", year, month: ofYear ? null : month, day, clock, digits, minute };
  }

  const holdsDates = (index: number, bare: boolean): boolean =>
    most(filled(rows, index), bare ? (cell) => kinds.when(cell) !== null : kinds.isDate);
  const worded = called("dateTime", "date", "time").filter((index) => holdsDates(index, true));
  const stated = worded.find((index) => headerOffset(headers[index] ?? "", zone, dialect) !== null);
  const dated = indices.filter((index) => holdsDates(index, false));
  const timed = (index: number): boolean =>
    most(filled(rows, index), (cell) => kinds.when(cell)?.timed === true);
  const moment = stated ?? worded[0] ?? dated.find(timed) ?? dated[0] ?? first("dateTime", "date") ?? null;
  if (moment === null) return null;
  if (timed(moment)) return { kind: "moment", moment, clock: null, digits: "none", half: null };
  const clock =
    clockFor([moment]) ??
    indices.find((index) => index !== moment && most(filled(rows, index), kinds.isTime)) ??
    null;
  const halves = [...dialect.morning, ...dialect.evening];
  const half =
    indices.find((index) => most(filled(rows, index), (cell) => halves.includes(plainWords(cell)))) ?? null;
  return { kind: "moment", moment, clock, digits: clock === null ? "none" : digitsOf(clock), half };
}

/** All columns that tell the time. */
export const timeIndices = (columns: TimeColumns): readonly number[] =>
  (columns.kind === "moment"
    ? [columns.moment, columns.clock, columns.half]
    : [columns.year, columns.month, columns.day, columns.clock, columns.minute]
  ).filter((index) => index !== null);
