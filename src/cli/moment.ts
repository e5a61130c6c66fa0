import { type FarmClock, parseDate, parseMoment } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, instant, instantAt } from "../quantity/index.ts";
import { usage } from "./context.ts";
import type { Given } from "./spec.ts";

const MINUTE = 60_000;

/**
 * The moment given with --on on the farm's clock. A date alone is one minute before its morning walk,
 * so that this walk is the first one planned; nothing given is now.
 */
export function momentGiven(
  given: Given,
  clock: FarmClock,
  now: number,
): { readonly at: Instant } | { readonly problem: Problem } {
  const text = given.on;
  if (typeof text !== "string") return { at: instant(now) };
  const date = parseDate(text);
  if (date !== null) return { at: instant(instantAt(clock.zone, date, clock.walks.morning) - MINUTE) };
  const at = parseMoment(text, clock, null);
  if (at !== null) return { at };
  const expected = "a date like 2026-04-20 or a moment like 2026-04-20T14:30";
  return { problem: usage("--on", expected, text, "Use year-month-day and the farm's clock.") };
}
