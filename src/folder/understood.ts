import type { Instant, LocalDate, UtcHour } from "../quantity/index.ts";
import type { DatesBy } from "./dateCandidates.ts";
import type { DateOrder } from "./dialect.ts";
import type { Dropped } from "./drops.ts";
import type { ScaleBy } from "./readingValue.ts";
import type { Scale } from "./scale.ts";
import type { Stretch } from "./silences.ts";

export interface HourMean {
  readonly hour: UtcHour;
  /** [°C] */
  readonly mean: number;
}

/** What was understood of one sensor's readings. */
export interface HoursUnderstood {
  readonly kind: "hours";
  readonly sensor: string;
  /** The column or, where rows name one, the station. */
  readonly source: string;
  readonly scale: Scale;
  readonly scaleBy: ScaleBy;
  readonly used: number;
  /** Most frequent step from one reading to the next. [s] null with a single reading. */
  readonly interval: number | null;
  readonly first: Instant;
  readonly last: Instant;
  readonly silences: number;
  readonly longest: Stretch | null;
  /** Readings in an hour that came twice. */
  readonly twice: number;
  readonly coldest: HourMean;
  readonly warmest: HourMean;
}

/** What was understood of one sensor's record of daily lows and highs. */
export interface DaysUnderstood {
  readonly kind: "days";
  readonly sensor: string;
  readonly source: string;
  readonly scale: Scale;
  readonly scaleBy: ScaleBy;
  /** Days used. */
  readonly used: number;
  readonly first: LocalDate;
  readonly last: LocalDate;
  readonly coldest: { readonly date: LocalDate; readonly low: number };
  readonly warmest: { readonly date: LocalDate; readonly high: number };
}

/** What was understood of a log, to be shown before anything is stored. */
export interface Understood {
  readonly titles: readonly string[];
  /** Line of the first header; null where there is none. */
  readonly headerLine: number | null;
  /** What the kind of file is known by: the words of its header. */
  readonly header: string;
  /** Headers below the first. */
  readonly moreHeaders: number;
  readonly timeColumns: readonly string[];
  readonly readingColumns: readonly string[];
  readonly ignored: readonly string[];
  readonly dates: DateOrder;
  readonly datesBy: DatesBy;
  readonly zone: string;
  readonly zoneBy: "option" | "farm" | "header";
  readonly rows: number;
  readonly used: number;
  readonly dropped: readonly Dropped[];
  readonly sensors: readonly (HoursUnderstood | DaysUnderstood)[];
  /** Columns or stations no sensor of the farm is named like. */
  readonly others: readonly string[];
  /** Options not said now that were said of such a file before. */
  readonly remembered: readonly string[];
}
