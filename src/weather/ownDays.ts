import type { LocalDate } from "../quantity/index.ts";
import { loggedDays } from "./loggedDays.ts";
import type { DailyRecord, HourlyRecord } from "./record.ts";

/**
 * Every whole day the farm has recorded, oldest first.
 *
 * @param hours - Of the sensor outside, in order of time.
 * @param days - Of a record that is daily by nature; where there are hours of the day, these count.
 */
export function ownDays(
  zone: string,
  hours: readonly HourlyRecord[],
  days: readonly DailyRecord[],
): readonly DailyRecord[] {
  const found = new Map<LocalDate, DailyRecord>(
    [...days, ...loggedDays(hours, zone)].map((day) => [day.date, day]),
  );
  return [...found.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}
