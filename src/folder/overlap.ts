import { instant, type UtcHour } from "../quantity/index.ts";
import { type HourSum, laid } from "./hourSum.ts";
import type { Sums } from "./hourSums.ts";

/**
 * Parts of one log as one, each reading once: where two downloads overlap, what both hold counts once.
 *
 * @param repeat - Told how many readings were there already.
 */
export function joined(parts: readonly Sums[], repeat: (count: number) => void): Sums {
  const [only] = parts;
  if (parts.length === 1) return only!;
  const hours = new Map<UtcHour, HourSum>();
  let clashes = 0;
  let repeated = 0;
  for (const [name, hour] of parts.flatMap((part) => [...part.hours])) {
    const before = hours.get(name);
    if (before === undefined) hours.set(name, hour);
    else if (before.held !== null && hour.held !== null) {
      for (let i = 0; i < hour.held.length; i += 2) {
        const fate = laid(before, hour.held[i]!, hour.held[i + 1]!);
        if (fate === "repeated") repeated += 1;
        if (fate === "clash") clashes += 1;
      }
    } else {
      // Only sums are left: the fuller of the two stands.
      if (hour.count > before.count) hours.set(name, hour);
      repeated += Math.min(hour.count, before.count);
    }
  }
  if (repeated > 0) repeat(repeated);
  const times = parts.flatMap(({ first, last }) => (first === null || last === null ? [] : [first, last]));
  const sum = (count: (part: Sums) => number): number => parts.reduce((all, part) => all + count(part), 0);
  const fullest = parts.reduce((best, part) => (part.used > best.used ? part : best));
  return {
    hours,
    used: sum(({ used }) => used) - repeated,
    first: times.length === 0 ? null : instant(Math.min(...times)),
    last: times.length === 0 ? null : instant(Math.max(...times)),
    interval: fullest.interval,
    twice: sum(({ twice }) => twice),
    clashes: clashes + sum((part) => part.clashes),
    skipped: parts.find(({ skipped }) => skipped !== null)?.skipped ?? null,
    evenThrough: parts.find(({ evenThrough }) => evenThrough !== null)?.evenThrough ?? null,
  };
}
