import {
  idle,
  NOW,
  type OutletTable,
  type SuccessionTable,
  type TunnelProblem,
} from "../../src/decide/index.ts";

/** What a bed is cut for, and what that brings and takes; uncut it brings nothing. */
export interface Ending {
  /** Index among the outlets; their number leaves it uncut. */
  readonly cut: number;
  readonly outlet: OutletTable | null;
  readonly crop: string;
  /** Worth beside what its salad sells for: other sizes, its price lowered by waiting, wages for its cutting, what grows again. */
  readonly own: number;
  /** In each group of weathers. [kg] */
  readonly salad: readonly number[];
  /** [kg], [min] */
  readonly weight: number;
  readonly minutes: number;
}

/** One schedule of a tunnel: what it is worth beside its beds, and each bed's endings. */
export interface Course {
  readonly schedule: readonly number[];
  readonly own: number;
  /** Of the limits it breaks: 1000 for what hands cannot or must not do, 1 for a cover that harms. */
  readonly gravity: number;
  /** Of changing covers at each walk. [min] */
  readonly minutes: readonly number[];
  readonly beds: readonly (readonly Ending[])[];
}

/** A schedule with one ending of each bed. */
export interface Way {
  readonly course: Course;
  readonly endings: readonly Ending[];
}

/** Sums of a bed before each interval, and after the last. */
interface Sums {
  readonly time: Float64Array;
  readonly light: Float64Array;
  readonly heat: Float64Array;
  readonly safe: Float64Array;
  readonly rooted: Float64Array;
}

/** Step of the logarithm of thermal time in a harvest. */
const STEP = 0.005;

function read(row: Float64Array, place: number): number {
  const at = Math.min(row.length - 1, Math.max(0, place));
  const below = Math.min(row.length - 2, Math.floor(at));
  return row[below]! * (below + 1 - at) + row[below + 1]! * (at - below);
}

/** What a bed is worth for each unit of the logarithm of its chance. */
const slope = ({ neverLost }: TunnelProblem, { mass, price }: SuccessionTable): number =>
  neverLost * mass * price;

/** A bed cut at an outlet under a setting, after the one of the interval before. */
function cutAt(
  problem: TunnelProblem,
  table: SuccessionTable,
  cut: number,
  sums: Sums,
  [before, setting]: readonly [before: number, own: number],
): Ending | null {
  const n = problem.intervals;
  const outlet = table.outlets[cut]!;
  const { harvest, moved, kept, share, interval: i } = outlet;
  const safe = sums.safe[i]! + outlet.safe[setting]!;
  const hot = sums.heat[i]! + outlet.heat[setting]!;
  const lit = problem.lightShare(table, sums.light[i]! + outlet.light[setting]!, outlet.days);
  const wet = outlet.dry === null ? 1 : outlet.dry.keeps[outlet.dry.night === "before" ? before : setting]!;
  const good = wet * (1 - Math.min(problem.stressMost, problem.heatStress * hot));
  const through = Math.exp(safe);
  const grown = Math.log(Math.max(1e-9, sums.time[i]! + outlet.pace[setting]!));
  const place = (grown - table.growing.belief.shift - harvest.first) / STEP;
  // What would not pay for its cutting is left.
  if (!table.mustCut && (place < outlet.pays[0] || place > outlet.pays[1])) return null;
  const left = table.mass * lit * good * through;
  const mean = (row: Float64Array): number =>
    moved.reduce((sum, by, k) => sum + problem.weathers[k]! * read(row, place + by), 0);
  const salad = moved.map((by) => left * kept * read(harvest.salad, place + by));
  const sold = salad.reduce((sum, weight, k) => sum + problem.weathers[k]! * weight, 0) * table.price;
  const minutes = table.cutting * through;
  const rooted = sums.rooted[n]!;
  return {
    cut,
    outlet,
    crop: table.standing.crop.id,
    own:
      left * kept * share * table.price * mean(harvest.other) -
      (1 - share) * sold -
      minutes * problem.minute +
      (table.regrown === 0 ? 0 : table.regrown * Math.exp(rooted) + slope(problem, table) * rooted) +
      slope(problem, table) * safe,
    salad,
    weight: left * mean(harvest.cut),
    minutes,
  };
}

