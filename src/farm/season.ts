import type { LocalDate } from "../quantity/index.ts";

/** Three months each, by the calendar of the farm's half of the earth. */
export const SEASONS_OF_YEAR = ["winter", "spring", "summer", "autumn"] as const;
export type SeasonOfYear = (typeof SEASONS_OF_YEAR)[number];

/** The season a date lies in: winter begins with December, south of the equator with June. */
export function seasonOf(date: LocalDate, latitude: number): SeasonOfYear {
  const month = Number(date.slice(5, 7)) + (latitude < 0 ? 6 : 0);
  return SEASONS_OF_YEAR[Math.floor((month % 12) / 3)]!;
}
