import type { Place, Settings } from "../farm/index.ts";
import { daysBetween, HOUR, type Instant, type LocalDate, localDate } from "../quantity/index.ts";
import { departuresOf } from "./departures.ts";
import type { LeadError } from "./leadError.ts";
import { hourlyDepartures } from "./memberHours.ts";
import type { LowHigh, PastYears } from "./pastYears.ts";
import { turnings } from "./turnings.ts";
import type { Weather } from "./weather.ts";

export interface MembersInput {
  /** As expected: log, forecast without its bias, and what stands in beyond it. */
  readonly weather: Weather;
  readonly place: Place;
  readonly settings: Settings;
  readonly on: Instant;
  /** When the forecast in the weather was issued; null: there is none. */
  readonly issued: Instant | null;
  /** Error of a forecast. @param lead - From its issue. [d] */
  readonly error: (lead: number) => LeadError;
  readonly past: PastYears | null;
}

/** One way the days ahead may go: low and high of every day from today on, to 0.01 °C. [°C] */
export interface Member {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The weather ahead as many weathers, each as likely as the next. Radiation, cloud, wind, rain and snow are the forecast's in all of them. */
export interface Members {
  /** From today to the end of the weather. */
  readonly dates: readonly LocalDate[];
  readonly daily: readonly Member[];
  /** Hour of the weather from which members differ. */
  readonly now: number;
  /** Each member's hours from `now` on, less those of the weather. [°C] */
  readonly departures: readonly Float64Array[];
}

/** Hours after noon by which a day's high has passed. [h] */
const HIGH_PASSED = 2;

/** To 0.01 °C, so that a page and the command share the same members. */
const hundredths = (temperature: number): number => Math.round(temperature * 100) / 100;

/**
 * Weathers that may come, as many as the settings ask for; their seed fixes them, and more never move the earlier ones.
 * A day foretold departs from the forecast by its error, which is much the same on the next day and for low and high. Beyond the
 * forecast that departure fades into the usual weather and the way a past year went takes its place; without past years,
 * chance departures as large as single days'; and where the last days are carried on, a doubt about their level besides.
 */
export function members({ weather, place, settings, on, issued, error, past }: MembersInput): Members {
  const from = weather.days.findIndex(({ lead }) => lead === 0);
  const days = weather.days.slice(from);
  const now = Math.min(weather.temperature.length, Math.max(0, Math.floor(on / HOUR) - weather.first));
  const issuedOn = issued === null ? null : localDate(place.zone, issued);
  const today = passed(weather, place, from, now);
  const errors = days.map(({ date, origin }, i): LowHigh => {
    if (origin !== "forecast" || issuedOn === null) return { low: 0, high: 0 };
    const { low, high } = error(daysBetween(issuedOn, date)).spread;
    return i > 0 ? { low, high } : { low: today.low ? 0 : low, high: today.high ? 0 : high };
  });
  const depart = departuresOf(days, weather.days[from - 1]?.origin === "logger", errors, past, settings);
  const daily: Member[] = [];
  const departed: Member[] = [];
  for (let m = 0; m < settings.members; m++) {
    const low = new Float64Array(days.length);
    const high = new Float64Array(days.length);
    depart(m).forEach((departure, i) => {
      const [a, b] = [days[i]!.low + departure.low, days[i]!.high + departure.high];
      low[i] = hundredths(Math.min(a, b));
      high[i] = hundredths(Math.max(a, b));
    });
    daily.push({ low, high });
    departed.push({
      low: low.map((value, i) => value - days[i]!.low),
      high: high.map((value, i) => value - days[i]!.high),
    });
  }
  const departures = hourlyDepartures(weather, place, from, now, departed);
  return { dates: days.map(({ date }) => date), daily, now, departures };
}

/** Today's low and high that have been are no longer uncertain. */
function passed(
  { first, calendar }: Weather,
  place: Place,
  today: number,
  now: number,
): { readonly low: boolean; readonly high: boolean } {
  const noon = calendar.day.findIndex((day, i) => day === today && calendar.clock[i]! >= 12);
  const { rise, length } = turnings(place, first, calendar)(Math.max(0, noon)).sun;
  return { low: now >= rise, high: now >= rise + length / 2 + HIGH_PASSED };
}
