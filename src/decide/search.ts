import {
  breachesAt,
  dangerLimit,
  endangeredBy,
  gravityOf,
  idle,
  outletWorth,
  quality,
  rounded,
} from "./evaluate.ts";
import { type Rest, restsOf } from "./rest.ts";
import type { SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** The best schedule of one tunnel. */
export interface Found {
  readonly choice: readonly number[];
  /** Every schedule was looked at or ruled out by a bound. */
  readonly proved: boolean;
  readonly nodes: number;
}

/** Places in the tree looked into before the search gives up proving. The same on every machine. */
const MOST_NODES = 400_000;

const DIM_GRAVITY = gravityOf(["dim"]);

interface Tracked {
  readonly table: SuccessionTable;
  readonly rests: readonly Rest[];
}

/**
 * The schedule that breaks limits least gravely, and among those the greatest worth, then the fewest changes, then
 * the first found. Walks the tree of schedules interval by interval and leaves a branch when not even
 * the best of everything still open could beat what has been found.
 */
export function bestSchedule(problem: TunnelProblem): Found {
  const { intervals: n } = problem;
  const S = problem.settings.length;
  const tracked: readonly Tracked[] = problem.successions.map((table) => ({
    table,
    rests: restsOf(problem, table),
  }));
  const J = tracked.length;

  const choice = new Array<number>(n).fill(problem.now);
  const pace = tracked.map(() => new Float64Array(n + 1));
  const light = tracked.map(() => new Float64Array(n + 1));
  const heat = tracked.map(() => new Float64Array(n + 1));
  const safe = tracked.map(() => new Float64Array(n + 1));
  /** Best worth of a succession at outlets that lie before an interval. */
  const settled = tracked.map(() => new Float64Array(n + 1));
  /** Intervals in which it is endangered when cut at that outlet. */
  const standing = tracked.map(({ table }) => new Array<Uint8Array>(n + 1).fill(table.endangered));
  const minutes = new Float64Array(n + 1);
  /** Of what is broken whatever is cut. */
  const gravity = new Int32Array(n + 1);
  const surely = surelyEndangered(problem);
  const unsure = Array.from({ length: n }, (_, i) => i).filter((i) =>
    surely[i] ? false : problem.successions.some(({ endangered }) => endangered[i]),
  );
  const brokenGravity = Int32Array.from(
    problem.broken,
    (limits, k) =>
      gravityOf(limits) +
      (problem.poor[k] && surely[Math.floor(k / S)] ? dangerGravity(problem, Math.floor(k / S)) : 0),
  );
  const dim = new Int32Array(n + 1);
  tracked.forEach(({ table }, j) => {
    pace[j]![0] = table.thermalTime;
    light[j]![0] = table.light;
  });

  const moveGravity = Int32Array.from({ length: n * S * S }, (_, k) =>
    gravityOf(breachesAt(problem, Math.floor(k / (S * S)), Math.floor(k / S) % S, k % S)),
  );
  const tail = tailsOf(problem, brokenGravity);
  const lastWeek = problem.week[n - 1];

  let best: readonly number[] | null = null;
  let bestGravity = Number.POSITIVE_INFINITY;
  let bestWorth = Number.NEGATIVE_INFINITY;
  let bestChanges = Number.POSITIVE_INFINITY;
  let nodes = 0;
  const worse = (grave: number, worth: number, changes: number): boolean =>
    grave > bestGravity ||
    (grave === bestGravity && (worth < bestWorth || (worth === bestWorth && changes >= bestChanges)));

  /** Nothing that follows interval i − 1 can bring more than this. */
  const bound = (i: number): number => {
    let sum = -minutes[i]! * problem.minute;
    for (let j = 0; j < J; j++) {
      const { table, rests } = tracked[j]!;
      let top = settled[j]![i]!;
      const grown = pace[j]![i]!;
      for (let r = rests.length - 1; r >= 0; r--) {
        const { outlet, leastPace, mostPace, mostLight, leastHeat, mostSafe } = rests[r]!;
        if (outlet.interval < i) break;
        const whole = outlet.value.atMost(grown + leastPace[i]!, grown + mostPace[i]!) * outlet.share;
        if (whole <= top) continue;
        const lit = problem.lightShare(table, light[j]![i]! + mostLight[i]!, outlet.days);
        const most =
          (whole * lit * quality(heat[j]![i]! + leastHeat[i]!, problem) - table.cutting * problem.minute) *
          Math.exp(safe[j]![i]! + mostSafe[i]!);
        if (most > top) top = most;
      }
      sum += top;
    }
    return sum;
  };

  /** The same when a setting stays on from interval i to the end: nearly what it brings. */
  const boundStaying = (i: number, setting: number): number => {
    let sum = -(minutes[i]! + tail.minutes[i * S + setting]!) * problem.minute;
    for (let j = 0; j < J; j++) {
      const { table, rests } = tracked[j]!;
      let top = settled[j]![i]!;
      for (let r = rests.length - 1; r >= 0; r--) {
        const { outlet, stay } = rests[r]!;
        if (outlet.interval < i) break;
        const k = i * S + setting;
        const grown = pace[j]![i]! + stay.pace[k]!;
        const whole = outlet.value.atMost(grown, grown) * outlet.share;
        if (whole <= top) continue;
        const lit = problem.lightShare(table, light[j]![i]! + stay.light[k]!, outlet.days);
        const most =
          (whole * lit * quality(heat[j]![i]! + stay.heat[k]!, problem) - table.cutting * problem.minute) *
          Math.exp(safe[j]![i]! + stay.safe[k]!);
        if (most > top) top = most;
      }
      sum += top;
    }
    return sum;
  };

  /** Settles a succession at outlets up to interval i: those at its walk, or those later in it under a setting. */
  const settle = (i: number, j: number, setting: number, atWalk: boolean, into: number): void => {
    const { table, rests } = tracked[j]!;
    let top = settled[j]![i]!;
    let left = standing[j]![i]!;
    for (const rest of rests) {
      const { outlet } = rest;
      if (outlet.interval > i) break;
      if (outlet.interval !== i || rest.atWalk !== atWalk) continue;
      const grown = pace[j]![i]! + outlet.pace[setting]!;
      const survived = safe[j]![i]! + outlet.safe[setting]!;
      if (outlet.value.atMost(grown, grown) * outlet.share * Math.exp(survived) <= top) continue;
      const lit = light[j]![i]! + outlet.light[setting]!;
      const hot = heat[j]![i]! + outlet.heat[setting]!;
      const { worth } = outletWorth(problem, table, outlet, grown, lit, hot, survived);
      if (worth <= top) continue;
      top = worth;
      left = endangeredBy(table, outlet, worth);
    }
    settled[j]![into] = top;
    standing[j]![into] = left;
  };

  /**
   * Gravity of a schedule up to interval i, nights and days counted in which something stands that its setting endangers. Never
   * more than in the end: a bed cut later than the best moment so far only stands longer.
   */
  const graveUpTo = (i: number): number => {
    let sum = gravity[i]!;
    for (const k of unsure) {
      if (k >= i) break;
      if (problem.poor[k * S + choice[k]!] && standing.some((left) => left[i]![k]))
        sum += dangerGravity(problem, k);
    }
    return sum;
  };

  /** Comes to the walk that opens interval i. */
  const arrive = (i: number): void => {
    for (let j = 0; j < J; j++) settle(i, j, 0, true, i);
  };

  /** Enters interval i with a setting. */
  const enter = (i: number, from: number, to: number): void => {
    const k = i * S + to;
    dim[i + 1] = dim[i]! + problem.dim[k]!;
    const tooDim = problem.dim[k]! > 0 && dim[i + 1]! > problem.dimDays;
    gravity[i + 1] =
      gravity[i]! + brokenGravity[k]! + moveGravity[i * S * S + from * S + to]! + (tooDim ? DIM_GRAVITY : 0);
    minutes[i + 1] = minutes[i]! + problem.moves[problem.parts[i]!].minutes[from * S + to]!;
    for (let j = 0; j < J; j++) {
      const { table } = tracked[j]!;
      settle(i, j, to, false, i + 1);
      pace[j]![i + 1] = pace[j]![i]! + table.pace[k]!;
      light[j]![i + 1] = light[j]![i]! + table.lightIn[k]!;
      heat[j]![i + 1] = heat[j]![i]! + table.heat[k]!;
      safe[j]![i + 1] = safe[j]![i]! + table.safe[k]!;
    }
  };

  /** Worth of the finished schedule in `choice`. */
  const finished = (): number => {
    let sum = -minutes[n]! * problem.minute;
    for (let j = 0; j < J; j++) {
      const { table, rests } = tracked[j]!;
      let top = settled[j]![n]!;
      const last = choice[n - 1]!;
      for (const { outlet } of rests) {
        if (outlet.interval !== n) continue;
        const grown = pace[j]![n]! + outlet.pace[last]!;
        if (outlet.value.atMost(grown, grown) * outlet.share <= top) continue;
        const { worth } = outletWorth(
          problem,
          table,
          outlet,
          grown,
          light[j]![n]! + outlet.light[last]!,
          heat[j]![n]!,
          safe[j]![n]!,
        );
        if (worth <= top) continue;
        top = worth;
        standing[j]![n] = endangeredBy(table, outlet, worth);
      }
      sum += top;
    }
    return rounded(sum);
  };

  const keep = (changes: number): void => {
    const worth = finished();
    const grave = graveUpTo(n);
    if (worse(grave, worth, changes)) return;
    best = [...choice];
    bestGravity = grave;
    bestWorth = worth;
    bestChanges = changes;
  };

  const open = (i: number, setting: number): boolean => problem.possible[i * S + setting] === 1;

  /** No change is left: stays with what lies to the end, when that could still be the best. */
  const stayOn = (i: number, setting: number, changes: number): void => {
    if (tail.closed[i * S + setting]) return;
    const grave = graveUpTo(i) + tail.gravity[i * S + setting]!;
    if (worse(grave, rounded(boundStaying(i, setting) + 1e-6), changes)) return;
    for (let k = i; k < n; k++) {
      choice[k] = setting;
      arrive(k);
      enter(k, setting, setting);
    }
    keep(changes);
  };

  /** @param hope - Bound of everything from interval i on. */
  const visit = (i: number, changes: number, inWeek: number, hope: number): void => {
    if (i === n) {
      keep(changes);
      return;
    }
    if (nodes >= MOST_NODES) return;
    nodes += 1;
    arrive(i);
    const from = i === 0 ? problem.now : choice[i - 1]!;
    const used = i > 0 && problem.week[i] !== problem.week[i - 1] ? 0 : inWeek;
    const minutesTo = problem.moves[problem.parts[i]!].minutes;
    for (let turn = -1; turn < S; turn++) {
      const to = turn < 0 ? from : turn;
      if (turn === from || !open(i, to)) continue;
      const changed = to !== from ? 1 : 0;
      if (used + changed > problem.changesPerWeek || (changed && idle(problem, i, from, to))) continue;
      const priced = hope - minutesTo[from * S + to]! * problem.minute;
      if (worse(gravity[i]!, rounded(priced + 1e-6), changes + changed)) continue;
      choice[i] = to;
      enter(i, from, to);
      const grave = graveUpTo(i + 1);
      if (grave > bestGravity) continue;
      if (used + changed === problem.changesPerWeek && problem.week[i] === lastWeek) {
        stayOn(i + 1, to, changes + changed);
        continue;
      }
      const bounded = bound(i + 1);
      if (worse(grave, rounded(bounded + 1e-6), changes + changed)) continue;
      visit(i + 1, changes + changed, used + changed, bounded);
    }
  };

  seed(problem, (schedule) => {
    let changes = 0;
    for (let i = 0; i < n; i++) {
      const from = i === 0 ? problem.now : schedule[i - 1]!;
      choice[i] = schedule[i]!;
      if (choice[i] !== from) changes += 1;
      arrive(i);
      enter(i, from, choice[i]!);
    }
    keep(changes);
  });
  visit(0, 0, 0, bound(0));
  return { choice: best ?? new Array<number>(n).fill(problem.now), proved: nodes < MOST_NODES, nodes };
}

const dangerGravity = (problem: TunnelProblem, i: number): number => gravityOf([dangerLimit(problem, i)]);

/** Intervals in which some bed is endangered whenever it is cut. */
function surelyEndangered(problem: TunnelProblem): Uint8Array {
  return problem.endangered.map((always, i) =>
    always === 1 ||
    problem.successions.some(
      ({ endangered, outlets }) => endangered[i] && outlets.every((outlet) => outlet.endangered[i]),
    )
      ? 1
      : 0,
  );
}

/** What staying with a setting from an interval to the end costs and breaks: [interval × settings + setting]. */
function tailsOf(problem: TunnelProblem, brokenGravity: Int32Array) {
  const { intervals: n } = problem;
  const S = problem.settings.length;
  const minutes = new Float64Array((n + 1) * S);
  const gravity = new Int32Array((n + 1) * S);
  const closed = new Uint8Array((n + 1) * S);
  for (let s = 0; s < S; s++) {
    for (let i = n - 1; i >= 0; i--) {
      const [here, next] = [i * S + s, (i + 1) * S + s];
      minutes[here] = minutes[next]! + problem.moves[problem.parts[i]!].minutes[s * S + s]!;
      gravity[here] = gravity[next]! + brokenGravity[here]! + gravityOf(breachesAt(problem, i, s, s));
      closed[here] = closed[next] || !problem.possible[here] ? 1 : 0;
    }
  }
  return { minutes, gravity, closed };
}

/** Leaving all as it is, and going over to each setting at the first walk: something good to beat before the tree is walked. */
function seed(problem: TunnelProblem, offer: (schedule: readonly number[]) => void): void {
  const { intervals: n } = problem;
  const S = problem.settings.length;
  offer(new Array<number>(n).fill(problem.now));
  if (problem.changesPerWeek < 1) return;
  for (let to = 0; to < S; to++) {
    const possible = Array.from({ length: n }, (_, i) => problem.possible[i * S + to]).every(
      (free) => free === 1,
    );
    if (to !== problem.now && possible && !idle(problem, 0, problem.now, to))
      offer(new Array<number>(n).fill(to));
  }
}
