import type { Problem } from "../problem/index.ts";
import type { Instant, LocalDate } from "../quantity/index.ts";
import type { DayRange } from "./daySums.ts";
import type { DateOrder, Dialect } from "./dialect.ts";
import type { Units } from "./faults.ts";
import type { StoredHour } from "./storeFile.ts";
import type { Understood } from "./understood.ts";

/** What the grower may say of a log; null: the file must say it. */
export interface LogSaid {
  readonly unit: "C" | "F" | null;
  readonly dates: DateOrder | null;
  readonly zone: string | null;
  readonly column: string | null;
  readonly sensor: string | null;
}

export interface LogOptions extends LogSaid {
  /** Name people know the file by. */
  readonly file: string;
  /** The farm's zone and sensors, and its units for examples in problems. */
  readonly farm: { readonly zone: string; readonly sensors: readonly string[]; readonly units: Units };
  /** Nothing can have been measured after it. */
  readonly now: Instant;
  /** Between the cells; with a blank, a row holds its whole line as one cell. */
  readonly separator: string;
  readonly dialect?: Dialect;
  /** What was said before of logs with this header, for what is not said now. */
  readonly recall?: (header: string) => LogSaid;
}

/** What one sensor recorded according to a log. */
export interface SensorLog {
  readonly sensor: string;
  readonly hours: readonly StoredHour[];
  readonly days: readonly DayRange[];
}

export interface LogReading {
  /** null when the log cannot be stored. */
  readonly understood: Understood | null;
  readonly sensors: readonly SensorLog[];
  readonly problems: readonly Problem[];
  /** Last date of a daily record, even of one that cannot be stored. */
  readonly lastDay: LocalDate | null;
}
