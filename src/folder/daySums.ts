import { addDays, type LocalDate } from "../quantity/index.ts";
import type { Reason } from "./drops.ts";
import { type Sequence, sequence } from "./sequence.ts";

/** A day's low and high as a log says them. */
export interface DayRange {
  readonly date: LocalDate;
  /** [°C] */
  readonly low: number;
  readonly high: number;
}

export interface DaySums {
  readonly days: Sequence;
  /**
   * Takes in a day's low, its high, or both; they may stand in rows of their own.
   *
   * @param wall - The date, in milliseconds as if it were universal time.
   */
  feed(line: number, wall: number, low: number | null, high: number | null): void;
  finish(): readonly DayRange[];
}

const DAY = 86_400_000;

/** Gathers lows and highs into days. @param drop - Told of every day left out. */
export function daySums(drop: (reason: Reason, line: number) => void): DaySums {
  const order = sequence();
  const found = new Map<number, { readonly line: number; low: number | null; high: number | null }>();
  return {
    days: order,
    feed(line, wall, low, high) {
      order.next(wall);
      const day = Math.floor(wall / DAY);
      const before = found.get(day);
      if (before === undefined) found.set(day, { line, low, high });
      else if ((low !== null && before.low !== null) || (high !== null && before.high !== null))
        drop("repeated", line);
      else {
        before.low ??= low;
        before.high ??= high;
      }
    },
    finish: () =>
      [...found]
        .sort(([a], [b]) => a - b)
        .flatMap(([day, { line, low, high }]) => {
          if (low !== null && high !== null && low <= high)
            return [{ date: addDays("1970-01-01", day), low, high }];
          drop(low === null || high === null ? "noReading" : "lowAboveHigh", line);
          return [];
        }),
  };
}
