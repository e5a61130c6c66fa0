import type { LocalDate } from "../../quantity/index.ts";
import type { DayOfYear } from "../dayInWords.ts";

const two = (value: number): string => String(value).padStart(2, "0");

/** The code of a walk on its cards: month, day and clock. R for reply and respuesta; without it phones take it for a number to call. @example walkCode("2026-04-20", 7) // => "R0420-0700" */
export function walkCode(date: LocalDate, hour: number): string {
  const minutes = Math.round(hour * 60);
  return `R${date.slice(5, 7)}${date.slice(8, 10)}-${two(Math.floor(minutes / 60))}${two(minutes % 60)}`;
}

const CODE = /(?<![a-z\d])r(?<month>\d\d)(?<day>\d\d)-(?<hour>\d\d)(?<minute>\d\d)(?!\d)/iu;

/** The code in a line, wherever it stands in it; null: none. `hour` null: no such hour. */
export function walkCodeIn(
  line: string,
): { readonly text: string; readonly day: DayOfYear; readonly hour: number | null } | null {
  const found = CODE.exec(line);
  if (found === null) return null;
  const { month, day, hour, minute } = found.groups!;
  const [hours, minutes] = [Number(hour), Number(minute)];
  return {
    text: found[0],
    day: { month: Number(month), day: Number(day) },
    hour: hours < 24 && minutes < 60 ? hours + minutes / 60 : null,
  };
}
