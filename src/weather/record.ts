import type {
  Celsius,
  Instant,
  LocalDate,
  Megajoule,
  MetrePerSecond,
  UtcHour,
  WattPerSquareMetre,
} from "../quantity/index.ts";

/** One hour of one sensor as the store keeps it. */
export interface HourlyRecord {
  readonly hour: UtcHour;
  /** Mean of the readings in the hour. [°C] */
  readonly mean: Celsius;
  readonly lowest: Celsius;
  readonly highest: Celsius;
  /** Readings in the hour. */
  readonly count: number;
  /** Mean in the open, where a sensor measures it. [W/m²] */
  readonly radiation?: WattPerSquareMetre;
}

/** A day's low and high, of a forecast or of a record that is daily by nature. */
export interface DailyRecord {
  readonly date: LocalDate;
  readonly low: Celsius;
  readonly high: Celsius;
  /** Mean wind of the day, where known. [m/s] */
  readonly wind: MetrePerSecond | null;
  readonly sky: "sun" | "mixed" | "cloud" | null;
  /** Hours of bright sunshine, where recorded. [h] */
  readonly sunshine?: number;
  /** Measured in the open over the whole day. [MJ/m²] */
  readonly radiation?: Megajoule;
}

export interface Forecast {
  readonly issued: Instant;
  readonly days: readonly DailyRecord[];
}

/** What one sensor recorded, oldest first. Where it stands, the farm says. */
export interface SensorRecords {
  readonly sensor: string;
  readonly hours: readonly HourlyRecord[];
  /** Lows and highs of days from a daily record, if it has one. */
  readonly days?: readonly DailyRecord[];
}
