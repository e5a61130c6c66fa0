import { type Celsius, calendar, type LocalDate } from "../quantity/index.ts";
import type { DailyRecord, HourlyRecord } from "./record.ts";

/** Readings of at least this many hours make a day's low and high its own. [h] */
export const WHOLE_DAY = 20;

/** Low and high of every day a log has whole, oldest first. @param hours - In order of time. */
export function loggedDays(hours: readonly HourlyRecord[], zone: string): readonly DailyRecord[] {
  const [begin, end] = [hours[0], hours[hours.length - 1]];
  if (begin === undefined || end === undefined) return [];
  const { dates, day } = calendar(zone, begin.hour, end.hour - begin.hour + 1);
  const days = dates.map((date: LocalDate) => ({
    date,
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
    hours: 0,
  }));
  for (const { hour, lowest, highest } of hours) {
    const own = days[day[hour - begin.hour]!]!;
    own.low = Math.min(own.low, lowest);
    own.high = Math.max(own.high, highest);
    own.hours += 1;
  }
  return days
    .filter((each) => each.hours >= WHOLE_DAY)
    .map(({ date, low, high }) => ({
      date,
      low: low as Celsius,
      high: high as Celsius,
      wind: null,
      sky: null,
    }));
}
