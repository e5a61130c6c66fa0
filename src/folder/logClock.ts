import { HOUR, type Instant } from "../quantity/index.ts";
import { type WallMeaning, wallClock } from "./wallClock.ts";

/** Readings farther apart say nothing about the clock between them. [h] */
const NEAR = 1;

const MINUTE = 60_000;

/** Tells which instant a log's clock meant, going by the rows before. */
export interface LogClock {
  /** null: clocks skip this time. [ms] */
  at(line: number, wall: number): number | null;
  /** Takes in a time that says itself which instant it is. [ms] */
  passed(at: number, wall: number): void;
  /** Readings in an hour that came twice because clocks went back. */
  twice(): number;
  /** First line in an hour that clocks skip. */
  skipped(): number | null;
  /** First line behind an hour that should have come twice and came once, with readings near before and behind. */
  evenThrough(): number | null;
}

export function logClock(zone: string): LogClock {
  const clock = wallClock(zone);
  let lastAt: number | null = null;
  let lastWall: number | null = null;
  let direction = 0;
  let twice = 0;
  let skipped: number | null = null;
  let evenThrough: number | null = null;
  let pass: { readonly near: boolean; first: boolean; second: boolean } | null = null;

  const near = (wall: number): boolean => lastWall !== null && Math.abs(wall - lastWall) <= NEAR * HOUR;

  /** Of an hour that comes twice, the pass that goes on from the reading before. */
  const ofTwo = (read: WallMeaning & { readonly kind: "twice" }): Instant => {
    if (lastAt === null) return direction < 0 ? read.second : read.first;
    if (direction < 0) return read.second < lastAt ? read.second : read.first;
    return read.first > lastAt ? read.first : read.second;
  };

  /** A time within a day of a change of the clocks. */
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

  const passed = (at: number, wall: number): void => {
    if (lastAt !== null && direction === 0) direction = Math.sign(at - lastAt);
    lastAt = at;
    lastWall = wall;
  };

  return {
    at(line, wall) {
      const ahead = clock.steady(wall);
      const at = ahead === null ? changing(line, wall) : wall - ahead * MINUTE;
      if (at !== null) passed(at, wall);
      return at;
    },
    passed,
    twice: () => twice,
    skipped: () => skipped,
    evenThrough: () => evenThrough,
  };
}
