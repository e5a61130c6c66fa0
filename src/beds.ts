import type { Farm } from "./farm/index.ts";
import { type MadeFrom, type SuccessionOutlook } from "./decide/index.ts";
import type { Problem } from "./problem/index.ts";
import type { Instant } from "./quantity/index.ts";
import { week, type WeekInput } from "./week.ts";

/** Where each succession stands. */
export interface Beds {
  readonly farm: Farm;
  readonly on: Instant;
  readonly successions: readonly SuccessionOutlook[];
  readonly madeFrom: MadeFrom;
  readonly problems: readonly Problem[];
}

/** Where every succession stands and will stand, in the order of the farm's list. */
export function beds(input: WeekInput): Beds {
  const { farm, on, successions, madeFrom, problems } = week(input);
  return { farm, on, successions, madeFrom, problems };
}