/** Visits every schedule a tunnel may have: open to it, few enough changes a week, and none that does nothing. */
export function everySchedule(problem: TunnelProblem, visit: (course: Course) => void): void {
  const { intervals: n, settings, lays, successions: tables, weathers, undated } = problem;
  const [S, L] = [settings.length, lays.length];
  const nothing = weathers.map(() => 0);
  const schedule: number[] = [];
  const minutes: number[] = [];
  const row = (): Float64Array => new Float64Array(n + 1);
  const sums = tables.map(({ thermalTime, light }): Sums => {
    const each = { time: row(), light: row(), heat: row(), safe: row(), rooted: row() };
    each.time[0] = thermalTime;
    each.light[0] = light;
    return each;
  });
  const kept = undated.map(row);

  const finish = (gravity: number): void => {
    const setting = (i: number): number => lays[i < 0 ? NOW : schedule[Math.min(n - 1, i)]!]!.setting;
    const kinds = undated.map(({ worth }, u) => ({ worth, through: kept[u]![n]! }));
    visit({
      schedule: [...schedule],
      minutes: [...minutes],
      gravity,
      own:
        kinds.reduce(
          (sum, { worth, through }) => sum + worth * (Math.exp(through) - 1 + problem.neverLost * through),
          0,
        ) -
        minutes.reduce((sum, each) => sum + each, 0) * problem.minute,
      beds: tables.map((table, j): readonly Ending[] => {
        const cuts = table.outlets.flatMap(
          ({ interval }, w) =>
            cutAt(problem, table, w, sums[j]!, [setting(interval - 1), setting(interval)]) ?? [],
        );
        if (table.mustCut) return cuts;
        const uncut = { outlet: null, crop: table.standing.crop.id, salad: nothing, weight: 0, minutes: 0 };
        return [
          ...cuts,
          { ...uncut, cut: table.outlets.length, own: slope(problem, table) * sums[j]!.safe[n]! },
        ];
      }),
    });
  };

  const go = (i: number, changes: number, gravity: number, dim: number): void => {
    if (i === n) {
      finish(gravity);
      return;
    }
    const from = i === 0 ? NOW : schedule[i - 1]!;
    const used = i > 0 && problem.week[i] !== problem.week[i - 1] ? 0 : changes;
    const { minutes: takes, puts, takes: off, pulls, vents } = problem.moves[problem.parts[i]!];
    for (let to = 0; to < L; to++) {
      if (!problem.possible[i * L + to]) continue;
      if (to !== from && (used >= problem.changesPerWeek || idle(problem, i, from, to))) continue;
      const k = i * S + lays[to]!.setting;
      const shaded = dim + problem.dim[k]!;
      const wrong =
        1000 * Number(problem.windy[i]! && puts[from * L + to] === 1) +
        1000 *
          Number(
            (pulls[from * L + to] === 1 && problem.frozen[i]!) ||
              (off[from * L + to] === 1 && problem.frozenThrough[i]!),
          ) +
        1000 * Number(problem.snow[i]! && off[from * L + to]! + vents[from * L + to]! > 0) +
        problem.broken[k]!.reduce(
          (sum, limit) => sum + (limit === "rowCoverInHeat" || limit === "dim" ? 1 : 1000),
          0,
        ) +
        Number(problem.dim[k]! > 0 && shaded > problem.dimDays);
      for (const [j, table] of tables.entries()) {
        const { time, light, heat, safe, rooted } = sums[j]!;
        time[i + 1] = time[i]! + table.pace[k]!;
        light[i + 1] = light[i]! + table.lightIn[k]!;
        heat[i + 1] = heat[i]! + table.heat[k]!;
        safe[i + 1] = safe[i]! + table.safe[k]!;
        rooted[i + 1] = rooted[i]! + table.rooted[k]!;
      }
      for (const [u, { safe }] of undated.entries()) kept[u]![i + 1] = kept[u]![i]! + safe[k]!;
      schedule.push(to);
      minutes.push(takes[from * L + to]!);
      go(i + 1, to === from ? used : used + 1, gravity + wrong, shaded);
      schedule.pop();
      minutes.pop();
    }
  };
  go(0, 0, 0, 0);
}

/** Every schedule with every choice of endings. */
export function everyWay(problem: TunnelProblem): readonly Way[] {
  const ways: Way[] = [];
  everySchedule(problem, (course) => {
    const all = course.beds.reduce<readonly (readonly Ending[])[]>(
      (lists, endings) => lists.flatMap((list) => endings.map((ending) => [...list, ending])),
      [[]],
    );
    for (const endings of all) ways.push({ course, endings });
  });
  return ways;
}

/** The way with a schedule and its cuts; undefined where no schedule may be so. */
export function wayOf(
  problem: TunnelProblem,
  schedule: readonly number[],
  cuts: readonly number[],
): Way | undefined {
  const only = problem.possible.map((_, k) =>
    Number(
      k % problem.lays.length === schedule[Math.floor(k / problem.lays.length)] && problem.possible[k] === 1,
    ),
  );
  return everyWay({ ...problem, possible: only }).find(({ endings }) =>
    endings.every(({ cut }, j) => cut === cuts[j]),
  );
}
