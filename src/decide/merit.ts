import { type Evaluation, gravityOf } from "./evaluate.ts";
import { type Planned, unchangedOf } from "./planned.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/**
 * What a lost bed still counts, as a share of the whole for each unit of the logarithm of its chance to come through: a bed told
 * as lost is never surely so, and less cold or heat is better for it than more. For giving out cloth alone. judgement
 */
const NEVER_LOST = 0.01;

/** What a schedule saves when cloth is given out: its worth before work, and a slope that does not end where a bed counts as lost. */
function merit(
  { successions: tables, settings }: TunnelProblem,
  choice: readonly number[],
  evaluation: Evaluation,
): number {
  const { worth, parts, successions } = evaluation;
  const S = settings.length;
  return tables.reduce((sum, { whole, safe }, j) => {
    const { outlet, worth: brought } = successions[j]!;
    const until = brought > 0 && outlet !== null ? outlet.interval : choice.length;
    const through = choice.slice(0, until).reduce((total, s, i) => total + safe[i * S + s]!, 0);
    return sum + NEVER_LOST * whole * through;
  }, worth - parts.labour);
}

/** What a plan saves; the work left out, which a limit asks for where beds are in danger. */
export const meritOf = (planned: Planned): number => merit(planned.problem, planned.choice, planned.chosen);

/** What a plan saves over leaving on what lies now. */
export const meritGained = (planned: Planned): number =>
  meritOf(planned) - merit(planned.problem, unchangedOf(planned), planned.unchanged);

/**
 * A tunnel on which leaves that stand would more likely than not be damaged some night or day if nothing were changed, or may be
 * where no size is known. Stubble alone is no danger: the model knows no worth of what would grow from it.
 */
export function inDanger({ problem, unchanged }: Planned): boolean {
  const { settings, now, intervals, endangered, poor } = problem;
  const S = settings.length;
  if (endangered.some((undated, i) => undated === 1 && poor[i * S + now] === 1)) return true;
  return unchanged.successions.some(({ table: { damage }, outlet, worth }) => {
    const until = worth > 0 && outlet !== null ? Math.min(outlet.interval, intervals) : intervals;
    return Array.from({ length: until }, (_, i) => damage[i * S + now]!).some((p) => p >= 0.5);
  });
}

/** The same with the work. */
export const netGained = (planned: Planned): number =>
  meritGained(planned) + planned.chosen.parts.labour - planned.unchanged.parts.labour;

/** Differences of merit below this are none. */
export const NOTHING = 1e-6;

/** The graver breaches alone: how many nights lack the warmest cloth at hand says nothing where hands differ in cloth. */
const grave = (plans: readonly Planned[]): number =>
  plans.reduce((sum, { chosen }) => sum + Math.floor(chosen.gravity / gravityOf(["pieces"])), 0);

/** Some plans together are better than others of the same tunnels: those in danger go before the rest. */
export function isBetter(
  plans: readonly Planned[],
  others: readonly Planned[],
  endangered: (planned: Planned) => boolean,
): boolean {
  if (grave(plans) !== grave(others)) return grave(plans) < grave(others);
  const saved = (list: readonly Planned[]): number =>
    list.filter(endangered).reduce((sum, planned) => sum + meritOf(planned), 0);
  const first = saved(plans) - saved(others);
  if (Math.abs(first) > NOTHING) return first > 0;
  const net = (list: readonly Planned[]): number =>
    list.reduce((sum, planned) => sum + meritOf(planned) + planned.chosen.parts.labour, 0);
  return net(plans) - net(others) > NOTHING;
}
