import type { LocalDate } from "../quantity/index.ts";
import type { DailyRecord } from "./record.ts";

/** A low and a high, or something known of both. */
export interface LowHigh {
  readonly low: number;
  readonly high: number;
}

/** Days to either side of a date that say what is usual on it, and by which a past year's course may be shifted. [d] judgement */
const WINDOW = 10;
/** Days of the window a year must have to count. */
const ENOUGH = 15;
/** Years that must count before they say what is usual. judgement */
const LEAST_YEARS = 2;

/** What earlier years tell of the days of this one. */
export interface PastYears {
  /** Mean low and high of a date and the days around it; null where too few years have them. [°C] */
  usual(date: LocalDate): LowHigh | null;
  /** Root mean square of single days' departures from it, widened for the few years it stands on. [°C] */
  spread(date: LocalDate): LowHigh | null;
  /**
   * Day by day how far past years lay from the usual, widened likewise: one stretch for every year and every shift of up to
   * ten days that has all its days. [°C]
   */
  stretches(from: LocalDate, days: number): readonly (readonly LowHigh[])[];
}

const dayNumber = (date: LocalDate): number => Date.parse(date) / 86_400_000;

const YEAR = 365.2425;

/** What the days around one date in earlier years come to. */
interface Usual {
  readonly usual: LowHigh;
  readonly spread: LowHigh;
  /** How many years counted. */
  readonly years: number;
}

/** Reads earlier years from daily records of any dates. */
export function pastYears(records: readonly DailyRecord[]): PastYears {
  const days = new Map(records.map((record) => [dayNumber(record.date), record]));
  const earliest = Math.min(...days.keys());
  const known = new Map<number, Usual | null>();
  const before = (day: number, years: number): number => day - Math.round(years * YEAR);

  const study = (day: number): Usual | null => {
    const all: DailyRecord[] = [];
    let years = 0;
    for (let back = 1; before(day, back) >= earliest; back++) {
      const around = Array.from({ length: 2 * WINDOW + 1 }, (_, k) =>
        days.get(before(day, back) + k - WINDOW),
      ).filter((day) => day !== undefined);
      if (around.length < ENOUGH) continue;
      years += 1;
      all.push(...around);
    }
    if (years < LEAST_YEARS) return null;
    const mean = (of: (day: DailyRecord) => number): number =>
      all.reduce((sum, day) => sum + of(day), 0) / all.length;
    const usual = { low: mean(({ low }) => low), high: mean(({ high }) => high) };
    const rms = (key: "low" | "high"): number =>
      widened(years) * Math.sqrt(mean((day) => (day[key] - usual[key]) ** 2));
    return { usual, spread: { low: rms("low"), high: rms("high") }, years };
  };
  const at = (day: number): Usual | null => {
    const found = known.get(day);
    if (found !== undefined) return found;
    const made = study(day);
    known.set(day, made);
    return made;
  };

  return {
    usual: (date) => at(dayNumber(date))?.usual ?? null,
    spread: (date) => at(dayNumber(date))?.spread ?? null,
    stretches(from, length) {
      const found: LowHigh[][] = [];
      const first = dayNumber(from);
      for (let back = 1; before(first, back) + WINDOW >= earliest; back++) {
        for (let shift = -WINDOW; shift <= WINDOW; shift++) {
          const stretch: LowHigh[] = [];
          for (let k = 0; k < length; k++) {
            const number = first + k + shift;
            const [day, study] = [days.get(before(number, back)), at(number)];
            if (day === undefined || study === null) break;
            const wide = widened(study.years);
            stretch.push({
              low: wide * (day.low - study.usual.low),
              high: wide * (day.high - study.usual.high),
            });
          }
          if (stretch.length === length) found.push(stretch);
        }
      }
      return found;
    },
  };
}

/** A few years lie nearer to their own mean than the next year will: the usual correction of a standard deviation and of a mean. */
const widened = (years: number): number => Math.sqrt((years + 1) / (years - 1));
