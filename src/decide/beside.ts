import { kilogram } from "../quantity/index.ts";
import { type Evaluation, outletResults, type SuccessionResult } from "./evaluate.ts";
import type { BedBeside, Worst } from "./outcome.ts";
import { fateOf } from "./outlook.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";
import type { Telling } from "./told.ts";

/** Differences of thermal time below this are none. [°C·d] */
const NOTHING = 1e-9;

const gainOf = (plan: SuccessionResult, other: SuccessionResult): BedBeside["gain"] => ({
  timing: plan.timing - other.timing,
  stress: plan.stress - other.stress,
  damage: plan.damage - other.damage,
  again: plan.again - other.again,
});

/**
 * The successions of a tunnel that another schedule changes. Size, odds and weight are compared at one cut: the plan's, or where
 * it has none the other's. The members that the plan's odds are counted over go with the other schedule as well, each moved by
 * what the expected thermal time differs.
 */
export function bedsBeside(
  { problem, chosen }: Pick<Planned, "problem" | "chosen">,
  schedule: readonly number[],
  other: Evaluation,
  planned: (table: SuccessionTable) => readonly SuccessionResult[],
  tell: (table: SuccessionTable) => Telling,
): readonly BedBeside[] {
  return problem.successions.flatMap((table, j): readonly BedBeside[] => {
    const [plan, instead] = [chosen.successions[j]!, other.successions[j]!];
    const gain = gainOf(plan, instead);
    const outlet = plan.outlet ?? instead.outlet;
    const moved = Object.values(gain).some((part) => Math.abs(part) > NOTHING);
    const sameCut = plan.outlet === instead.outlet;
    if (!moved && sameCut && Math.abs(plan.thermalTime - instead.thermalTime) <= NOTHING) return [];
    const { standing, growing } = table;
    const fate = fateOf(standing, growing, instead);
    const common = { succession: standing.succession.id, fate, gain };
    if (outlet === null) return [{ ...common, cut: null }];
    const at = table.outlets.indexOf(outlet);
    const [here, there] = [planned(table)[at]!, outletResults(problem, table, schedule)[at]!];
    const told = tell(table);
    const [a, b] = [told(here), told(there)];
    return [
      {
        ...common,
        cut: {
          at: outlet.at,
          pick: outlet.fate.pick,
          size: { plan: a.size, other: b.size },
          odds: { plan: a.odds, other: b.odds },
          weight: { plan: kilogram(here.cut), other: kilogram(there.cut) },
          wet: outlet.dry === null ? null : { rain: outlet.rain, plan: here.wet, other: there.wet },
        },
      },
    ];
  });
}

/** Chance that stubble dies, back from the logarithm of its chance to come through with caution. [0–1] */
function stubbleLost(safe: number, caution: number): number {
  const odds = caution > 0 ? Math.expm1(-safe) / caution : 0;
  return odds / (1 + odds);
}

/**
 * The part of a day in which another schedule changes the odds of damage most, and whose; null: nowhere. Leaves count up to the
 * interval their cut falls in, stubble after it.
 */
export function worstOf(
  { horizon, farm }: Scene,
  { problem, chosen, choice }: Planned,
  schedule: readonly number[],
): Worst | null {
  const S = problem.settings.length;
  let worst: Worst | null = null;
  let most = 0;
  schedule.forEach((lay, i) => {
    const [k, o] = [i * S + choice[i]!, i * S + problem.lays[lay]!.setting];
    for (const { table, outlet } of chosen.successions) {
      if (outlet?.interval === i) continue;
      const stubble = outlet !== null && outlet.interval < i;
      const at = (place: number): number =>
        stubble ? stubbleLost(table.rooted[place]!, farm.limits.caution) : table.damage[place]!;
      const odds = { plan: at(k), other: at(o) };
      if (Math.abs(odds.plan - odds.other) <= most) continue;
      most = Math.abs(odds.plan - odds.other);
      worst = {
        succession: table.standing.succession.id,
        of: stubble ? "stubble" : "leaves",
        walk: horizon.walks[i]!,
        odds,
      };
    }
  });
  return worst;
}
