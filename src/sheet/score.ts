import type { Farm } from "../farm/index.ts";
import type {
  Card,
  DaysOff,
  LeadErrors,
  LeadShare,
  Outcomes,
  PickOutcome,
  Reliability,
  Verdict,
} from "../learn/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";

/** How earlier sheets and forecasts did, before any of it is worded. */
export interface Score {
  readonly farm: Farm;
  readonly on: Instant;
  /** Sheets issued up to then. */
  readonly sheets: number;
  readonly outcomes: Outcomes;
  /** Each crop, then all. */
  readonly cards: readonly Card[];
  readonly emerged: DaysOff;
  readonly cut: DaysOff;
  readonly reliability: Reliability;
  readonly byLead: readonly LeadShare[];
  readonly picks: readonly PickOutcome[];
  readonly forecasts: readonly LeadErrors[];
  readonly forecastsKept: number;
  readonly verdict: Verdict;
  readonly problems: readonly Problem[];
}
