import { between } from "../growth/index.ts";
import { daysBetween, HOUR, instantAt, type LocalDate, localDate } from "../quantity/index.ts";
import type { Freed } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** Month and day of the shortest day, north and south of the equator. */
const SHORTEST = { north: "12-21", south: "06-21" } as const;

/** Days from the longest to the shortest day. [d] */
const HALF_YEAR = 183;

/**
 * Could a sowing of today come to size before the shortest day, at the pace of the days in sight and coming up as long after its
 * sowing as this one? Where days grow shorter, one that could not is slower still and may stand all winter. judgement
 */
function ripensYet(
  { farm: { place }, horizon }: Scene,
  { growing, standing: { crop, succession, emergence } }: SuccessionTable,
): boolean {
  const today = localDate(place.zone, horizon.on);
  const shortest = `${today.slice(0, 4)}-${SHORTEST[place.latitude < 0 ? "south" : "north"]}` as LocalDate;
  const left = daysBetween(today, shortest);
  if (left < 0 || left >= HALF_YEAR) return true;
  const { pace, from } = growing.unchanged;
  const ahead = Math.max(horizon.now, growing.origin);
  const aDay = (between(pace, from, ahead, horizon.lookout) / (horizon.lookout - ahead)) * 24;
  const up =
    emergence === null ? 0 : (emergence.at - instantAt(place.zone, succession.sown, 0)) / (24 * HOUR);
  return aDay > 0 && up + crop.requirement / aDay <= left;
}

/**
 * What clearing a bed now is worth to another sowing: each day up to its cut in the plan a bed-day's share of a whole harvest like
 * its own, less what the standing bed is charged for waiting;
 * null where it is left uncut, or no sowing would come to size in time. judgement
 */
export function freedBy(scene: Scene, { chosen }: Planned, table: SuccessionTable): Freed | null {
  const { horizon, settings } = scene;
  const result = chosen.successions.find((each) => each.table === table);
  if (result === undefined || result.outlet === null || !ripensYet(scene, table)) return null;
  const days = Math.max(0, (result.outlet.at - horizon.on) / (24 * HOUR));
  const lacking = Math.max(0, table.mass * table.price - Math.max(0, result.worth - result.again));
  return { days, worth: days * settings.bedDay * lacking };
}
