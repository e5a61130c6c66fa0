import {
  HOUR,
  type Instant,
  instantAt,
  type LocalDate,
  localDate,
  localHour,
  localMinute,
} from "../quantity/index.ts";
import type { FarmClock } from "./moment.ts";
import type { Said } from "./noteWhen.ts";

/** When something was seen or done, and how closely it was said. */
export interface NoteMoment {
  readonly at: Instant;
  /** As notes.csv has it. */
  readonly when: string;
  /** "moment": to the minute; "day": the day alone; otherwise no hour was said, and this walk is taken. */
  readonly said: "moment" | "day" | "morning" | "evening";
}

/** How far ahead a walk's usual hour may lie when it is said to be going on. [h] judgement */
const EARLY = 3;

/** A whole minute of the farm's clock. */
function minuteAt({ zone }: FarmClock, date: LocalDate, hour: number): NoteMoment {
  const at = instantAt(zone, date, hour);
  return { at, when: localMinute(zone, at), said: "moment" };
}

const thisMinute = (clock: FarmClock, now: Instant): NoteMoment =>
  minuteAt(clock, localDate(clock.zone, now), Math.floor(localHour(clock.zone, now) * 60 + 1e-6) / 60);

/** The last walk of a day that lies before now; null when there is none yet. */
function walkOn(clock: FarmClock, date: LocalDate, now: Instant): NoteMoment | null {
  const parts = ["evening", "morning"] as const;
  const part = parts.find((each) => instantAt(clock.zone, date, clock.walks[each]) <= now);
  return part === undefined ? null : { ...minuteAt(clock, date, clock.walks[part]), said: part };
}

/** A walk planned for an hour. One that is begun early is going on now; null where it lies further ahead. */
export function walkMoment(clock: FarmClock, date: LocalDate, hour: number, now: Instant): NoteMoment | null {
  const moment = minuteAt(clock, date, hour);
  if (moment.at <= now) return moment;
  return moment.at - now <= EARLY * HOUR ? thisMinute(clock, now) : null;
}

/**
 * The moment of a note from what its line says; null when it lies ahead of now.
 *
 * A cover without an hour was moved at the last walk before; anything else without one is good to the day.
 */
export function noteMoment(
  said: Said,
  kind: "cover" | "other",
  clock: FarmClock,
  now: Instant,
): NoteMoment | null {
  const today = localDate(clock.zone, now);
  const date = said.date ?? today;
  if (date > today) return null;
  if (said.hour === null && kind === "cover")
    return (
      walkOn(clock, date, now) ??
      (said.date === null ? walkOn(clock, localDate(clock.zone, (now - 24 * HOUR) as Instant), now) : null) ??
      thisMinute(clock, now)
    );
  if (said.hour === null) {
    const at = instantAt(clock.zone, date, clock.walks.morning);
    if (said.date === null || at > now) return { ...thisMinute(clock, now), said: "day" };
    return { at, when: date, said: "day" };
  }
  if (typeof said.hour === "string") return walkMoment(clock, date, clock.walks[said.hour], now);
  const moment = minuteAt(clock, date, said.hour);
  return moment.at <= now ? moment : null;
}
