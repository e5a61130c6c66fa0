import type { Climate } from "../cover/index.ts";
import type { Counted, Counting, Crop, Settings } from "../farm/index.ts";
import { type Celsius, type DegreeDays, degreeDays } from "../quantity/index.ts";
import type { Weather } from "../weather/index.ts";
import { between, type Sums } from "./accumulate.ts";
import { countedDay } from "./degreeDays.ts";
import { emergence } from "./emergence.ts";
import { leafCurve, thermalTimeAt } from "./leafLength.ts";
import { response } from "./response.ts";

/** Weather in which a requirement can be counted both ways: its own, and hour by hour with the crop's response. */
export interface Season {
  readonly weather: Weather;
  /** Bare ground over all of the weather. */
  readonly open: Climate;
  /** The crop's sums over the same hours. */
  readonly sums: Sums;
}

/** Degree-days by a way of counting, running; within a day they gather evenly. [°C·d] */
export function countedSums({ calendar, days }: Weather, counting: Counting): Float64Array {
  const { day } = calendar;
  const sums = new Float64Array(day.length + 1);
  const hours = new Int32Array(days.length);
  for (const index of day) hours[index]!++;
  const each = days.map((own, i) => countedDay(counting, own, days[i + 1]?.low ?? own.low));
  for (let i = 0; i < day.length; i++) sums[i + 1] = sums[i]! + each[day[i]!]! / hours[day[i]!]!;
  return sums;
}

/** What lies between the leaf length it was counted to and the smallest salad size. [°C·d] */
function beyondSmallest(crop: Crop, to: Counted["to"], settings: Settings): number {
  // The curve's rate does not depend on the requirement, so neither does the way from one length to another.
  const curve = leafCurve(crop, degreeDays(1000), settings);
  return thermalTimeAt(curve, to) - thermalTimeAt(curve, crop.smallest);
}

/**
 * A requirement brought from its own way of counting to the model's clock over one sowing: the hour at which its sum is
 * reached, and the pace gathered from emergence to that hour.
 *
 * @param running - `countedSums` of the same weather.
 * @param sown - Hour of the weather's arrays.
 * @returns null when the weather ends before the sum is reached, or it is reached before anything is up. [°C·d]
 */
export function ownRequirementFrom(
  crop: Crop,
  { sum, from, to }: Counted,
  { open, sums }: Season,
  running: Float64Array,
  sown: number,
  settings: Settings,
): DegreeDays | null {
  const toEmergence = emergence(open.seedbed.subarray(sown - open.from), crop.emergence);
  if (toEmergence === null) return null;
  const up = sown + toEmergence;
  const needed = running[from === "sowing" ? sown : up]! + sum;
  let reached = up;
  while (reached < running.length && running[reached]! < needed) reached++;
  if (reached === running.length || reached === up) return null;
  const gathered = between(sums.pace, sums.from, up, reached);
  const own = gathered - beyondSmallest(crop, to, settings);
  return own > 0 ? degreeDays(own) : null;
}

/**
 * The same at one steady temperature, day and night, in enough light.
 *
 * @returns null when nothing grows or emerges at it, or the sum is reached before emergence. [°C·d]
 * @example Math.round(ownRequirementAt(lettuce, { sum: 333, method: "simple average", base: 4.4, upper: null, cutOff: "none", from: "sowing", to: 8, at: 15 }, 15, settings)) // => 303
 */
export function ownRequirementAt(
  crop: Crop,
  counted: Counted,
  temperature: Celsius,
  settings: Settings,
): DegreeDays | null {
  const { sum, from, to } = counted;
  const aDay = countedDay(counted, { low: temperature, high: temperature }, temperature);
  const risen = temperature - crop.emergence.base;
  if (aDay <= 0 || risen <= 0) return null;
  const days = sum / aDay - (from === "sowing" ? crop.emergence.sum / risen : 0);
  const own = days * response(temperature, crop.growth) - beyondSmallest(crop, to, settings);
  return own > 0 ? degreeDays(own) : null;
}
