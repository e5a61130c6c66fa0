import { settingKey } from "../farm/index.ts";
import { leafLength } from "../growth/index.ts";
import type { Centimetre, Instant } from "../quantity/index.ts";
import type { Outcome, SuccessionOutlook, TunnelPlan } from "./outcome.ts";

/** Leaf length of one succession at one moment, with the plan and if nothing is changed. */
export interface CoursePoint {
  readonly at: Instant;
  /** null: not up yet. [cm] */
  readonly planned: Centimetre | null;
  readonly unchanged: Centimetre | null;
}

/** Thermal time at the start of each interval, last at the end of the days planned, and what each moment inside adds. */
function thermalTimes(
  plan: TunnelPlan,
  { succession, basis }: SuccessionOutlook,
  keys: readonly string[],
): (interval: number, added: ReadonlyMap<string, number>) => number {
  const pace = new Map(
    plan.ledger.flatMap(({ walk, setting, successions }) =>
      successions
        .filter(({ id }) => id === succession.id)
        .map(({ pace }): [string, number] => [`${walk} ${setting}`, pace]),
    ),
  );
  const sums = [basis!.thermalTime];
  keys.forEach((key, walk) => {
    const added = pace.get(`${walk} ${key}`);
    if (added === undefined)
      throw new RangeError(`the ledger lacks ${succession.id} at walk ${walk} under ${key}`);
    sums.push(sums[walk]! + added);
  });
  return (interval, added) => sums[interval]! + (added.get(keys[interval] ?? "") ?? 0);
}

const NOTHING: ReadonlyMap<string, number> = new Map();

/**
 * The course of one succession's leaf over the days planned, at every walk and at every moment it may be cut; the same
 * lengths as at its picks. Empty where it does not grow in the time looked at.
 */
export function course(outcome: Outcome, outlook: SuccessionOutlook): readonly CoursePoint[] {
  const { walks, air, tunnels } = outcome;
  const { basis, succession } = outlook;
  const plan = tunnels.find(({ tunnel }) => tunnel.id === succession.tunnel);
  if (basis === null || plan === undefined || air === null) return [];
  const chosen = plan.choice.map((setting) => settingKey(plan.settings[setting]!));
  const planned = thermalTimes(plan, outlook, chosen);
  const unchanged = thermalTimes(
    plan,
    outlook,
    chosen.map(() => settingKey(plan.now)),
  );
  const length = (thermalTime: number): Centimetre | null =>
    thermalTime <= 0 ? null : leafLength(basis.curve, thermalTime * Math.exp(-basis.shift));
  const moments = [
    ...walks.map(({ at }, interval) => ({ at, interval, added: NOTHING })),
    ...basis.outlets
      .filter(({ interval }) => interval < walks.length)
      .map(({ at, interval, added }) => ({
        at,
        interval,
        added: new Map(added.map(({ setting, pace }) => [setting, pace])),
      })),
    { at: air.until, interval: walks.length, added: NOTHING },
  ];
  return moments
    .filter(({ at }, i) => moments.findIndex((other) => other.at === at) === i)
    .sort((a, b) => a.at - b.at)
    .map(({ at, interval, added }) => ({
      at,
      planned: length(planned(interval, added)),
      unchanged: length(unchanged(interval, added)),
    }));
}
