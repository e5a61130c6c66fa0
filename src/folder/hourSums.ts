import { HOUR, hourOf, type Instant, instant, type UtcHour } from "../quantity/index.ts";
import type { Reason } from "./drops.ts";
import { type Sequence, sequence } from "./sequence.ts";
import { type WallMeaning, wallClock } from "./wallClock.ts";

/** A reading that differs by more than this from both its neighbours is no weather. [°C] */
const SPIKE = 10;

/** Readings farther apart are no neighbours, and longer silences are worth a word. [h] */
const NEAR = 1;
const SILENCE = 3;

/** Readings held one by one; beyond them the hours longest untouched keep only their sums. */
const HELD = 200_000;

const MINUTE = 60_000;

export interface Stretch {
  readonly from: Instant;
  readonly to: Instant;
}

/** One hour's readings, summed up. */
export interface HourSum {
  readonly hour: UtcHour;
  /** [°C] */
  sum: number;
  count: number;
  lowest: number;
  highest: number;
  /** Its first and last reading. [ms] */
  from: number;
  to: number;
  /** The readings themselves, as times and values one after the other; null once only the sums are kept. */
  held: number[] | null;
}

/** What became of one sensor's readings under one way of reading the dates. */
export interface Sums {
  readonly hours: ReadonlyMap<UtcHour, HourSum>;
  readonly used: number;
  readonly first: Instant | null;
  readonly last: Instant | null;
  /** Most frequent step from one reading to the next. [s] null with a single reading. */
  readonly interval: number | null;
  /** Number of silences, and the longest. */
  readonly silences: number;
  readonly longest: Stretch | null;
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

type Fate = "new" | "repeated" | "clash";

/** Lays a reading into its hour. */
function laid(hour: HourSum, at: number, value: number): Fate {
  let fate: Fate = "new";
  if (hour.count > 0 && at <= hour.to && at >= hour.from) {
    if (hour.held === null) return "repeated";
    for (let i = 0; i < hour.held.length; i += 2) {
      if (hour.held[i] !== at) continue;
      if (hour.held[i + 1] === value) return "repeated";
      fate = "clash";
    }
  }
  hour.sum += value;
  hour.count += 1;
  if (value < hour.lowest) hour.lowest = value;
  if (value > hour.highest) hour.highest = value;
  if (at < hour.from) hour.from = at;
  if (at > hour.to) hour.to = at;
  hour.held?.push(at, value);
  return fate;
}

const emptyHour = (hour: UtcHour, held: number[] | null): HourSum => ({
  hour,
  sum: 0,
  count: 0,
  lowest: Number.POSITIVE_INFINITY,
  highest: Number.NEGATIVE_INFINITY,
  from: Number.POSITIVE_INFINITY,
  to: Number.NEGATIVE_INFINITY,
  held,
});

/**
 * Sums readings into hours, in whatever order they come, holding the hours and the latest readings.
 *
 * @param drop - Told of every reading left out.
 */
export function hourSums(zone: string, drop: (reason: Reason, line: number) => void): HourSums {
  const clock = wallClock(zone);
  const days = sequence();
  const hours = new Map<UtcHour, HourSum>();
  const steps = new Map<number, number>();
  let unsealed = hours.values();
  let held = 0;
  let current: HourSum | null = null;
  let currentFrom = 0;
  let kept: { at: number; value: number } | null = null;
  let pending: { line: number; at: number; value: number } | null = null;
  let lastAt: number | null = null;
  let lastWall: number | null = null;
  let direction = 0;
  let used = 0;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  let silences = 0;
  let longest: Stretch | null = null;
  let twice = 0;
  let clashes = 0;
  let skipped: number | null = null;
  let evenThrough: number | null = null;
  let pass: { readonly near: boolean; first: boolean; second: boolean } | null = null;

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
      current = emptyHour(name, []);
      hours.set(name, current);
    }
    currentFrom = name * HOUR;
    return current;
  };

  const step = (before: number, at: number): void => {
    const ms = Math.abs(at - before);
    if (ms > SILENCE * HOUR) {
      silences += 1;
      const [from, to] = before < at ? [before, at] : [at, before];
      if (longest === null || ms > longest.to - longest.from)
        longest = { from: instant(from), to: instant(to) };
    }
    const seconds = Math.round(ms / 1000);
    const seen = steps.get(seconds);
    if (seen !== undefined) steps.set(seconds, seen + 1);
    else if (steps.size < 200) steps.set(seconds, 1);
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
    if (kept !== null && kept.at !== at) step(kept.at, at);
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

  /** Of an hour that comes twice, the pass that goes on from the reading before. */
  const ofTwo = (read: WallMeaning & { readonly kind: "twice" }): Instant => {
    if (lastAt === null) return direction < 0 ? read.second : read.first;
    if (direction < 0) return read.second < lastAt ? read.second : read.first;
    return read.first > lastAt ? read.first : read.second;
  };

  const near = (wall: number): boolean => lastWall !== null && Math.abs(wall - lastWall) <= NEAR * HOUR;

  /** A time on or around a change of the clocks. */
  const changing = (line: number, wall: number): number | null => {
    const read = clock.meaning(wall);
    if (read.kind === "never") {
      skipped ??= line;
      return null;
    }
    if (read.kind === "once") {
      if (pass?.near === true && near(wall) && pass.first !== pass.second) evenThrough ??= line;
      pass = null;
      return read.at;
    }
    twice += 1;
    const at = ofTwo(read);
    pass ??= { near: near(wall), first: false, second: false };
    if (at === read.first) pass.first = true;
    else pass.second = true;
    return at;
  };

  return {
    days,
    feed(line, wall, fixed, value) {
      let at: number | null = wall;
      if (!fixed) {
        const ahead = clock.steady(wall);
        at = ahead !== null ? wall - ahead * MINUTE : changing(line, wall);
      }
      if (at === null) {
        drop("noSuchHour", line);
        return;
      }
      days.next(wall);
      if (pending !== null && at === pending.at) {
        if (value === pending.value) drop("repeated", line);
        else keep(line, at, value);
        return;
      }
      if (lastAt !== null && direction === 0) direction = Math.sign(at - lastAt);
      lastAt = at;
      lastWall = wall;
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
        silences,
        longest,
        twice,
        clashes,
        skipped,
        evenThrough,
      };
    },
  };
}

