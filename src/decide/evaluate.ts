import type { LimitName, Parts } from "./outcome.ts";
import type { OutletTable as Outlet, SuccessionTable } from "./successionTable.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/** What a schedule brings, limits first. */
export interface Evaluation {
  /** Limits that give way, one entry a breach, and how grave that is together. */
  readonly breaches: readonly LimitName[];
  readonly gravity: number;
  /** Sum of the parts. */
  readonly worth: number;
  readonly parts: Parts;
  readonly changes: number;
  readonly successions: readonly SuccessionResult[];
}

/** What one succession is best cut for, and what it brings. */
export interface SuccessionResult {
  readonly table: SuccessionTable;
  /** null: there is no moment to cut it in the time looked at. */
  readonly outlet: Outlet | null;
  readonly worth: number;
  readonly timing: number;
  readonly stress: number;
  readonly damage: number;
}

/**
 * How grave a breach is. What hands cannot or must not do weighs more than any number of nights without the warmest cloth:
 * cloth is never put on in too much wind to save a bed, it goes on at the walk before.
 */
const GRAVITY: Readonly<Record<LimitName, number>> = {
  pieces: 1000,
  wind: 1000,
  frozen: 1000,
  net: 1000,
  changes: 1000,
  frost: 1,
  heat: 1,
  rowCoverInHeat: 1,
  dim: 1,
};

/** Gravity of some breaches together. */
export const gravityOf = (breaches: readonly LimitName[]): number =>
  breaches.reduce((sum, limit) => sum + GRAVITY[limit], 0);

/** Worth is compared after rounding to a millionth, so that every machine breaks ties alike. */
export const rounded = (worth: number): number => Math.round(worth * 1e6) / 1e6;

/** Share of worth that heat leaves. [0–1] */
export const quality = (heat: number, { heatStress, stressMost }: TunnelProblem): number =>
  1 - Math.min(stressMost, heatStress * heat);

/** Limits broken by the change from one setting to another at a walk, or by a rhythm's own moves. */
export function breachesAt(
  problem: TunnelProblem,
  walk: number,
  from: number,
  to: number,
): readonly LimitName[] {
  const move = from * problem.settings.length + to;
  const part = problem.parts[walk]!;
  const limits: LimitName[] = [];
  if (problem.windy[walk] && problem.moves[part].puts[move]) limits.push("wind");
  if (problem.frozen[walk] && from !== to && problem.moves[part].takes[move]) limits.push("frozen");
  return limits;
}

/** The limit that binds in an interval in which something that stands is endangered: the warmest by night, the coolest by day. */
export const dangerLimit = ({ parts }: TunnelProblem, i: number): "frost" | "heat" =>
  parts[i] === "night" ? "frost" : "heat";

/** Intervals in which something of a bed is endangered when it is cut at an outlet; when it brings nothing it is left standing. */
export const endangeredBy = (table: SuccessionTable, outlet: Outlet | null, worth: number): Uint8Array =>
  worth > 0 && outlet !== null ? outlet.endangered : table.endangered;

/** Limits a setting breaks in an interval as long as nothing is cut. */
export function breachesStanding(problem: TunnelProblem, i: number, s: number): readonly LimitName[] {
  const k = i * problem.settings.length + s;
  const endangered =
    problem.poor[k] === 1 &&
    (problem.endangered[i] === 1 || problem.successions.some((table) => table.endangered[i] === 1));
  return endangered ? [...problem.broken[k]!, dangerLimit(problem, i)] : problem.broken[k]!;
}

/** A change that only says in advance what the next walk would do: bare to a rhythm in the morning. Never offered. */
export function idle(problem: TunnelProblem, walk: number, from: number, to: number): boolean {
  const move = from * problem.settings.length + to;
  const part = problem.parts[walk]!;
  return (
    from !== to &&
    problem.moves[part].minutes[move] === 0 &&
    !problem.moves[part].puts[move] &&
    !problem.moves[part].takes[move]
  );
}

