import type { Farm } from "../farm/index.ts";
import { addDays, type Instant, instantAt, type LocalDate, weekday } from "../quantity/index.ts";
import type { Pick } from "./outcome.ts";
import type { Frost } from "./thaw.ts";

/**
 * Every moment greens are cut for a market, in order of time, from `on` to the last date looked at.
 *
 * @param plannedUntil - Picks up to this moment belong to the time planned.
 * @param frozenAt - A pick whose hour is past counts as long as its leaves have not thawed: nobody has cut them.
 */
export function picksOf(
  farm: Farm,
  on: Instant,
  dates: readonly LocalDate[],
  plannedUntil: Instant,
  lookout: Instant,
  frozenAt: (at: Instant) => Frost,
): readonly Pick[] {
  const isAhead = (at: Instant): boolean => at >= on || (frozenAt(at).thaw ?? at) > on;
  const last = dates[dates.length - 1]!;
  const days = [...dates, ...[1, 2, 3, 4, 5, 6, 7].map((more) => addDays(last, more))];
  return farm.markets
    .flatMap((market) =>
      days
        .filter((date) => weekday(date) === market.weekday)
        .flatMap((marketDate) =>
          market.picks.map(({ daysBefore, hour }): Pick => {
            const date = addDays(marketDate, -daysBefore);
            const at = instantAt(farm.place.zone, date, hour);
            return { market, marketDate, at, date, planned: at <= plannedUntil };
          }),
        ),
    )
    .filter(({ at }) => isAhead(at) && at <= lookout)
    .sort((a, b) => a.at - b.at);
}
