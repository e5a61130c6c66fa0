import type { Crop, Settings } from "../farm/index.ts";
import { leafLength, relativeWeight, thermalTimeAt } from "../growth/index.ts";
import { quantile } from "../learn/index.ts";
import type { Centimetre } from "../quantity/index.ts";
import { ownTime, timeOf } from "./lastLeaf.ts";
import { departedBy, type MemberCourse, REQUIREMENTS } from "./memberCourse.ts";
import type { Range } from "./outcome.ts";
import type { Growing } from "./standing.ts";

/** What the members together say of a succession at one moment. */
export interface Chances {
  /** When weather, covers and requirement are as expected, and what four of five cases lie between. */
  readonly size: Range<Centimetre>;
  /** Half of the cases lie below. */
  readonly median: Centimetre;
  /** Chance to be inside the window. [0–1] */
  readonly odds: number;
  /** Expected weight relative to the middle of the window: of all there is, and of what is salad size. [1] */
  weight(): { readonly all: number; readonly inSize: number };
  /** The same of what is salad size, case by case in the order of the requirements drawn. [1] */
  cases(): Float64Array;
}

/** Outer shares of the range that four of five cases lie in. */
export const OUTER: readonly [low: number, high: number] = [0.1, 0.9];

/**
 * Size, odds and weight over all members and the requirements drawn with them.
 *
 * @param hour - Of the weather.
 * @param expected - Thermal time then, as the plan counts it. [°C·d]
 */
export function chancesAt(
  growing: Growing,
  crop: Crop,
  course: MemberCourse,
  hour: number,
  expected: number,
  settings: Settings,
): Chances {
  const { curve, belief, requirement, requirements } = growing;
  const largest = thermalTimeAt(curve, crop.largest);
  const departed = departedBy(course, hour);
  // As the crop's own requirement counts it.
  const drawn = requirements.map((_, i) =>
    ownTime(growing, i, Math.max(0, expected + departed[Math.floor(i / REQUIREMENTS)]!)),
  );
  const times = drawn.slice().sort();
  const size = (p: number): Centimetre => leafLength(curve, quantile(times, p));
  const [from, to] = [reached(times, requirement), reached(times, largest)];
  return {
    size: {
      low: size(OUTER[0]),
      middle: leafLength(curve, expected * Math.exp(-belief.shift)),
      high: size(OUTER[1]),
    },
    median: size(0.5),
    odds: (to - from) / times.length,
    weight() {
      let [all, inSize] = [times.length - to, 0];
      for (let i = 0; i < to; i++) {
        const own = relativeWeight(leafLength(curve, times[i]!), crop, settings);
        all += own;
        if (i >= from) inSize += own;
      }
      return { all: all / times.length, inSize: inSize / times.length };
    },
    cases: () =>
      drawn.map((time) =>
        time >= requirement && time < largest ? relativeWeight(leafLength(curve, time), crop, settings) : 0,
      ),
  };
}

/** First index at which a sum that never falls reaches what is needed; its length when it does not. */
function reached(sum: Float64Array, needed: number): number {
  let [low, high] = [0, sum.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sum[middle]! >= needed) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Hours of the weather from which and up to which four of five cases reach the smallest salad size; null: not within the time
 * looked at.
 */
export function firstHours(
  growing: Growing,
  course: MemberCourse,
): { readonly early: number | null; readonly late: number | null } {
  const { thermalTime, requirement, requirements, unchanged, origin, belief } = growing;
  const past = unchanged.pace;
  const begun = past[Math.max(0, origin - unchanged.from)] ?? 0;
  const hours = requirements.map((_, i) => {
    const wanted = timeOf(growing, i, requirement);
    if (wanted <= thermalTime) return unchanged.from + reached(past, begun + wanted - belief.head);
    const sum = course.members[Math.floor(i / REQUIREMENTS)]!;
    const at = reached(sum, wanted - thermalTime);
    return at === sum.length ? Number.POSITIVE_INFINITY : course.from + at;
  });
  const sorted = hours.sort();
  const hour = (p: number): number | null => {
    const found = sorted[Math.round(p * (sorted.length - 1))] ?? Number.POSITIVE_INFINITY;
    return Number.isFinite(found) ? found : null;
  };
  return { early: hour(OUTER[0]), late: hour(OUTER[1]) };
}
