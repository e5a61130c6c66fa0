import { list } from "../problem/index.ts";
import type { LocalDate } from "../quantity/index.ts";
import { dateColumn } from "./dateColumn.ts";
import type { Units } from "./faults.ts";
import { parseDate } from "./moment.ts";
import { plainLine } from "./noteText.ts";
import { saidIn, type Unclear } from "./noteWhen.ts";

const two = (value: number): string => String(value).padStart(2, "0");

/**
 * A date or moment in any form people type, written year-month-day. null: it is none.
 *
 * @param today - From which a day without its year, or a weekday, counts back.
 * @example yearFirst("20.4.2026 14:30", "2026-04-21", "metric") // => { written: "2026-04-20T14:30" }
 */
export function yearFirst(
  text: string,
  today: LocalDate,
  units: Units,
): { readonly written: string } | Unclear | null {
  const column = dateColumn([text], null);
  if (column.ambiguous !== null)
    return { unclear: `Write ${list(column.ambiguous.meanings, "or")}, whichever is meant.` };
  if (column.read(text) !== null)
    return {
      written: column
        .yearFirst(text)
        .replace(" ", "T")
        .replace(/T(?=\d:)/u, "T0"),
    };
  const short = column.noSuchDay(text);
  if (short !== null) return { unclear: short };
  const said = saidIn(plainLine(text), today, units);
  if ("unclear" in said) return said;
  const { date, hour, rest } = said;
  if (date === null || rest.replace(/[\s,]/gu, "") !== "") return null;
  if (hour === null) return { written: date };
  const minutes = typeof hour === "number" ? Math.round(hour * 60) : 0;
  const clock =
    typeof hour === "number" ? `T${two(Math.floor(minutes / 60))}:${two(minutes % 60)}` : ` ${hour}`;
  return { written: date + clock };
}

/** A date alone in any form people type; null: it is none. @example typedDate("Apr 1", "2026-04-20", "US") // => { date: "2026-04-01" } */
export function typedDate(
  text: string,
  today: LocalDate,
  units: Units,
): { readonly date: LocalDate } | Unclear | null {
  const read = yearFirst(text, today, units);
  if (read === null || "unclear" in read) return read;
  const date = parseDate(read.written);
  return date === null ? null : { date };
}
