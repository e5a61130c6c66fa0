import { type Answer, by, type Lay, layBefore, wageOf } from "./answer.ts";
import { harvestOf, lengthAt } from "./harvest.ts";

/** What one succession brings at what it is cut for. */
export interface Bed {
  readonly succession: Answer;
  /** null: it is not cut. */
  readonly outlet: Answer | null;
  readonly timing: number;
  readonly stress: number;
  readonly damage: number;
  readonly again: number;
  /** At salad size in each group of weathers; all that is cut. [kg] */
  readonly salad: readonly number[];
  readonly cut: number;
  /** [min] */
  readonly cutting: number;
  /** It is cut wet from under row cover. */
  readonly wet: boolean;
  /** Leaf as expected then. [cm] */
  readonly size: number | null;
}

const SUMS = ["paceCd", "lightMol", "heatCh", "safe", "rooted"] as const;
type Sums = Record<(typeof SUMS)[number], number>;

const NOTHING: Sums = { paceCd: 0, lightMol: 0, heatCh: 0, safe: 0, rooted: 0 };

/** What a succession gains and suffers between walks under a schedule. */
function between(tunnel: Answer, id: string, schedule: readonly Lay[], from: number, to: number): Sums {
  const sums = { ...NOTHING };
  for (let walk = from; walk < to; walk++) {
    const entry = tunnel.ledger.find(
      (each: Answer) => each.walk === walk && each.setting === schedule[walk]!.key,
    );
    const own = by<Answer>(entry.successions, "succession", id);
    for (const sum of SUMS) sums[sum] += own[sum];
  }
  return sums;
}

/** Share of the full weight that light allows. */
const lit = ({ settings }: Answer, crop: Answer, light: number, days: number): number =>
  Math.min(1, Math.max(0, light) / days / settings.fullLight) ** crop.lightOnWeight;

/** @param cut - Index of an outlet; null: not cut. */
export function bedAt(
  answer: Answer,
  tunnel: Answer,
  succession: Answer,
  schedule: readonly Lay[],
  cut: number | null,
): Bed {
  const { settings, weathers } = answer;
  const { basis } = succession;
  const crop = by<Answer>(answer.crops, "crop", succession.crop);
  const walks = schedule.length;
  const slope = settings.neverLost * basis.massKg * basis.price;
  if (cut === null) {
    const { safe } = between(tunnel, succession.succession, schedule, 0, walks);
    const salad = weathers.map(() => 0);
    return {
      succession,
      outlet: null,
      timing: 0,
      stress: 0,
      damage: slope * safe,
      again: 0,
      salad,
      cut: 0,
      cutting: 0,
      wet: false,
      size: null,
    };
  }
  const outlet = basis.outlets[cut];
  const before = between(tunnel, succession.succession, schedule, 0, outlet.walk);
  const { rooted } = between(tunnel, succession.succession, schedule, 0, walks);
  const last = by<Answer>(outlet.added, "setting", schedule[Math.min(walks - 1, outlet.walk)]!.key);
  const night =
    outlet.wetBy === "before" ? layBefore(tunnel, schedule, outlet.walk).key : (last.setting as string);
  const keeps = outlet.wetBy === null ? 1 : by<Answer>(outlet.added, "setting", night).keeps;
  const thermalTime = (basis.thermalTimeCd + before.paceCd + last.paceCd) / Math.exp(basis.shift);
  const light = lit(answer, crop, basis.lightMol + before.lightMol + last.lightMol, outlet.daysD);
  const heat = before.heatCh + last.heatCh;
  const quality = keeps * (1 - Math.min(settings.stressMost, settings.heatStress * heat));
  const safe = before.safe + last.safe;
  const through = Math.exp(safe);
  const { harvest, placeOf } = harvestOf(answer, crop, basis, outlet.spread);
  const groups = weathers.map((share: number, k: number) => ({
    share,
    ...harvest(placeOf(thermalTime * Math.exp(outlet.moved[k]))),
  }));
  const mean = (of: (group: Answer) => number): number =>
    groups.reduce((sum: number, group: Answer) => sum + group.share * of(group), 0);
  const full = basis.massKg * light;
  const sold = basis.price * outlet.kept * outlet.share * full * mean(({ salad, other }) => salad + other);
  const timing = sold - (basis.cuttingMin * wageOf(answer)) / 60;
  const stress = sold * (quality - 1);
  return {
    succession,
    outlet,
    timing,
    stress,
    damage:
      (timing + stress) * (through - 1) +
      (basis.regrown === 0 ? 0 : basis.regrown * (Math.exp(rooted) - 1) + slope * rooted) +
      slope * safe,
    again: basis.regrown,
    salad: groups.map(({ salad }: Answer) => salad * outlet.kept * full * quality * through),
    cut: mean((group) => group.cut) * full * quality * through,
    cutting: basis.cuttingMin * through,
    wet: keeps < 1,
    size: lengthAt(basis, thermalTime),
  };
}

/** What beds whose last cut nobody dated lose under a schedule. */
export function undatedLoss({ settings }: Answer, tunnel: Answer, schedule: readonly Lay[]): number {
  return tunnel.undated.reduce((sum: number, { succession, worth }: Answer) => {
    const safe = tunnel.ledger
      .filter((entry: Answer) => entry.setting === schedule[entry.walk]!.key)
      .reduce(
        (all: number, entry: Answer) => all + by<Answer>(entry.undated, "succession", succession).safe,
        0,
      );
    return sum + worth * (Math.exp(safe) - 1 + settings.neverLost * safe);
  }, 0);
}
