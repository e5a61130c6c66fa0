import { HOUR, type Instant, instant } from "../quantity/index.ts";
import type { HourSum } from "./hourSum.ts";

/** A longer silence of a log is worth a word. [h] judgement */
const SILENCE = 3;

export interface Stretch {
  readonly from: Instant;
  readonly to: Instant;
}

/** Silences between the readings of a log, and the longest. @param hours - In order of time. */
export function silencesIn(hours: readonly HourSum[]): {
  readonly count: number;
  readonly longest: Stretch | null;
} {
  let count = 0;
  let longest: Stretch | null = null;
  let last: number | null = null;
  for (const { from, to } of hours) {
    if (last !== null && from - last > SILENCE * HOUR) {
      count += 1;
      if (longest === null || from - last > longest.to - longest.from)
        longest = { from: instant(last), to: instant(from) };
    }
    last = to;
  }
  return { count, longest };
}
