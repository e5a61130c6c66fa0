import type { When } from "./moments.ts";

/** A step back within a date by which noon is passed. [ms] */
const NOON = 6 * 3_600_000;

const HOUR = 3_600_000;

/** Follows the times of a log for a clock of twelve hours that lost its morning and evening. */
export interface LostHalves {
  watch(line: number, when: When): void;
  /** First row behind a noon that nothing tells from a midnight; null when every time is plain. */
  found(): { readonly line: number; readonly text: string } | null;
}

/** No hour but 1 to 12, and on one date 1 after 12, is what remains when a spreadsheet drops AM and PM. */
export function lostHalves(): LostHalves {
  let plain = false;
  let date: string | null = null;
  let ms = 0;
  let first: { line: number; text: string } | null = null;
  return {
    watch(line, when) {
      if (plain) return;
      if (when.date === null || when.half || when.ms < HOUR || when.ms >= 13 * HOUR) {
        plain = true;
        return;
      }
      if (first === null && when.date === date && ms - when.ms > NOON)
        first = { line, text: `${when.date} ${Math.floor(when.ms / HOUR)} o'clock` };
      date = when.date;
      ms = when.ms;
    },
    found: () => (plain ? null : first),
  };
}
