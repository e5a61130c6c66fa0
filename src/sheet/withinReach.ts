import type { Pick, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
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
  if (earliest === null) return "Salad size comes later than the days looked at.";
  const told = (date: LocalDate): string => mark(outlook) + monthAndDay(units, date);
  const from =
    earliest === latest
      ? `Salad size from ${told(earliest)} on`
      : latest === null
        ? `With covers, salad size from ${told(earliest)} at the earliest`
        : `With covers, salad size from ${told(earliest)} at the earliest and ${told(latest)} at the latest`;
  const picks = outlook.atPicks.flatMap(({ pick }) => (pick.planned ? [pick] : []));
  // A market is reached by any of its picks.
  const reached = new Map<string, boolean>();
  for (const pick of picks) {
    const market = `${clean(pick.market.name)} ${monthAndDay(units, pick.marketDate)}`;
    reached.set(market, reached.get(market) === true || within(outlook, pick));
  }
  const markets = [...reached.keys()];
  const right = markets.filter((market) => reached.get(market));
  const wrong = markets.filter((market) => !reached.get(market));
  if (picks.length === 0) return `${from}.`;
  if (right.length === 0) return `${from}: right for no market of these days.`;
  const not = wrong.length === 0 ? "" : `, not for ${list(wrong, "or")}`;
  return `${from}: right for ${list(right)}${not}.`;
}
