import { type Farm, smoothedYears, type Usual } from "../farm/index.ts";
import { addDays, type LocalDate } from "../quantity/index.ts";
import type { DailyRecord } from "../weather/index.ts";

/** Whose usual weather it is: the mean of the farm's own years, the table of normals, or the months in farm.yaml. */
export type UsualBy =
  | { readonly by: "years"; readonly years: number }
  | { readonly by: "normals" }
  | { readonly by: "months" };

/**
 * Own years that make the usual weather. judgement: of three, thermal time errs as much as the settings allow for usual
 * weather, as measured years of two cities show; five leave some room.
 */
const YEARS = 5;

const key = (month: number, day: number): string =>
  `${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;

/** Own years count when at every date from one to another enough of them tell of it. */
function ownYears(
  own: readonly DailyRecord[],
  from: LocalDate,
  until: LocalDate,
): { readonly usual: readonly Usual[]; readonly by: UsualBy } | null {
  const smoothed = smoothedYears(own, YEARS);
  const years = new Map(smoothed.map((each) => [key(each.month, each.day), each.years]));
  let least = Number.POSITIVE_INFINITY;
  for (let date = from; date <= until; date = addDays(date, 1))
    least = Math.min(least, years.get(date.slice(5)) ?? 0);
  return least >= YEARS && Number.isFinite(least)
    ? { usual: smoothed, by: { by: "years", years: least } }
    : null;
}

/**
 * The usual weather of the dates from one to another by the best there is: the farm's own years where there are enough,
 * else the table of normals, else the months in farm.yaml. With none of them the last known days are carried on.
 */
export function usualWeather(
  { normals = [], usual }: Pick<Farm, "normals" | "usual">,
  own: readonly DailyRecord[],
  from: LocalDate,
  until: LocalDate,
): { readonly usual: readonly Usual[]; readonly by: UsualBy | null } {
  const years = ownYears(own, from, until);
  if (years !== null) return years;
  if (normals.length > 0) return { usual: normals, by: { by: "normals" } };
  return { usual, by: usual.length > 0 ? { by: "months" } : null };
}
