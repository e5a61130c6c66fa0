/**
 * Words one family of logs uses. All lower case, without accents. A word of five letters or more also counts
 * within a longer one, as "temperatur" in "lufttemperatur"; a shorter one must stand alone.
 */
export interface Words {
  /** Whole headers of columns with date and time together, a date, a time of day, and parts of either. */
  readonly dateTime: readonly string[];
  readonly date: readonly string[];
  readonly time: readonly string[];
  readonly year: readonly string[];
  readonly month: readonly string[];
  readonly day: readonly string[];
  readonly dayOfYear: readonly string[];
  readonly hour: readonly string[];
  readonly minute: readonly string[];
  /** A clock as one number, 930 being half past nine. */
  readonly hourMinute: readonly string[];
  /** Whole headers of columns that say whose reading, of what, and in which unit. */
  readonly station: readonly string[];
  readonly element: readonly string[];
  readonly unit: readonly string[];
  /** Headers of readings that do not say of what. */
  readonly value: readonly string[];
  /** Words within a header: a temperature; that of outside air; another one or another thing. */
  readonly temperature: readonly string[];
  readonly air: readonly string[];
  readonly notAir: readonly string[];
  readonly low: readonly string[];
  readonly high: readonly string[];
  /** Spellings of units in headers and cells, and words for a tenth of one. */
  readonly fahrenheit: readonly string[];
  readonly celsius: readonly string[];
  readonly kelvin: readonly string[];
  readonly tenths: readonly string[];
  /** Names of the twelve months: how each begins. */
  readonly months: readonly (readonly string[])[];
  /** Words for the halves of the day. */
  readonly morning: readonly string[];
  readonly evening: readonly string[];
  /** Words behind a time of day that add nothing. */
  readonly oClock: readonly string[];
  /** Words within a date that add nothing. */
  readonly fillers: readonly string[];
  /** Words for a clock that keeps its zone's standard time all year. */
  readonly standardTime: readonly string[];
  /** Words of a line that speaks of the clock. */
  readonly clockTalk: readonly string[];
}
