import type { LocalDate } from "../../src/quantity/index.ts";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A date as the tables here print it, in a year. @example dateOf("7 Nov", 2025) // => "2025-11-07" */
export function dateOf(printed: string, year: number): LocalDate {
  const [day, month] = printed.split(" ");
  const number = MONTHS.indexOf(month!) + 1;
  return `${year}-${String(number).padStart(2, "0")}-${day!.padStart(2, "0")}` as LocalDate;
}
