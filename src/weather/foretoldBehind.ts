import {
  daysBetween,
  HOUR,
  type Instant,
  instant,
  type LocalDate,
  localDate,
  startOf,
} from "../quantity/index.ts";
import type { DailyRecord, Forecast, HourlyRecord } from "./record.ts";
import { SHORT_GAP } from "./shortGap.ts";

/**
 * Furthest ahead a forecast still tells a day that lies behind better than the days beside it do. [d] judgement: a
 * forecast's error grows from 1.3 to some 3 °C in a week, about what one day's temperatures differ from the next's
 */
export const REACH = 7;

/** What forecasts said of days that lie behind: the last word on each. */
export function foretoldBehind(
  zone: string,
  forecasts: readonly Forecast[],
  today: LocalDate,
): ReadonlyMap<LocalDate, DailyRecord> {
  const said = new Map<LocalDate, DailyRecord>();
  for (const { issued, days } of [...forecasts].sort((a, b) => a.issued - b.issued)) {
    const date = localDate(zone, issued);
    for (const day of days) {
      const ahead = daysBetween(date, day.date);
      if (day.date < today && ahead >= 0 && ahead <= REACH) said.set(day.date, day);
    }
  }
  return said;
}

/**
 * The first moment from one to another that a log leaves open for longer than a straight line bridges; null: there is none.
 *
 * @param hours - In order of time.
 */
export function firstOpen(hours: readonly HourlyRecord[], from: Instant, until: Instant): Instant | null {
  let open = from;
  for (const { hour } of hours) {
    const [begins, ends] = [startOf(hour), startOf(hour) + HOUR];
    if (ends <= open) continue;
    if (begins - open > SHORT_GAP * HOUR) return open;
    open = instant(ends);
  }
  return until - open > SHORT_GAP * HOUR ? open : null;
}
