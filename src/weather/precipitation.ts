import type { Settings } from "../farm/index.ts";
import {
  type Calendar,
  daysBetween,
  hourOf,
  type LocalDate,
  localDate,
  type UtcHour,
} from "../quantity/index.ts";
import { REACH } from "./foretoldBehind.ts";
import type { DailyRecord, Forecast } from "./record.ts";

/** What a forecast says of a day, a sky without rain included; null: nothing. [mm] */
const amountOf = ({ rain, wet, sky }: DailyRecord, { wetWord }: Settings): number | null =>
  rain ?? (wet === true ? wetWord : sky === null ? null : 0);

/**
 * One forecast's amounts by the hour of the weather: its hours, and of its days what these leave open, evenly. Of the hours
 * before its issue it says nothing where it has hours of their day: where these reach to the day's end, what they leave open fell
 * before it. [mm]
 */
function amounts(
  { issued, days, hours = [] }: Forecast,
  first: UtcHour,
  hoursOf: ReadonlyMap<LocalDate, readonly number[]>,
  settings: Settings,
): ReadonlyMap<number, number> {
  const said = new Map<number, number>();
  const issue = hourOf(issued) - first;
  for (const { hour, rain } of hours) if (rain !== null) said.set(hour - first, rain);
  for (const record of days) {
    const whole = amountOf(record, settings);
    if (whole === null) continue;
    const own = hoursOf.get(record.date) ?? [];
    if (own.includes(issue) && said.has(own.at(-1)!)) continue;
    const from = own.some((hour) => said.has(hour)) ? issue : Number.NEGATIVE_INFINITY;
    const open = own.filter((hour) => !said.has(hour) && hour >= from);
    const left = own.reduce((rest, hour) => rest - (said.get(hour) ?? 0), whole);
    for (const hour of open) said.set(hour, Math.max(0, left) / open.length);
  }
  return said;
}

/**
 * Rain, or snow as water, of every hour: ahead as the forecast has it, behind the last word of the forecasts of that time, logged
 * or not, since no log of temperatures tells of it. NaN: nobody said anything. [mm]
 *
 * @param now - Index of the hour that is running.
 */
export function precipitationOf(
  zone: string,
  forecast: Forecast | null,
  earlier: readonly Forecast[],
  first: UtcHour,
  now: number,
  { day, dates }: Calendar,
  settings: Settings,
): Float64Array {
  const fallen = new Float64Array(day.length).fill(Number.NaN);
  const hoursOf = new Map<LocalDate, number[]>(dates.map((date) => [date, []]));
  day.forEach((index, hour) => {
    hoursOf.get(dates[index]!)!.push(hour);
  });
  const all = [...earlier, ...(forecast === null ? [] : [forecast])].sort((a, b) => a.issued - b.issued);
  for (const each of all) {
    const issued = localDate(zone, each.issued);
    for (const [hour, amount] of amounts(each, first, hoursOf, settings)) {
      const date = dates[day[hour] ?? -1];
      if (date === undefined || (hour >= now && each !== forecast)) continue;
      const ahead = daysBetween(issued, date);
      if (ahead >= 0 && (hour >= now || ahead <= REACH)) fallen[hour] = amount;
    }
  }
  return fallen;
}
