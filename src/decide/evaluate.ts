import { calmCost } from "./calm.ts";
import { keptDry } from "./dry.ts";
import { readAt, STEP } from "./harvest.ts";
import type { LimitName, OwnParts } from "./outcome.ts";
import type { OutletTable, SuccessionTable } from "./successionTable.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

/** What a schedule and its cuts bring, each kilogram at the price it has alone; limits first. */
export interface Evaluation {
  /** Limits that give way, one entry a breach, and how grave that is together. */
  readonly breaches: readonly LimitName[];
  readonly gravity: number;
  /** Sum of the parts, calm left out: it is no gain, only a reason to leave a sheet as it is. */
  readonly worth: number;
  readonly parts: OwnParts;
  readonly changes: number;
  /** Of changing covers at each walk. [min] */
  readonly minutes: Float64Array;
  readonly successions: readonly SuccessionResult[];
}

/** What one succession is cut for, and what it brings. */
export interface SuccessionResult {
  readonly table: SuccessionTable;
  /** null: it is not cut in the time looked at. */
  readonly outlet: OutletTable | null;
  /** Thermal time at its cut. [°C·d] */
  readonly thermalTime: number;
  readonly worth: number;
  readonly timing: number;
  readonly stress: number;
  readonly damage: number;
  /** By what grows again after its cut, were nothing of it lost. */
  readonly again: number;
  /** At salad size for its market in each group of weathers, losses taken off; and all that is cut. [kg] */
  readonly salad: readonly number[];
  readonly cut: number;
  /** Time its cutting takes, as far as it comes through. [min] */
  readonly cutting: number;
  /** It is cut wet from under row cover. */
  readonly wet: boolean;
  /** There is enough to cut, or it is left. */
  readonly open: boolean;
}

/**
 * How grave a breach is: what hands cannot or must not do weighs more than any number of days under a cover that harms. Cloth
 * is never put on in too much wind to save a bed, it goes on at the walk before.
 */
const GRAVITY: Readonly<Record<LimitName, number>> = {
  pieces: 1000,
  wind: 1000,
  frozen: 1000,
  snow: 1000,
  net: 1000,
  changes: 1000,
  minutes: 1000,
  picking: 1000,
  washing: 1000,
  cooler: 1000,
  rowCoverInHeat: 1,
  dim: 1,
};

/** Gravity of some breaches together. */
export const gravityOf = (breaches: readonly LimitName[]): number =>
  breaches.reduce((sum, limit) => sum + GRAVITY[limit], 0);

/** Of one dim day too many. */
export const DIM: number = GRAVITY.dim;

/** Worth is compared after rounding to a millionth, so that every machine breaks ties alike. */
export const rounded = (worth: number): number => Math.round(worth * 1e6) / 1e6;

/** Share of worth that heat leaves. [0–1] */
export const quality = (
  heat: number,
  { heatStress, stressMost }: Pick<TunnelProblem, "heatStress" | "stressMost">,
): number => 1 - Math.min(stressMost, heatStress * heat);

/**
 * Limits broken by the change from one lay to another at a walk, or by a rhythm's own moves. What a rhythm's round takes off may
 * wait until it has thawed, where it does before the next walk; what a change takes off is planned for its walk, and snow lies for
 * days.
 */
export function breachesAt(
  problem: TunnelProblem,
  walk: number,
  from: number,
  to: number,
): readonly LimitName[] {
  const move = from * problem.lays.length + to;
  const part = problem.parts[walk]!;
  const limits: LimitName[] = [];
  if (problem.windy[walk] && problem.moves[part].puts[move]) limits.push("wind");
  const { takes, pulls, vents } = problem.moves[part];
  if ((problem.frozen[walk] && pulls[move]) || (problem.frozenThrough[walk] && takes[move]))
    limits.push("frozen");
  if (problem.snow[walk] && (takes[move] || vents[move])) limits.push("snow");
  return limits;
}

