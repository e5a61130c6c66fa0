import { leafLength } from "../growth/index.ts";
import type { SuccessionResult } from "./evaluate.ts";
import type { Right } from "./outcome.ts";
import type { PaceBounds } from "./paceBounds.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** Thermal time at an outlet under a setting for each interval; beyond the last one that one lies on. [°C·d] */
function timeAt(
  { thermalTime, pace }: Pick<SuccessionTable, "thermalTime" | "pace">,
  outlet: NonNullable<SuccessionResult["outlet"]>,
  intervals: number,
  settingOf: (interval: number) => number,
): number {
  const { interval } = outlet;
  const S = outlet.pace.length;
  let sum = thermalTime;
  for (let i = 0; i < interval; i++) sum += pace[i * S + settingOf(i)]!;
  return sum + outlet.pace[settingOf(Math.min(interval, intervals - 1))]!;
}

/**
 * How a succession can be in salad size at a pick. Covers between the fastest and the slowest bring every size between theirs, so
 * that it is within reach where the fastest is large enough and the slowest not too large.
 *
 * @param unchanged - At that pick with nothing changed.
 * @param intervals - Between walks, of the time planned.
 */
export function rightAt(
  table: SuccessionTable,
  unchanged: SuccessionResult,
  intervals: number,
  { fastest, slowest }: PaceBounds,
): Right {
  const { crop } = table.standing;
  const { curve, belief } = table.growing;
  const long = (time: number): number => leafLength(curve, time * Math.exp(-belief.shift));
  const asItIs = long(unchanged.thermalTime);
  if (asItIs >= crop.smallest && asItIs <= crop.largest) return "asItIs";
  const at = (settingOf: (interval: number) => number): number =>
    long(timeAt(table, unchanged.outlet!, intervals, settingOf));
  return at(fastest) >= crop.smallest && at(slowest) <= crop.largest ? "withCovers" : "no";
}
