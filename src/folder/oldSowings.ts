import { type Farm, withStandingSowings } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { daysBetween, type Instant, localDate } from "../quantity/index.ts";

/** No baby green stands longer. [d] judgement */
const LONGEST = 365;

/** Beds sown so long ago that the year is a slip, or the last cut was never noted. */
export function oldSowings(farm: Farm, on: Instant): readonly Problem[] {
  const { successions, notes, place } = withStandingSowings(farm, on);
  const today = localDate(place.zone, on);
  const done = (id: string): boolean =>
    notes.some((note) => note.kind === "cut" && note.last && note.succession === id && note.at <= on);
  return successions
    .filter(({ id, sown }) => daysBetween(sown, today) > LONGEST && !done(id))
    .map(({ id, sown }) => ({
      code: "sown-long-ago",
      weight: "needsYou",
      file: "successions.csv",
      line: null,
      column: "sown",
      expected: `a sowing of ${id} within the last year`,
      received: sown,
      hint: `Correct the year, or note its last cut: "leafpace note ${id} last cut".`,
    }));
}
