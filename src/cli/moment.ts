import type { Farm } from "../farm/index.ts";
import { parseDate, parseMoment, type Units, yearFirst } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import { type Instant, instant, instantAt, localDate } from "../quantity/index.ts";
import { usage } from "./context.ts";
import type { Given } from "./spec.ts";

const MINUTE = 60_000;

/** A moment that is not written year-month-day, with the right form of that very moment where it can be told. */
export function otherMoment(
  option: string,
  expected: string,
  text: string,
  { units, place }: { readonly units: Units; readonly place: { readonly zone: string } },
  now: number,
): Problem {
  const read = yearFirst(text, localDate(place.zone, instant(now)), units);
  const hint =
    read === null
      ? "Use year-month-day and the farm's clock."
      : "unclear" in read
        ? read.unclear
        : `Did you mean "${read.written}"?`;
  return usage(option, expected, text, hint);
}

/**
 * The moment given with --on on the farm's clock. A date alone is one minute before its morning walk,
 * so that this walk is the first one planned; nothing given is now.
 */
export function momentGiven(
  given: Given,
  farm: Pick<Farm, "place" | "walks" | "units">,
  now: number,
): { readonly at: Instant } | { readonly problem: Problem } {
  const text = given.on;
  if (typeof text !== "string") return { at: instant(now) };
  const clock = { zone: farm.place.zone, walks: farm.walks };
  const date = parseDate(text);
  if (date !== null) return { at: instant(instantAt(clock.zone, date, clock.walks.morning) - MINUTE) };
  const at = parseMoment(text, clock, null);
  if (at !== null) return { at };
  const expected = "a date like 2026-04-20 or a moment like 2026-04-20T14:30";
  return { problem: otherMoment("--on", expected, text, farm, now) };
}
