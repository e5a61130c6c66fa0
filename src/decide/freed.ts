import { HOUR } from "../quantity/index.ts";
import type { Freed } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/**
 * What clearing a bed now is worth to another sowing: each day up to its cut in the plan a bed-day's share of a whole harvest like
 * its own, less what the standing bed is charged for waiting. judgement
 */
export function freedBy(
  { horizon, settings }: Scene,
  { chosen }: Planned,
  table: SuccessionTable,
): Freed | null {
  const result = chosen.successions.find((each) => each.table === table);
  if (result === undefined || result.outlet === null) return null;
  const days = Math.max(0, (result.outlet.at - horizon.on) / (24 * HOUR));
  const lacking = Math.max(0, table.mass * table.price - Math.max(0, result.worth - result.again));
  return { days, worth: days * settings.bedDay * lacking };
}
