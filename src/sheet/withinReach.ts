import type { Pick, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { addDays, type LocalDate } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { mark } from "./mark.ts";
import { monthAndDay } from "./words.ts";

/** Salad size there can be on the day of a pick under some cover: reached by the fastest, and by the slowest not yet left. */
function within({ reach: { earliest, latest }, windowDays }: SuccessionOutlook, { date }: Pick): boolean {
  if (earliest === null || date < earliest) return false;
  return latest === null || windowDays === null || date <= addDays(latest, Math.floor(windowDays));
}

/** First dates of salad size with the fastest and the slowest covers, and which markets of the days planned that reaches. */
export function withinReach(
  { units }: { readonly units: Farm["units"] },
  outlook: SuccessionOutlook,
): string {
  const { earliest, latest } = outlook.reach;
  const told = (date: LocalDate | null): string =>
    date === null ? "later" : mark(outlook) + monthAndDay(units, date);
  const dates = earliest === latest ? told(earliest) : `${told(earliest)} … ${told(latest)}`;
  const picks = outlook.atPicks.flatMap(({ pick }) => (pick.planned ? [pick] : []));
  const markets = picks.map(
    (pick) =>
      `${clean(pick.market.name)} ${monthAndDay(units, pick.marketDate)} ${within(outlook, pick) ? "within reach" : "out of reach"}`,
  );
  return `Salad size with covers: ${[dates, ...markets].join(", ")}.`;
}
