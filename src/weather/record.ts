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
  /** Mean share of the sky under cloud, where foretold. 0 clear to 1 overcast. [1] */
  readonly cloud?: number;
  /** Rain, or snow as water. [mm] */
  readonly rain?: number;
  /** Rain or snow is said, and nothing of how much. */
  readonly wet?: true;
  /** Hours of bright sunshine, where recorded. [h] */
  readonly sunshine?: number;
  /** Measured in the open over the whole day. [MJ/m²] */
  readonly radiation?: Megajoule;
}

/** One hour of a forecast that goes by hours. */
export interface ForetoldHour {
  readonly hour: UtcHour;
  /** Mean of the hour. [°C] */
  readonly temperature: Celsius;
  /** At 10 m. [m/s] */
  readonly wind: MetrePerSecond | null;
  /** 0 clear to 1 overcast. [1] */
  readonly cloud: number | null;
  /** Mean in the open. [W/m²] */
  readonly radiation: WattPerSquareMetre | null;
  /** Rain, or snow as water. [mm] */
  readonly rain: number | null;
}

export interface Forecast {
  readonly issued: Instant;
  /** Who made it, as a sheet names it; left out: nobody said. */
  readonly source?: string;
  /** Every date it says a whole day of, oldest first. */
  readonly days: readonly DailyRecord[];
  /** Hour by hour, where it goes by hours, in order of time; they count before the low and high of their day. */
  readonly hours?: readonly ForetoldHour[];
}

/** What one sensor recorded, oldest first. Where it stands, the farm says. */
export interface SensorRecords {
  readonly sensor: string;
  readonly hours: readonly HourlyRecord[];
  /** Lows and highs of days from a daily record, if it has one. */
  readonly days?: readonly DailyRecord[];
}
