import type { Dialect } from "./dialect.ts";
import { momentReader, type When } from "./moments.ts";
import { readingReader } from "./reading.ts";
import { dateOf } from "./timestamp.ts";

/** What a single cell looks like, whatever its column. */
export interface CellKinds {
  /** A date, with or without a time; a bare number is none. */
  isDate(cell: string): boolean;
  isNumber(cell: string): boolean;
  isTime(cell: string): boolean;
  /** A moment or a date in any spelling, numbers included; null when it is none. */
  when(cell: string): When | null;
}

export function cellKinds(dialect: Dialect, zone: string): CellKinds {
  const reading = readingReader(dialect);
  const column = { kind: "moment", moment: 0, clock: null, digits: "none", half: null } as const;
  const read = momentReader(column, dialect, zone);
  const isDay = (text: string): boolean =>
    (["ymd", "mdy", "dmy"] as const).some((order) => dateOf(text, order, dialect) !== null);
  const when = (cell: string): When | null => {
    const found = read([cell]);
    return found === null || (found.date !== null && !isDay(found.date)) ? null : found;
  };
  const isNumber = (cell: string): boolean => cell.trim() !== "" && typeof reading(cell) !== "string";
  return {
    when,
    isNumber,
    isDate: (cell) => !isNumber(cell) && when(cell) !== null,
    isTime: (cell) => /^\d{1,2}[:h]\d{2}/u.test(cell.trim()),
  };
}
