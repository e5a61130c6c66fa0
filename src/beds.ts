import type { Solver } from "./decide/index.ts";
import type { Beds } from "./sheet/index.ts";
import { type WeekInput, week } from "./week.ts";

export type { Beds } from "./sheet/index.ts";

/** Where every succession stands and will stand, in the order of the farm's list. */
export function beds(input: WeekInput, solver: Solver): Beds {
  const { farm, on, successions, madeFrom, problems } = week(input, solver);
  return { farm, on, successions, madeFrom, problems };
}