/** A change that only says in advance what the next walk would do: bare to a rhythm in the morning. Never offered. */
export function idle(problem: TunnelProblem, walk: number, from: number, to: number): boolean {
  const move = from * problem.lays.length + to;
  const part = problem.parts[walk]!;
  return (
    from !== to &&
    problem.moves[part].minutes[move] === 0 &&
    !problem.moves[part].puts[move] &&
    !problem.moves[part].takes[move]
  );
}

/** Place of a thermal time in an outlet's harvest. [steps] */
export const placeOf = (
  { growing }: SuccessionTable,
  { harvest }: OutletTable,
  thermalTime: number,
): number => (Math.log(Math.max(1e-9, thermalTime)) - growing.belief.shift - harvest.first) / STEP;

/** Sums of what a succession gains and suffers up to a moment. */
interface Sums {
  readonly thermalTime: number;
  readonly light: number;
  readonly heat: number;
  readonly safe: number;
  readonly rooted: number;
}

/** Sums before every interval, and after the last. */
function sumsOf(
  { lays, intervals: n, settings }: TunnelProblem,
  table: SuccessionTable,
  schedule: readonly number[],
): readonly Sums[] {
  const sums: Sums[] = [{ thermalTime: table.thermalTime, light: table.light, heat: 0, safe: 0, rooted: 0 }];
  for (let i = 0; i < n; i++) {
    const before = sums[i]!;
    const k = i * settings.length + lays[schedule[i]!]!.setting;
    sums.push({
      thermalTime: before.thermalTime + table.pace[k]!,
      light: before.light + table.lightIn[k]!,
      heat: before.heat + table.heat[k]!,
      safe: before.safe + table.safe[k]!,
      rooted: before.rooted + table.rooted[k]!,
    });
  }
  return sums;
}

/** What a lost bed still counts for each unit of the logarithm of its chance. */
export const slopeOf = ({ neverLost }: TunnelProblem, { mass, price }: SuccessionTable): number =>
  neverLost * mass * price;

/**
 * What a bed that is cut brings later, as far as its roots come through.
 *
 * @param rooted - Logarithm of their chance to the end of the plan, with caution.
 */
export const afterCut = (problem: TunnelProblem, table: SuccessionTable, rooted: number): number =>
  table.regrown === 0 ? 0 : table.regrown * Math.exp(rooted) + slopeOf(problem, table) * rooted;

const uncut = (problem: TunnelProblem, table: SuccessionTable, sums: readonly Sums[]): SuccessionResult => {
  const damage = slopeOf(problem, table) * sums[problem.intervals]!.safe;
  return {
    table,
    outlet: null,
    thermalTime: sums[problem.intervals]!.thermalTime,
    worth: damage,
    timing: 0,
    stress: 0,
    damage,
    again: 0,
    salad: problem.weathers.map(() => 0),
    cut: 0,
    cutting: 0,
    wet: false,
    open: !table.mustCut,
  };
};

/** What a succession brings at every outlet under a schedule; the last entry is leaving it uncut. */
export function outletResults(
  problem: TunnelProblem,
  table: SuccessionTable,
  schedule: readonly number[],
): readonly SuccessionResult[] {
  const { intervals: n, minute, weathers, lays } = problem;
  const sums = sumsOf(problem, table, schedule);
  const cuts = table.outlets.map((outlet): SuccessionResult => {
    const before = sums[outlet.interval]!;
    const s = lays[schedule[Math.min(n - 1, outlet.interval)]!]!.setting;
    const keeps = keptDry(outlet, lays[schedule[outlet.interval - 1] ?? NOW]!.setting, s);
    const thermalTime = before.thermalTime + outlet.pace[s]!;
    const safe = before.safe + outlet.safe[s]!;
    const lit = table.mass * problem.lightShare(table, before.light + outlet.light[s]!, outlet.days);
    const good = quality(before.heat + outlet.heat[s]!, problem) * keeps;
    const through = Math.exp(safe);
    const place = placeOf(table, outlet, thermalTime);
    const over = (row: Float64Array): readonly number[] => outlet.moved.map((by) => readAt(row, place + by));
    const mean = (values: readonly number[]): number =>
      values.reduce((sum, value, k) => sum + weathers[k]! * value, 0);
    const salad = over(outlet.harvest.salad);
    const other = mean(over(outlet.harvest.other));
    const sold = table.price * outlet.kept * outlet.share * lit * (mean(salad) + other);
    const timing = sold - table.cutting * minute;
    const stress = sold * (good - 1);
    const damage =
      (timing + stress) * (through - 1) +
      slopeOf(problem, table) * safe +
      afterCut(problem, table, sums[n]!.rooted) -
      table.regrown;
    return {
      table,
      outlet,
      thermalTime,
      worth: timing + stress + damage + table.regrown,
      timing,
      stress,
      damage,
      again: table.regrown,
      salad: salad.map((share) => share * outlet.kept * lit * good * through),
      cut: mean(over(outlet.harvest.cut)) * lit * good * through,
      cutting: table.cutting * through,
      wet: keeps < 1,
      open: table.mustCut || (place >= outlet.pays[0] && place <= outlet.pays[1]),
    };
  });
  return [...cuts, uncut(problem, table, sums)];
}

