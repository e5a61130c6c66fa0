import { HOUR, hourOf, type Instant, instant, type UtcHour } from "../quantity/index.ts";
import type { StoredHour } from "./storeFile.ts";
import { daysApart, type Wall } from "./timestamp.ts";
import { wallClock } from "./wallClock.ts";

/** A reading that differs by more than this from both its neighbours is no weather. [°C] */
const SPIKE = 10;

/** Readings farther apart are no neighbours, and longer silences are worth a word. [h] */
const NEAR = 1;
const SILENCE = 3;

/** A step no log takes, but a date read in the wrong order does. [d] */
const LEAP = 20;

/** Why a reading is left out. */
export type DropReason = "spike" | "noSuchHour" | "repeated";

export interface Stretch {
  readonly from: Instant;
  readonly to: Instant;
}

/** What became of a log's readings under one way of reading its dates. */
export interface Sums {
  readonly hours: readonly StoredHour[];
  readonly used: number;
  readonly first: Instant | null;
  readonly last: Instant | null;
  /** Most frequent step from one reading to the next. [min] null with a single reading. */
  readonly interval: number | null;
  /** Number of silences, and the longest. */
  readonly silences: number;
  readonly longest: Stretch | null;
  /** Readings in an hour that came twice because clocks went back. */
  readonly twice: number;
  /** Steps of one day, and steps of more than LEAP days. */
  readonly nextDays: number;
  readonly leaps: number;
}

export interface HourSums {
  feed(line: number, wall: Wall, value: number): void;
  finish(): Sums;
}

interface Reading {
  readonly line: number;
  readonly at: Instant;
  readonly value: number;
}

/**
 * Sums readings into hours, in whatever direction the log runs, holding no more than the hours and two readings.
 *
 * @param drop - Told of every reading left out.
 */
export function hourSums(
  zone: string,
  origin: string,
  drop: (reason: DropReason, line: number) => void,
): HourSums {
  const meaning = wallClock(zone);
  const hours = new Map<UtcHour, { sum: number; count: number; lowest: number; highest: number }>();
  const steps = new Map<number, number>();
  let kept: Reading | null = null;
  let pending: Reading | null = null;
  let lastAt: Instant | null = null;
  let lastWall: number | null = null;
  let direction = 0;
  let used = 0;
  let first: Instant | null = null;
  let last: Instant | null = null;
  let silences = 0;
  let longest: Stretch | null = null;
  let twice = 0;
  let nextDays = 0;
  let leaps = 0;

  const keep = (reading: Reading): void => {
    const { at, value } = reading;
    const hour = hourOf(at);
    const sums = hours.get(hour);
    if (sums === undefined) hours.set(hour, { sum: value, count: 1, lowest: value, highest: value });
    else {
      sums.sum += value;
      sums.count += 1;
      sums.lowest = Math.min(sums.lowest, value);
      sums.highest = Math.max(sums.highest, value);
    }
    used += 1;
    if (kept !== null) {
      const [from, to] = kept.at < at ? [kept.at, at] : [at, kept.at];
      const step = to - from;
      if (step > SILENCE * HOUR) {
        silences += 1;
        if (longest === null || step > longest.to - longest.from) longest = { from, to };
      }
      const minutes = Math.round(step / 60_000);
      if (steps.size < 200 || steps.has(minutes)) steps.set(minutes, (steps.get(minutes) ?? 0) + 1);
    }
    if (first === null || at < first) first = at;
    if (last === null || at > last) last = at;
    kept = reading;
  };

  const isSpike = (a: Reading, b: Reading, c: Reading): boolean => {
    if (Math.abs(b.at - a.at) > NEAR * HOUR || Math.abs(c.at - b.at) > NEAR * HOUR) return false;
    const above = Math.min(b.value - a.value, b.value - c.value);
    const below = Math.min(a.value - b.value, c.value - b.value);
    return above > SPIKE || below > SPIKE;
  };

  /** Of an hour that comes twice, the pass that goes on from the reading before. */
  const instantOf = (wall: Wall): Instant | null => {
    if (wall.fixed) return instant(wall.ms);
    const read = meaning(wall.ms);
    if (read.kind === "once") return read.at;
    if (read.kind === "never") return null;
    twice += 1;
    if (lastAt === null) return direction < 0 ? read.second : read.first;
    if (direction < 0) return read.second < lastAt ? read.second : read.first;
    return read.first > lastAt ? read.first : read.second;
  };

  return {
    feed(line, wall, value) {
      const at = instantOf(wall);
      if (at === null || at === lastAt) {
        drop(at === null ? "noSuchHour" : "repeated", line);
        return;
      }
      if (lastAt !== null && direction === 0) direction = Math.sign(at - lastAt);
      if (lastWall !== null) {
        const days = daysApart(lastWall, wall.ms);
        if (days === 1) nextDays += 1;
        if (days > LEAP) leaps += 1;
      }
      lastAt = at;
      lastWall = wall.ms;
      const reading = { line, at, value };
      if (pending !== null) {
        if (kept !== null && isSpike(kept, pending, reading)) drop("spike", pending.line);
        else keep(pending);
      }
      pending = reading;
    },
    finish() {
      if (pending !== null) keep(pending);
      pending = null;
      const sorted = [...hours].sort(([a], [b]) => a - b);
      const common = [...steps].sort((a, b) => b[1] - a[1])[0];
      return {
        hours: sorted.map(([hour, sums]) => ({ hour, ...sums, origin })),
        used,
        first,
        last,
        interval: common?.[0] ?? null,
        silences,
        longest,
        twice,
        nextDays,
        leaps,
      };
    },
  };
}
