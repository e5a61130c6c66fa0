import type { Crop } from "../farm/index.ts";

/**
 * First hour at which half of the stand is up, or null when not within the hours given.
 *
 * @param seedbed - Hour by hour from sowing. [°C]
 * @source wagenvoortBierhuizen1974: (T − base)·days = sum; values in data/crops.json
 */
export function emergence(seedbed: Float64Array, { base, sum }: Crop["emergence"]): number | null {
  let gathered = 0;
  for (let i = 0; i < seedbed.length; i++) {
    gathered += Math.max(0, seedbed[i]! - base) / 24;
    if (gathered >= sum) return i;
  }
  return null;
}
