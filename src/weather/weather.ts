import type {
  Calendar,
  Celsius,
  Instant,
  LocalDate,
  MetrePerSecond,
  Mol,
  UtcHour,
} from "../quantity/index.ts";

/** Where an hour's temperature comes from; foretold: a day behind, from a forecast of that time. */
export const ORIGINS = ["logger", "filled", "foretold", "estimated", "forecast", "usual", "carried"] as const;
export type Origin = (typeof ORIGINS)[number];

/** Hour by hour, from the earliest sowing to the end of what is looked at. All arrays have one entry an hour. */
export interface Weather {
  readonly calendar: Calendar;
  readonly first: UtcHour;
  /** Air at the station. [°C] */
  readonly temperature: Float64Array;
  /** [W/m²] */
  readonly radiation: Float64Array;
  /** At 2 m. [m/s] */
  readonly wind: Float64Array;
  /** 0 clear to 1 overcast. [1] */
  readonly cloud: Float64Array;
  /** What falls as rain, and as snow [mm of water]; none where nobody said anything of it. [mm] */
  readonly rain: Float64Array;
  readonly snowfall: Float64Array;
  /** Snow that lies when the hour begins, as water. [mm] */
  readonly snow: Float64Array;
  /** Index into ORIGINS. */
  readonly origin: Uint8Array;
  readonly days: readonly DayWeather[];
}

/** One calendar day for people to read and for rules that judge whole days. */
export interface DayWeather {
  readonly date: LocalDate;
  readonly low: Celsius;
  readonly high: Celsius;
  /** As stations measure and forecasts state it, at 10 m. [m/s] */
  readonly wind: MetrePerSecond;
  /** false: the stated default stands in. */
  readonly windKnown: boolean;
  /** Daily light integral in the open. [mol/m²] */
  readonly light: Mol;
  /** Sunrise to sunset. [h] */
  readonly dayLength: number;
  readonly sunrise: Instant;
  readonly sunset: Instant;
  readonly cloud: number;
  /** Foretold for the day: what falls as rain, and as snow, as water; null: nobody said anything of it. [mm] */
  readonly rain: number | null;
  readonly snowfall: number | null;
  readonly origin: Origin;
  /** Days ahead of the moment planned from; 0 today, negative before. [d] */
  readonly lead: number;
}

/** A stretch the log did not cover. */
export interface Gap {
  readonly from: Instant;
  readonly to: Instant;
  readonly origin: "filled" | "foretold" | "estimated" | "usual";
}
