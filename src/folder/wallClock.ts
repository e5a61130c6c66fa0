import { tzOffset } from "@date-fns/tz";
import { HOUR, type Instant, instant } from "../quantity/index.ts";

const MINUTE = 60_000;
const DAY = 24 * HOUR;

/** What a wall-clock time means: one instant, none (clocks went forward over it), or two (clocks went back). */
export type WallMeaning =
  | { readonly kind: "once"; readonly at: Instant }
  | { readonly kind: "never" }
  | { readonly kind: "twice"; readonly first: Instant; readonly second: Instant };

export interface WallClock {
  /** Minutes ahead of universal time around a wall-clock time, or null where they change within a day of it. */
  steady(wall: number): number | null;
  meaning(wall: number): WallMeaning;
}

/** Reads wall-clock times of one zone. The zone is asked once an hour of data, not once a row. */
export function wallClock(zone: string): WallClock {
  const offset = (at: number): number => tzOffset(zone, new Date(at));
  let hour = Number.NaN;
  let held: number | null = null;
  const steady = (wall: number): number | null => {
    const thisHour = Math.floor(wall / HOUR);
    if (thisHour !== hour) {
      hour = thisHour;
      const before = offset(hour * HOUR - DAY);
      held = before === offset(hour * HOUR + DAY) ? before : null;
    }
    return held;
  };
  return {
    steady,
    meaning(wall) {
      const minutes = steady(wall);
      if (minutes !== null) return { kind: "once", at: instant(wall - minutes * MINUTE) };
      const offsets = new Set([offset(wall - DAY), offset(wall + DAY)]);
      const fits = [...offsets]
        .filter((ahead) => offset(wall - ahead * MINUTE) === ahead)
        .map((ahead) => instant(wall - ahead * MINUTE))
        .sort((a, b) => a - b);
      const [first, second] = fits;
      if (first === undefined) return { kind: "never" };
      return second === undefined ? { kind: "once", at: first } : { kind: "twice", first, second };
    },
  };
}
