import type { Place } from "../farm/index.ts";
import { type Calendar, dayOfYear, HOUR, type UtcHour } from "../quantity/index.ts";
import type { Turning } from "./diurnal.ts";
import { dayLength, solarNoon } from "./sun.ts";

/** Shortest day and night the curves are given: near the poles the sun no longer sets the day's course. [h] judgement */
const SHORTEST = 4;

/** Sunrise and length of day on the axis of the weather's hours. [h] */
export type Sun = Pick<Turning, "rise" | "length">;

/** The two days, as indices, between whose sunrises an hour lies, with their sun. */
export interface Between {
  readonly today: number;
  readonly next: number;
  readonly sun: Sun;
  readonly nextSun: Sun;
}

/** Finds for every hour the days whose lows and highs it lies between; the first and the last day repeat at the ends. */
export function turnings(place: Place, first: UtcHour, { dates, day }: Calendar): (hour: number) => Between {
  const suns = dates.map((date): Sun => {
    const length = Math.min(24 - SHORTEST, Math.max(SHORTEST, dayLength(place.latitude, dayOfYear(date))));
    return { rise: solarNoon(place.longitude, date) / HOUR - first - length / 2, length };
  });
  const last = suns.length - 1;
  const before = { ...suns[0]!, rise: suns[0]!.rise - 24 };
  const after = { ...suns[last]!, rise: suns[last]!.rise + 24 };
  return (hour) => {
    const own = day[hour]!;
    const today = hour + 0.5 < suns[own]!.rise ? own - 1 : own;
    return {
      today: Math.max(0, today),
      next: Math.min(last, today + 1),
      sun: suns[today] ?? before,
      nextSun: suns[today + 1] ?? after,
    };
  };
}
