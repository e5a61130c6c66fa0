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
  /** Worth beside what its salad sells for: other sizes, waiting, wages of cutting, stubble. */
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

/** Sums of a bed up to an interval. */
interface Sums {
  readonly time: number;
  readonly light: number;
  readonly heat: number;
  readonly safe: number;
  readonly stubble: number;
}

/** Beside `Ending`: the stubble's sum from which on it must still come through. */
type Open = Ending & { readonly from: number };

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

/** A bed cut at an outlet, from its sums at the walk before and what lies then. */
function cutAt(
  problem: TunnelProblem,
  table: SuccessionTable,
  cut: number,
  sums: Sums,
  setting: number,
): Open {
  const outlet = table.outlets[cut]!;
  const { harvest, moved, kept, share } = outlet;
  const safe = sums.safe + outlet.safe[setting]!;
  const hot = sums.heat + outlet.heat[setting]!;
  const lit = problem.lightShare(table, sums.light + outlet.light[setting]!, outlet.days);
  const good = 1 - Math.min(problem.stressMost, problem.heatStress * hot);
  const through = Math.exp(safe);
  const grown = Math.log(Math.max(1e-9, sums.time + outlet.pace[setting]!));
  const place = (grown - table.growing.belief.shift - harvest.first) / STEP;
  const left = table.mass * lit * good * through;
  const mean = (row: Float64Array): number =>
    moved.reduce((sum, by, k) => sum + problem.weathers[k]! * read(row, place + by), 0);
  const salad = moved.map((by) => left * kept * read(harvest.salad, place + by));
  const sold = salad.reduce((sum, weight, k) => sum + problem.weathers[k]! * weight, 0) * table.price;
  const minutes = table.cutting * through;
  return {
    cut,
    outlet,
    crop: table.standing.crop.id,
    own:
      left * kept * share * table.price * mean(harvest.other) -
      (1 - share) * sold -
      minutes * problem.minute +
      slope(problem, table) * safe,
    salad,
    weight: left * mean(harvest.cut),
    minutes,
    from:
      sums.stubble +
      table.stubble[outlet.interval * problem.settings.length + setting]! -
      outlet.stubble[setting]!,
  };
}

/** Visits every schedule a tunnel may have: open to it, few enough changes a week, and none that does nothing. */
export function everySchedule(problem: TunnelProblem, visit: (course: Course) => void): void {
  const { intervals: n, settings, lays, successions: tables, weathers } = problem;
  const [S, L] = [settings.length, lays.length];
  const nothing = weathers.map(() => 0);
  const schedule: number[] = [];
  const minutes: number[] = [];

  const go = (
    i: number,
    changes: number,
    gravity: number,
    dim: number,
    sums: readonly Sums[],
    cuts: readonly (readonly Open[])[],
    undated: readonly number[],
  ): void => {
    if (i === n) {
      visit({
        schedule: [...schedule],
        minutes: [...minutes],
        gravity,
        own:
          problem.undated.reduce(
            (sum, { worth }, u) =>
              sum + worth * (Math.exp(undated[u]!) - 1 + problem.neverLost * undated[u]!),
            0,
          ) -
          minutes.reduce((sum, each) => sum + each, 0) * problem.minute,
        beds: tables.map((table, j): readonly Ending[] => {
          const { safe, stubble } = sums[j]!;
          const last = lays[schedule[n - 1]!]!.setting;
          const beyond = table.outlets.flatMap(({ interval }, w) =>
            interval === n ? [cutAt(problem, table, w, { ...sums[j]!, stubble: 0 }, last)] : [],
          );
          const done = [
            ...cuts[j]!.map((cut) => ({
              ...cut,
              own: cut.own + table.regrown * (Math.exp(stubble - cut.from) - 1),
            })),
            ...beyond,
          ];
          if (table.mustCut) return done;
          const uncut = { outlet: null, crop: table.standing.crop.id, salad: nothing, weight: 0, minutes: 0 };
          return [...done, { ...uncut, cut: table.outlets.length, own: slope(problem, table) * safe }];
        }),
      });
      return;
    }
    const from = i === 0 ? NOW : schedule[i - 1]!;
    const used = i > 0 && problem.week[i] !== problem.week[i - 1] ? 0 : changes;
    const { minutes: takes, puts, takes: lifts } = problem.moves[problem.parts[i]!];
    for (let to = 0; to < L; to++) {
      if (!problem.possible[i * L + to]) continue;
      if (to !== from && (used >= problem.changesPerWeek || idle(problem, i, from, to))) continue;
      const s = lays[to]!.setting;
      const k = i * S + s;
      const shaded = dim + problem.dim[k]!;
      const wrong =
        1000 * Number(problem.windy[i]! && puts[from * L + to] === 1) +
        1000 * Number(problem.frozen[i]! && from !== to && lifts[from * L + to] === 1) +
        problem.broken[k]!.reduce(
          (sum, limit) => sum + (limit === "rowCoverInHeat" || limit === "dim" ? 1 : 1000),
          0,
        ) +
        Number(problem.dim[k]! > 0 && shaded > problem.dimDays);
      schedule.push(to);
      minutes.push(takes[from * L + to]!);
      go(
        i + 1,
        to === from ? used : used + 1,
        gravity + wrong,
        shaded,
        tables.map((table, j) => ({
          time: sums[j]!.time + table.pace[k]!,
          light: sums[j]!.light + table.lightIn[k]!,
          heat: sums[j]!.heat + table.heat[k]!,
          safe: sums[j]!.safe + table.safe[k]!,
          stubble: sums[j]!.stubble + table.stubble[k]!,
        })),
        tables.map((table, j) => [
          ...cuts[j]!,
          ...table.outlets.flatMap(({ interval }, w) =>
            interval === i ? [cutAt(problem, table, w, sums[j]!, s)] : [],
          ),
        ]),
        problem.undated.map(({ safe }, u) => undated[u]! + safe[k]!),
      );
      schedule.pop();
      minutes.pop();
    }
  };
  go(
    0,
    0,
    0,
    0,
    tables.map(({ thermalTime, light }) => ({ time: thermalTime, light, heat: 0, safe: 0, stubble: 0 })),
    tables.map(() => []),
    problem.undated.map(() => 0),
  );
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
