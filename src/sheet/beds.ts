import type { MadeFrom, SuccessionOutlook } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";

/** Where each succession stands at a moment, before any of it is worded. */
export interface Beds {
  readonly farm: Farm;
  readonly on: Instant;
  readonly successions: readonly SuccessionOutlook[];
  readonly madeFrom: MadeFrom;
  readonly problems: readonly Problem[];
}
