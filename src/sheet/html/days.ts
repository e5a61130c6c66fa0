import { addDays, type Instant, instantAt, type LocalDate, localDate } from "../../quantity/index.ts";

/** The midnights of the farm's clock in a stretch of time, each with the date that begins there. */
export function midnights(
  zone: string,
  from: Instant,
  until: Instant,
): readonly { readonly at: Instant; readonly date: LocalDate }[] {
  const found: { readonly at: Instant; readonly date: LocalDate }[] = [];
  for (let date = addDays(localDate(zone, from), 1); ; date = addDays(date, 1)) {
    const at = instantAt(zone, date, 0);
    if (at >= until) return found;
    found.push({ at, date });
  }
}
