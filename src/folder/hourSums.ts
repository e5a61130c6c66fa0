import { HOUR, hourOf, type Instant, instant, type UtcHour } from "../quantity/index.ts";
import type { Reason } from "./drops.ts";
import { emptyHour, type HourSum, laid } from "./hourSum.ts";
import { logClock } from "./logClock.ts";
import { type Sequence, sequence } from "./sequence.ts";

/** A reading that differs by more than this from both its neighbours is no weather. [°C] */
const SPIKE = 10;

/** Readings farther apart are no neighbours. [h] */
const NEAR = 1;

/** Readings held one by one; beyond them the hours longest untouched keep only their sums. */
const HELD = 200_000;

/** Different steps counted, to find the most frequent. */
const STEPS = 200;

/** What became of one sensor's readings under one way of reading the dates. */
export interface Sums {
  readonly hours: ReadonlyMap<UtcHour, HourSum>;
  readonly used: number;
  readonly first: Instant | null;
  readonly last: Instant | null;
  /** Most frequent step from one reading to the next. [s] null with a single reading. */
  readonly interval: number | null;
  /** Readings in an hour that came twice because clocks went back. */
  readonly twice: number;
  /** Readings with the time of another and another temperature. */
  readonly clashes: number;
  /** First line in an hour that clocks skip; first line behind the hour that should have come twice and did not. */
  readonly skipped: number | null;
  readonly evenThrough: number | null;
}

export interface HourSums {
  readonly days: Sequence;
  /**
   * @param wall - What the clock showed, in milliseconds as if it were universal time.
   * @param fixed - It is universal time.
   */
  feed(line: number, wall: number, fixed: boolean, value: number): void;
  finish(): Sums;
}

/**
 * Sums readings into hours, in whatever order they come, holding the hours and the latest readings.
 *
 * @param drop - Told of every reading left out.
 */
export function hourSums(zone: string, drop: (reason: Reason, line: number) => void): HourSums {
  const clock = logClock(zone);
  const days = sequence();
  const hours = new Map<UtcHour, HourSum>();
  const steps = new Map<number, number>();
  let unsealed = hours.values();
  let held = 0;
  let current: HourSum | null = null;
  let currentFrom = 0;
  let kept: { at: number; value: number } | null = null;
  let pending: { line: number; at: number; value: number } | null = null;
  let used = 0;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  let clashes = 0;

  /** Half of the hours keep only their sums. */
  const seal = (): void => {
    while (held > HELD / 2) {
      const { value: hour, done } = unsealed.next();
      if (done === true) {
        unsealed = hours.values();
        return;
      }
      if (hour.held === null) continue;
      held -= hour.held.length / 2;
      hour.held = null;
    }
  };

  const hourAt = (at: number): HourSum => {
    if (current !== null && at >= currentFrom && at < currentFrom + HOUR) return current;
    const name = hourOf(instant(at));
    current = hours.get(name) ?? null;
    if (current === null) {
      current = emptyHour(name);
      hours.set(name, current);
    }
    currentFrom = name * HOUR;
    return current;
  };

  const step = (seconds: number): void => {
    const seen = steps.get(seconds);
    if (seen !== undefined) steps.set(seconds, seen + 1);
    else if (steps.size < STEPS) steps.set(seconds, 1);
  };

  const keep = (line: number, at: number, value: number): void => {
    const hour = hourAt(at);
    const fate = laid(hour, at, value);
    if (fate === "repeated") {
      drop("repeated", line);
      return;
    }
    if (fate === "clash") clashes += 1;
    if (hour.held !== null && ++held > HELD) seal();
    used += 1;
    if (kept !== null && kept.at !== at) step(Math.round(Math.abs(at - kept.at) / 1000));
    if (at < first) first = at;
    if (at > last) last = at;
    kept = { at, value };
  };

  const isSpike = (
    a: { at: number; value: number },
    b: { at: number; value: number },
    at: number,
    value: number,
  ): boolean => {
    const above = Math.min(b.value - a.value, b.value - value);
    const below = Math.min(a.value - b.value, value - b.value);
    if (above <= SPIKE && below <= SPIKE) return false;
    return Math.abs(b.at - a.at) <= NEAR * HOUR && Math.abs(at - b.at) <= NEAR * HOUR;
  };

  return {
    days,
    feed(line, wall, fixed, value) {
      const at = fixed ? wall : clock.at(line, wall);
      if (at === null) {
        drop("noSuchHour", line);
        return;
      }
      if (fixed) clock.passed(at, wall);
      days.next(wall);
      if (pending !== null && at === pending.at) {
        if (value === pending.value) drop("repeated", line);
        else keep(line, at, value);
        return;
      }
      if (pending !== null) {
        if (kept !== null && isSpike(kept, pending, at, value)) drop("spike", pending.line);
        else keep(pending.line, pending.at, pending.value);
      }
      pending = { line, at, value };
    },
    finish() {
      if (pending !== null) keep(pending.line, pending.at, pending.value);
      pending = null;
      const common = [...steps].sort((a, b) => b[1] - a[1])[0];
      return {
        hours,
        used,
        first: used === 0 ? null : instant(first),
        last: used === 0 ? null : instant(last),
        interval: common?.[0] ?? null,
        twice: clock.twice(),
        clashes,
        skipped: clock.skipped(),
        evenThrough: clock.evenThrough(),
      };
    },
  };
}