/**
 * Parts of one log as one, each reading once: where two downloads overlap, what both hold counts once.
 *
 * @param repeat - Told how many readings were there already.
 */
export function joined(parts: readonly Sums[], repeat: (count: number) => void): Sums {
  const [only] = parts;
  if (parts.length === 1) return only!;
  const hours = new Map<UtcHour, HourSum>();
  let clashes = 0;
  let repeated = 0;
  for (const [name, hour] of parts.flatMap((part) => [...part.hours])) {
    const before = hours.get(name);
    if (before === undefined) hours.set(name, hour);
    else if (before.held !== null && hour.held !== null) {
      for (let i = 0; i < hour.held.length; i += 2) {
        const fate = laid(before, hour.held[i]!, hour.held[i + 1]!);
        if (fate === "repeated") repeated += 1;
        if (fate === "clash") clashes += 1;
      }
    } else {
      // Only sums are left: the fuller of the two stands.
      if (hour.count > before.count) hours.set(name, hour);
      repeated += Math.min(hour.count, before.count);
    }
  }
  if (repeated > 0) repeat(repeated);
  const times = parts.flatMap(({ first, last }) => (first === null || last === null ? [] : [first, last]));
  const sum = (count: (part: Sums) => number): number => parts.reduce((all, part) => all + count(part), 0);
  const fullest = parts.reduce((best, part) => (part.used > best.used ? part : best));
  const lengths = parts.map(({ longest }) => longest).filter((longest) => longest !== null);
  return {
    hours,
    used: sum(({ used }) => used) - repeated,
    first: times.length === 0 ? null : instant(Math.min(...times)),
    last: times.length === 0 ? null : instant(Math.max(...times)),
    interval: fullest.interval,
    silences: sum(({ silences }) => silences),
    longest: lengths.sort((a, b) => b.to - b.from - (a.to - a.from))[0] ?? null,
    twice: sum(({ twice }) => twice),
    clashes: clashes + sum((part) => part.clashes),
    skipped: parts.find(({ skipped }) => skipped !== null)?.skipped ?? null,
    evenThrough: parts.find(({ evenThrough }) => evenThrough !== null)?.evenThrough ?? null,
  };
}
