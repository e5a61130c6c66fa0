import { between } from "../growth/index.ts";
import { HOUR, type Instant, type LocalDate, localDate } from "../quantity/index.ts";
import { firstHours } from "./chances.ts";
import type { MemberCourse } from "./memberCourse.ts";
import type { DateSpread, SuccessionOutlook } from "./outcome.ts";
import type { PaceBounds } from "./paceBounds.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** Hour at which a running sum that begins at `start` with `already` reaches `needed`; null when it does not before the lookout. */
function crossing(
  sum: Float64Array,
  from: number,
  start: number,
  end: number,
  already: number,
  needed: number,
): number | null {
  for (let hour = start; hour <= end; hour++) {
    if (already + between(sum, from, start, hour) >= needed) return hour;
  }
  return null;
}

/**
 * Dates of the smallest salad size: with the fastest and the slowest allowed covers at every walk, with nothing changed, and under
 * the plan; for the last two with the range that weather, covers and requirement leave.
 */
export function reachOf(
  scene: Scene,
  planned: Planned,
  table: SuccessionTable,
  course: MemberCourse,
  bounds: PaceBounds,
): SuccessionOutlook["reach"] {
  const { horizon, weather, store, farm } = scene;
  const { problem, choice } = planned;
  const { growing, standing } = table;
  const S = problem.settings.length;
  const n = problem.intervals;
  const needed = growing.requirement * Math.exp(growing.belief.shift);
  const date = (hour: number | null): LocalDate | null =>
    hour === null ? null : localDate(farm.place.zone, ((weather.first + hour) * HOUR) as Instant);
  const unchanged = crossing(
    growing.unchanged.pace,
    growing.unchanged.from,
    growing.origin,
    horizon.lookout,
    growing.belief.head,
    needed,
  );
  const spread = (along: MemberCourse): DateSpread => {
    const { early, late } = firstHours(growing, along);
    return { early: date(early), late: date(late) };
  };
  const spreads = { unchanged: spread(growing.ahead), planned: spread(course) };
  if (unchanged !== null && unchanged <= horizon.now) {
    const reached = date(unchanged);
    return { earliest: reached, unchanged: reached, planned: reached, latest: reached, spread: spreads };
  }

  const along = (settingOf: (i: number) => number): number | null => {
    let sum = table.thermalTime;
    const cross = (s: number, start: number, end: number): number | null => {
      const sums = store.sums(standing.crop, problem.settings[s]!);
      return crossing(sums.pace, sums.from, Math.max(start, growing.origin), end, sum, needed);
    };
    for (let i = 0; i < n; i++) {
      const s = settingOf(i);
      const step = table.pace[i * S + s]!;
      if (sum + step >= needed) return cross(s, horizon.starts[i]!, horizon.starts[i + 1]!);
      sum += step;
    }
    return cross(settingOf(n - 1), horizon.end, horizon.lookout);
  };
  return {
    earliest: date(along(bounds.fastest)),
    unchanged: date(unchanged),
    planned: date(along((i) => choice[i]!)),
    latest: date(along(bounds.slowest)),
    spread: spreads,
  };
}