/** The limits a schedule breaks, what it takes, and how often it changes. */
function handling(problem: TunnelProblem, schedule: readonly number[]) {
  const { intervals: n, settings, lays } = problem;
  const [S, L] = [settings.length, lays.length];
  const breaches: LimitName[] = [];
  const inWeek = new Map<number, number>();
  const minutes = new Float64Array(n);
  let changes = 0;
  let calm = 0;
  let dim = 0;
  for (let i = 0; i < n; i++) {
    const from = i === 0 ? NOW : schedule[i - 1]!;
    const to = schedule[i]!;
    const k = i * S + lays[to]!.setting;
    breaches.push(...problem.broken[k]!, ...breachesAt(problem, i, from, to));
    dim += problem.dim[k]!;
    if (problem.dim[k]! > 0 && dim > problem.dimDays) breaches.push("dim");
    minutes[i] = problem.moves[problem.parts[i]!].minutes[from * L + to]!;
    calm -= calmCost(problem, i, from, to);
    if (from === to) continue;
    changes += 1;
    const used = (inWeek.get(problem.week[i]!) ?? 0) + 1;
    inWeek.set(problem.week[i]!, used);
    if (used > problem.changesPerWeek) breaches.push("changes");
  }
  return { breaches, minutes, changes, calm };
}

/**
 * Evaluates a schedule with its cuts.
 *
 * @param schedule - Index of a lay for each interval.
 * @param cuts - For each succession the index of its outlet; the number of its outlets leaves it uncut. Left out: the best of each.
 */
export function evaluate(
  problem: TunnelProblem,
  schedule: readonly number[],
  cuts: readonly number[] | null = null,
): Evaluation {
  const { breaches, minutes, changes, calm } = handling(problem, schedule);
  const successions = problem.successions.map((table, j): SuccessionResult => {
    const results = outletResults(problem, table, schedule);
    return cuts === null ? best(results) : results[cuts[j]!]!;
  });
  const undated = problem.undated.reduce((sum, { worth, safe }) => {
    const through = schedule.reduce(
      (total, lay, i) => total + safe[i * problem.settings.length + problem.lays[lay]!.setting]!,
      0,
    );
    return sum + worth * (Math.exp(through) - 1 + problem.neverLost * through);
  }, 0);
  const sum = (part: "timing" | "stress" | "damage" | "again"): number =>
    successions.reduce((total, result) => total + result[part], 0);
  const parts = {
    timing: sum("timing"),
    stress: sum("stress"),
    damage: sum("damage") + undated,
    again: sum("again"),
    labour: -minutes.reduce((total, each) => total + each, 0) * problem.minute,
    calm,
  };
  return {
    breaches,
    gravity: gravityOf(breaches),
    worth: parts.timing + parts.stress + parts.damage + parts.again + parts.labour,
    parts,
    changes,
    minutes,
    successions,
  };
}

/** The best of what a succession can be cut for, leaving it among them. */
export const best = (results: readonly SuccessionResult[]): SuccessionResult =>
  results.filter(({ open }) => open).reduce((top, result) => (result.worth > top.worth ? result : top));
