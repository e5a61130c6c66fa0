import { type StoredHour, tidyHour } from "./storeFile.ts";

/** An hour that an import gave other readings than the store had. */
export interface Differing {
  readonly before: StoredHour;
  readonly after: StoredHour;
}

const alike = (a: StoredHour, b: StoredHour): boolean =>
  a.sum === b.sum && a.count === b.count && a.lowest === b.lowest && a.highest === b.highest;

/** More readings of the same hour, among which those before can be. */
const completes = (before: StoredHour, after: StoredHour): boolean =>
  after.count > before.count && after.lowest <= before.lowest && after.highest >= before.highest;

const joined = (a: StoredHour, b: StoredHour): StoredHour =>
  tidyHour({
    ...b,
    sum: a.sum + b.sum,
    count: a.count + b.count,
    lowest: Math.min(a.lowest, b.lowest),
    highest: Math.max(a.highest, b.highest),
  });

/**
 * Stored hours with an import laid over them: the later import wins. Its first and last hour may be cut: there the hour
 * with more readings stays, and two parts that together have as many readings as the hour beside them become one.
 *
 * @param imported - In order of time.
 * @returns The hours in order of time, and those in which one reading replaces another.
 */
export function mergeHours(
  stored: readonly StoredHour[],
  imported: readonly StoredHour[],
): { readonly hours: readonly StoredHour[]; readonly differing: readonly Differing[] } {
  const merged = new Map(stored.map((hour) => [hour.hour, hour]));
  const differing: Differing[] = [];
  imported.forEach((hour, index) => {
    const before = merged.get(hour.hour);
    if (before === undefined) {
      merged.set(hour.hour, hour);
      return;
    }
    if (alike(before, hour)) return;
    if (index === 0 || index === imported.length - 1) {
      const whole = imported[index === 0 ? 1 : index - 1]?.count;
      if (before.count + hour.count === whole) {
        merged.set(hour.hour, joined(before, hour));
        return;
      }
      if (before.count > hour.count) return;
    }
    merged.set(hour.hour, hour);
    if (!completes(before, hour)) differing.push({ before, after: hour });
  });
  return { hours: [...merged.values()].sort((a, b) => a.hour - b.hour), differing };
}
