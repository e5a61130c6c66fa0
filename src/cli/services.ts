import type { Place } from "../farm/index.ts";
import { MET_NORWAY, NWS } from "../folder/index.ts";

/** A weather service a forecast may be fetched from. */
export interface Service {
  /** As --from-service has it. */
  readonly id: ServiceId;
  readonly name: string;
  /** Where its forecasts reach, in words. */
  readonly serves: string;
  readonly origin: string;
  /** What is asked for first, below its origin. */
  readonly path: (place: Place) => string;
  /** Whether the answer to that only names the address of the forecast, and under which property. */
  readonly leadsOnBy: string | null;
}

export const SERVICE_IDS = ["nws", "met-norway"] as const;
export type ServiceId = (typeof SERVICE_IDS)[number];

/** Both ask for four decimals at most, which is eleven metres. @source metTerms, nwsApi */
const degrees = (value: number): string => String(Number(value.toFixed(4)));

export const SERVICES: Readonly<Record<ServiceId, Service>> = {
  nws: {
    id: "nws",
    name: NWS,
    serves: "the United States",
    origin: "https://api.weather.gov",
    path: ({ latitude, longitude }) => `/points/${degrees(latitude)},${degrees(longitude)}`,
    leadsOnBy: "forecastGridData",
  },
  "met-norway": {
    id: "met-norway",
    name: MET_NORWAY,
    serves: "the whole world",
    origin: "https://api.met.no",
    path: ({ latitude, longitude, elevation }) =>
      `/weatherapi/locationforecast/2.0/complete?lat=${degrees(latitude)}&lon=${degrees(longitude)}&altitude=${Math.round(elevation)}`,
    leadsOnBy: null,
  },
};
