import type { Problem } from "../problem/index.ts";
import { addDays, type Instant, type LocalDate, localDate, weekday } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";
import { WEEKDAYS } from "./calendarNames.ts";
import { collapsed } from "./collapsed.ts";
import { nearestSuch } from "./dayInWords.ts";
import { shown, type Units } from "./faults.ts";
import { MOST_RAIN, type ReadForecast } from "./forecastFile.ts";
import type { Table } from "./row.ts";
import { nearestForm, type TypedDay, type TypedLine, typedLine } from "./typedLine.ts";

/** The date of a line; a weekday is the next such day from today, or the one that follows the line above. */
function dateOf(day: TypedDay | null, today: LocalDate, above: LocalDate | null): LocalDate | null {
  const following = above === null ? today : addDays(above, 1);
  if (day === null) return following;
  if (day.kind === "date") return day.date;
  if (day.kind === "ahead") return addDays(today, day.days);
  if (day.kind === "ofYear") return nearestSuch(day.day, today);
  if (weekday(following) === day.weekday && following >= today) return following;
  return addDays(today, (day.weekday - weekday(today) + 7) % 7);
}

type Fault = Pick<Problem, "code" | "expected" | "hint">;

/** What is wrong with a day as it was typed; null when nothing is. */
function faultOf(
  line: TypedLine,
  date: LocalDate | null,
  taken: ReadonlyMap<LocalDate, unknown>,
  units: Units,
): Fault | null {
  const fault = (code: string, expected: string, hint: string): Fault => ({ code, expected, hint });
  switch (line.range.fault) {
    case "unreadable":
      return fault("forecast-line", "a high and a low", nearestForm(line, units));
    case "swapped":
      return fault("low-above-high", "a high not below the low", "Swap the two.");
    case "outside":
      return units === "US"
        ? fault("temperature-outside", "temperatures between −76 and 140 °F", "Correct the number.")
        : fault(
            "temperature-outside",
            "temperatures between −60 and 60 °C",
            "Write the unit behind a number in °F, like 62F 41F.",
          );
  }
  if ((line.fall?.amount ?? 0) > MOST_RAIN)
    return fault("rain-out-of-range", "an amount of rain or snow that falls in a day", "Correct the number.");
  if (date === null) return fault("date-unreadable", "a date the calendar has", "Correct the day.");
  if (line.weekday !== null && weekday(date) !== line.weekday)
    return fault(
      "weekday-unlike-date",
      `${WEEKDAYS[weekday(date)]!}, on which ${date} falls`,
      "Correct the day or the date.",
    );
  return taken.has(date)
    ? fault(
        "date-twice",
        "each day once",
        `${date} is there already; write the date when you mean a later one.`,
      )
    : null;
}

/**
 * Reads a forecast typed one line a day: high and low in either order, and where known the day, the sky, the wind and what falls.
 * Lines without a day follow each other, the first being the day it was issued. What stands behind a # is passed over.
 *
 * @param separator - At which its lines were cut.
 * @param said - When it was issued, if the grower says so; else it is now.
 * @param units - The farm's, for numbers without one.
 */
export function typedForecast(
  table: Table,
  separator: string,
  zone: string,
  said: Instant | null,
  now: Instant,
  units: Units,
): ReadForecast {
  const issued = said ?? now;
  const today = localDate(zone, issued);
  const problems: Problem[] = [];
  const days = new Map<LocalDate, DailyRecord>();
  let above: LocalDate | null = null;
  for (const { line, cells } of table.rows) {
    const text = cells.join(separator).replace(/#.*$/u, "").trim();
    if (text === "") continue;
    const read = typedLine(text, units);
    const date: LocalDate | null = dateOf(read.day, today, above);
    above = date ?? above;
    const fault = faultOf(read, date, days, units);
    if (fault !== null)
      problems.push({
        ...fault,
        weight: "stops",
        file: table.file,
        line,
        column: null,
        received: shown(text),
      });
    else if (date !== null && read.range.fault === null) {
      const { low, high } = read.range;
      const { wind, sky, fall } = read;
      const falls =
        fall === null ? {} : fall.amount === null ? { wet: true as const } : { rain: fall.amount };
      days.set(date, { date, low, high, wind, sky, ...falls });
    }
  }
  if (problems.length > 0) return { forecast: null, issuedBy: null, problems: collapsed(problems) };
  const sorted = [...days.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
  return { forecast: { issued, days: sorted }, issuedBy: said === null ? "now" : "option", problems };
}
