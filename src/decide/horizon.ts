import type { Farm, Settings } from "../farm/index.ts";
import { addDays, HOUR, type Instant, instantAt, localDate, type MetrePerSecond } from "../quantity/index.ts";
import type { Weather } from "../weather/index.ts";
import type { Walk } from "./outcome.ts";

/** The time planned for, cut at the walks. Hours are indices into the weather's arrays. */
export interface Horizon {
  readonly on: Instant;
  /** Hour of the moment planned from. */
  readonly now: number;
  /** Walks at which covers may change; interval i runs from walk i to the next, the last to `end`. */
  readonly walks: readonly Walk[];
  /** Hour of each walk, and last the end of the time planned. */
  readonly starts: readonly number[];
  readonly end: number;
  /** End of what is looked at beyond, with the last setting left on. */
  readonly lookout: number;
  /** Hours of all morning walks from the weather's beginning to the lookout. */
  readonly mornings: readonly number[];
  /** Every stretch between walks from the weather's beginning to the lookout. */
  readonly rounds: readonly Round[];
}

/** From one walk to the next. */
export interface Round {
  readonly from: number;
  readonly to: number;
  readonly part: "day" | "night";
}

/** Hour of the weather nearest to an instant. */
export const hourAt = (weather: Weather, at: Instant): number => Math.round(at / HOUR) - weather.first;

/** Which part of the day a moment lies in. */
export const partOf = (walk: Walk): "day" | "night" => (walk.part === "morning" ? "day" : "night");

/**
 * Cuts the time from the next walk on into intervals.
 *
 * @param frost - Bare ground at crop height in calm air, hour by hour from the weather's beginning. [°C]
 * @param days - Days planned, 1 to 21. [d]
 */
export function horizonOf(
  farm: Farm,
  weather: Weather,
  frost: Float64Array,
  on: Instant,
  days: number,
  { snowLies }: Pick<Settings, "snowLies">,
): Horizon {
  const { zone } = farm.place;
  const { morning, evening } = farm.walks;
  const length = weather.temperature.length;
  const marks = weather.calendar.dates
    .flatMap((date) => [
      { date, part: "morning" as const, at: instantAt(zone, date, morning) },
      { date, part: "evening" as const, at: instantAt(zone, date, evening) },
    ])
    .map((mark) => ({ ...mark, hour: hourAt(weather, mark.at) }))
    .filter(({ hour }) => hour >= 0 && hour < length);
  const until = instantAt(zone, addDays(localDate(zone, on), days), 0) as number;
  const ahead = marks.filter(({ at }) => at >= on);
  const planned = ahead.filter(({ at }, i) => at < until || i === 0);
  const frozenAt = (hour: number): boolean => frost[Math.min(frost.length - 1, hour)]! <= 0;
  const walks = planned.map(({ at, date, part, hour }, index): Walk => {
    const day = weather.days[weather.calendar.dates.indexOf(date)]!;
    return {
      index,
      at,
      date,
      part,
      wind: day.wind as MetrePerSecond,
      tooWindy: day.windKnown && day.wind > farm.limits.wind,
      frozen: frozenAt(hour),
      frozenThrough: frost.subarray(hour, ahead[index + 1]?.hour ?? length).every((air) => air <= 0),
      snow: weather.snow[hour]! >= snowLies,
    };
  });
  const end = ahead[planned.length]?.hour ?? length;
  const edges = [...new Set([0, ...marks.map(({ hour }) => hour), length])];
  const opens = new Map(marks.map(({ hour, part }) => [hour, part]));
  const firstPart = marks[0]?.part === "morning" ? "night" : "day";
  const rounds = edges.slice(0, -1).map((from, i): Round => {
    const part = opens.get(from);
    return {
      from,
      to: edges[i + 1]!,
      part: part === undefined ? firstPart : part === "morning" ? "day" : "night",
    };
  });
  return {
    on,
    now: Math.min(length, Math.max(0, hourAt(weather, on))),
    walks,
    starts: [...planned.map(({ hour }) => hour), end],
    end,
    lookout: length,
    mornings: marks.filter(({ part }) => part === "morning").map(({ hour }) => hour),
    rounds,
  };
}
