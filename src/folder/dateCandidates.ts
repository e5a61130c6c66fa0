import { type DaySums, daySums } from "./daySums.ts";
import type { DateOrder, Dialect } from "./dialect.ts";
import { type Drops, drops } from "./drops.ts";
import { type HourSums, hourSums } from "./hourSums.ts";
import type { When } from "./moments.ts";
import type { Spotted } from "./readingValue.ts";
import { dateOf, settledByItself } from "./timestamp.ts";
import { type UnsetClock, unsetClock } from "./unsetClock.ts";

const MINUTE = 60_000;

/** Why the order of the dates is the one it is. */
export type DatesBy = "option" | "itself" | "fits" | "sequence" | "same";

/** One order of the parts of a date, followed until the rows rule it out. */
export interface Candidate {
  readonly order: DateOrder;
  readonly dropped: Drops;
  /** By column or station. */
  readonly hours: ReadonlyMap<string, HourSums>;
  readonly days: ReadonlyMap<string, DaySums>;
  readonly unset: UnsetClock;
  /** Latest time on the log's clock, with its line. [ms] */
  latest(): { readonly line: number; readonly wall: number } | null;
}

interface Followed extends Candidate {
  readonly hours: Map<string, HourSums>;
  readonly days: Map<string, DaySums>;
  day(date: string): number | null;
  came(line: number, wall: number): void;
}

/** All orders still possible, each with its own sums: the last row may be the one that settles it. */
export interface DateCandidates {
  /** The wall times of a row, one for each order still possible; null when it is a date in none. [ms] */
  walls(line: number, when: When): readonly number[] | null;
  hour(line: number, walls: readonly number[], offset: number | null, source: string, value: number): void;
  day(line: number, walls: readonly number[], source: string, low: number | null, high: number | null): void;
  /** The order that stands, or null when nothing settles it. */
  settled(): { readonly chosen: Candidate; readonly by: DatesBy } | null;
  /** The order that stands or the first of those left. */
  first(): Candidate | null;
  /** The first row whose date has several meanings. */
  ambiguous(): Spotted | null;
}

/** Reads each new date only once: a log has many readings on one. */
function dayReader(order: DateOrder, dialect: Dialect): (date: string) => number | null {
  let last = "";
  let day: number | null = null;
  return (date) => {
    if (date !== last) {
      last = date;
      day = dateOf(date, settledByItself(date) ? "ymd" : order, dialect);
    }
    return day;
  };
}

function followed(order: DateOrder, dialect: Dialect): Followed {
  let line = 0;
  let wall = Number.NEGATIVE_INFINITY;
  return {
    order,
    day: dayReader(order, dialect),
    dropped: drops(),
    hours: new Map(),
    days: new Map(),
    unset: unsetClock(),
    came(at, when) {
      if (when > wall) [line, wall] = [at, when];
    },
    latest: () => (line === 0 ? null : { line, wall }),
  };
}

/**
 * Follows a log's readings under every order its dates allow.
 *
 * @param zone - The zone the log's clock shows.
 * @param asked - The order the grower says.
 */
export function dateCandidates(zone: string, asked: DateOrder | null, dialect: Dialect): DateCandidates {
  let candidates: readonly Followed[] = [];
  let byItself = false;
  let lastDate = "";
  let ambiguous: Spotted | null = null;
  let all: readonly Followed[] = [];
  // Dates that only one order reads. A single one may be a slip of the pen, or of a bit.
  let proof: Spotted | null = null;
  let proofs = 0;

  const prove = (line: number, date: string): void => {
    if (proofs > 1 || date === proof?.text || all.filter(({ day }) => day(date) !== null).length !== 1)
      return;
    proof ??= { line, text: date };
    proofs += 1;
  };

  /** Is all that speaks for an order one date, and do the days it gives leap? */
  const slipped = (): boolean =>
    candidates.length === 1 &&
    all.length > 1 &&
    proofs === 1 &&
    [...candidates[0]!.hours.values(), ...candidates[0]!.days.values()].some(({ days }) => days.leaps());

  const begin = (date: string | null): void => {
    byItself = date === null || settledByItself(date);
    const open: readonly DateOrder[] = asked === null ? ["mdy", "dmy", "ymd"] : [asked];
    all = (byItself ? (["ymd"] as const) : open).map((order) => followed(order, dialect));
    candidates = all;
  };

  const settled = (): { readonly chosen: Candidate; readonly by: DatesBy } | null => {
    const [only] = candidates;
    if (only === undefined || slipped()) return null;
    if (candidates.length === 1)
      return { chosen: only, by: byItself ? "itself" : asked !== null ? "option" : "fits" };
    if (ambiguous === null) return { chosen: only, by: "same" };
    const following = candidates.filter(({ hours, days }) => {
      const sums = [...hours.values(), ...days.values()];
      return sums.length > 0 && sums.every((each) => each.days.follows());
    });
    return following.length === 1 ? { chosen: following[0]!, by: "sequence" } : null;
  };

  return {
    walls(line, { date, ms }) {
      if (candidates.length === 0) begin(date);
      if (date === null) return candidates.map(() => ms);
      if (date !== lastDate && all.length > 1) prove(line, date);
      const days = candidates.map((candidate) => candidate.day(date));
      if (days.includes(null)) {
        if (days.every((day) => day === null)) return null;
        candidates = candidates.filter((_, index) => days[index] !== null);
      }
      const kept = days.filter((day) => day !== null);
      if (ambiguous === null && date !== lastDate && kept.some((day) => day !== kept[0]))
        ambiguous = { line, text: date };
      lastDate = date;
      return kept.map((day) => day + ms);
    },
    hour(line, walls, offset, source, value) {
      for (let i = 0; i < candidates.length; i++) {
        const candidate = candidates[i]!;
        const wall = walls[i]!;
        if (candidate.unset.holds(wall)) {
          candidate.dropped.add("clockUnset", line);
          continue;
        }
        candidate.came(line, wall);
        let sums = candidate.hours.get(source);
        if (sums === undefined) {
          sums = hourSums(zone, candidate.dropped.add);
          candidate.hours.set(source, sums);
        }
        sums.feed(line, offset === null ? wall : wall - offset * MINUTE, offset !== null, value);
      }
    },
    day(line, walls, source, low, high) {
      candidates.forEach((candidate, i) => {
        candidate.came(line, walls[i]!);
        const sums = candidate.days.get(source) ?? daySums(candidate.dropped.add);
        candidate.days.set(source, sums);
        sums.feed(line, walls[i]!, low, high);
      });
    },
    settled,
    first: () => settled()?.chosen ?? candidates[0] ?? null,
    ambiguous: () => (slipped() ? proof : ambiguous),
  };
}