/** What a succession brings at an outlet, its cutting paid, given its sums before and in the outlet's interval. */
export function outletWorth(
  problem: TunnelProblem,
  table: SuccessionTable,
  outlet: Outlet,
  thermalTime: number,
  light: number,
  heat: number,
  safe: number,
): Omit<SuccessionResult, "table" | "outlet"> {
  const sold = outlet.value.at(thermalTime) * outlet.share * problem.lightShare(table, light, outlet.days);
  const timing = sold - table.cutting * problem.minute;
  const stress = sold * quality(heat, problem) - sold;
  const kept = timing + stress;
  const worth = kept * Math.exp(safe);
  return { worth, timing, stress, damage: worth - kept };
}

/**
 * Evaluates one schedule from its settings per interval.
 *
 * @param choice - Index of a setting for each interval.
 */
export function evaluate(problem: TunnelProblem, choice: readonly number[]): Evaluation {
  const { intervals: n, settings } = problem;
  const S = settings.length;
  const breaches: LimitName[] = [];
  const inWeek = new Map<number, number>();
  let minutes = 0;
  let changes = 0;
  let dim = 0;
  for (let i = 0; i < n; i++) {
    const from = i === 0 ? problem.now : choice[i - 1]!;
    const to = choice[i]!;
    breaches.push(...problem.broken[i * S + to]!, ...breachesAt(problem, i, from, to));
    dim += problem.dim[i * S + to]!;
    if (problem.dim[i * S + to]! > 0 && dim > problem.dimDays) breaches.push("dim");
    if (!problem.possible[i * S + to]) breaches.push("pieces");
    minutes += problem.moves[problem.parts[i]!].minutes[from * S + to]!;
    if (from === to) continue;
    changes += 1;
    const used = (inWeek.get(problem.week[i]!) ?? 0) + 1;
    inWeek.set(problem.week[i]!, used);
    if (used > problem.changesPerWeek) breaches.push("changes");
  }
  const successions = problem.successions.map((table): SuccessionResult => best(problem, table, choice));
  const standing = successions.map(({ table, outlet, worth }) => endangeredBy(table, outlet, worth));
  for (let i = 0; i < n; i++) {
    const endangered = problem.endangered[i] === 1 || standing.some((intervals) => intervals[i] === 1);
    if (problem.poor[i * S + choice[i]!] && endangered) breaches.push(dangerLimit(problem, i));
  }
  const labour = -minutes * problem.minute;
  const sum = (part: "timing" | "stress" | "damage"): number =>
    successions.reduce((total, result) => total + result[part], 0);
  const parts = { timing: sum("timing"), stress: sum("stress"), damage: sum("damage"), labour };
  return {
    breaches,
    gravity: gravityOf(breaches),
    worth: parts.timing + parts.stress + parts.damage + labour,
    parts,
    changes,
    successions,
  };
}

/** The best outlet of a succession under a schedule. */
function best(problem: TunnelProblem, table: SuccessionTable, choice: readonly number[]): SuccessionResult {
  const results = outletResults(problem, table, choice);
  return results.reduce<SuccessionResult>((top, result) => (result.worth > top.worth ? result : top), {
    table,
    outlet: results[0]?.outlet ?? null,
    worth: 0,
    timing: 0,
    stress: 0,
    damage: 0,
  });
}

/** What a succession brings at every outlet under a schedule. */
export function outletResults(
  problem: TunnelProblem,
  table: SuccessionTable,
  choice: readonly number[],
): readonly (SuccessionResult & { readonly thermalTime: number })[] {
  const S = problem.settings.length;
  const n = problem.intervals;
  const sums = [{ thermalTime: table.thermalTime, light: table.light, heat: 0, safe: 0 }];
  for (let i = 0; i < n; i++) {
    const before = sums[i]!;
    const k = i * S + choice[i]!;
    sums.push({
      thermalTime: before.thermalTime + table.pace[k]!,
      light: before.light + table.lightIn[k]!,
      heat: before.heat + table.heat[k]!,
      safe: before.safe + table.safe[k]!,
    });
  }
  return table.outlets.map((outlet) => {
    const at = sums[outlet.interval]!;
    const s = choice[Math.min(n - 1, outlet.interval)]!;
    const thermalTime = at.thermalTime + outlet.pace[s]!;
    const result = outletWorth(
      problem,
      table,
      outlet,
      thermalTime,
      at.light + outlet.light[s]!,
      at.heat + outlet.heat[s]!,
      at.safe + outlet.safe[s]!,
    );
    return { table, outlet, thermalTime, ...result };
  });
}
