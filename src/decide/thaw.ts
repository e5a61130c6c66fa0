import { HOUR, type Instant, localDate } from "../quantity/index.ts";

/** Leaves have thawed once bare ground has been above freezing for so long. [h] judgement */
const THAWING = 1;

/** The bed is frozen at an hour, and the hour of that day at which it has thawed; null where it was not, or does not. */
export interface Frost {
  readonly frozen: boolean;
  readonly thaw: Instant | null;
}

/**
 * Are leaves frozen at a moment, and until when?
 *
 * @param frost - Bare ground at crop height in calm air by the hour. [°C]
 * @param first - Hour since 1970 of its first value.
 */
export function frostAt(zone: string, frost: Float64Array, first: number, at: Instant): Frost {
  const isFrozen = (moment: Instant): boolean => {
    const hour = Math.min(frost.length - 1, Math.floor(moment / HOUR) - first);
    return frost.subarray(Math.max(0, hour - THAWING), hour + 1).some((air) => air <= 0);
  };
  if (!isFrozen(at)) return { frozen: false, thaw: null };
  const today = localDate(zone, at);
  let later = (Math.ceil(at / HOUR) * HOUR) as Instant;
  while (isFrozen(later) && localDate(zone, later) === today) later = (later + HOUR) as Instant;
  return { frozen: true, thaw: localDate(zone, later) === today ? later : null };
}
