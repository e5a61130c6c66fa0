import { addDays, type LocalDate } from "../../src/index.ts";
import { seeded } from "../decide/seeded.ts";
import { CITIES, type City } from "../real/cities.ts";
import { gauss } from "../real/foretold.ts";
import { weekOf } from "./promiseFarms.ts";
import { type Kept, keptIn } from "./trueWeek.ts";

const CITY_NAMES = Object.keys(CITIES) as City[];

/** The promises of many weeks, week by week: from the middle of March to the middle of October, cities and years in turn. */
export function weeksKept(
  kind: "example" | "random",
  count: number,
  seed: number,
): readonly (readonly Kept[])[] {
  return Array.from({ length: count }, (_, i) => {
    const own = 2 * (seed * 100_003 + i) + (kind === "example" ? 0 : 1);
    const chance = seeded(own);
    const city = CITY_NAMES[i % CITY_NAMES.length]!;
    const year = 2012 + (Math.floor(i / CITY_NAMES.length) % 4);
    const date = addDays(`${year}-03-15` as LocalDate, Math.floor(chance() * 215));
    return keptIn(weekOf(kind, city, date, chance), city, date, chance, gauss(own)) ?? [];
  });
}

/** How often a promise was kept. */
export interface Share {
  /** Promises of more than nothing. */
  readonly promises: number;
  readonly kept: number;
  /** Half of the 95 % range of the share, by the binomial, and with all promises of a week taken as one draw. */
  readonly binomial: number;
  readonly byWeek: number;
}

/** @param part - Weight promised of each; nothing promised counts as no promise. */
export function shareKept(weeks: readonly (readonly Kept[])[], part: (kept: Kept) => number): Share {
  const counts = weeks.map((week) => {
    const some = week.filter((each) => part(each) > 0);
    return { promises: some.length, kept: some.filter((each) => each.came >= part(each)).length };
  });
  const sum = (of: (count: (typeof counts)[number]) => number): number =>
    counts.reduce((total, count) => total + of(count), 0);
  const promises = sum((count) => count.promises);
  const kept = sum((count) => count.kept);
  const share = kept / promises;
  const apart = sum((count) => (count.kept - share * count.promises) ** 2);
  return {
    promises,
    kept,
    binomial: 1.96 * Math.sqrt((share * (1 - share)) / promises),
    byWeek: (1.96 * Math.sqrt(apart)) / promises,
  };
}
