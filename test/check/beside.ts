import { type Answer, by, plannedOf, withoutOf } from "./answer.ts";
import { type Bed, bedAt } from "./bed.ts";
import { near } from "./near.ts";
import { type TunnelWhole, type Whole, wholeOf } from "./whole.ts";

const PARTS = ["timing", "stress", "damage", "again"] as const;

const differ = (what: string, ours: number, told: number): readonly string[] =>
  near(ours, told) ? [] : [`${what}: ${told} told, ${ours} recomputed`];

/** Beds told of one change, against the same beds with it and without it. */
function bedFaults(
  answer: Answer,
  name: string,
  told: readonly Answer[],
  mine: TunnelWhole,
  other: TunnelWhole,
): readonly string[] {
  return other.beds.flatMap((without): readonly string[] => {
    const id: string = without.succession.succession;
    const bed = told.find(({ succession }) => succession === id);
    const planned = mine.beds.find((each) => each.succession.succession === id)!;
    if (bed === undefined)
      return PARTS.flatMap((part) =>
        differ(`${name} ${id} ${part} untold`, planned[part] - without[part], 0),
      );
    const parts = PARTS.flatMap((part) =>
      differ(`${name} ${id} ${part}`, planned[part] - without[part], bed.gain[part]),
    );
    const { basis } = without.succession;
    const outlet = planned.outlet ?? without.outlet;
    if (outlet === null) return bed.cut === null ? parts : [...parts, `${name} ${id}: a cut is told`];
    const at = (schedule: TunnelWhole): Bed =>
      bedAt(answer, mine.tunnel, without.succession, schedule.schedule, basis.outlets.indexOf(outlet));
    const [here, there] = [at(mine), at(other)];
    return [
      ...parts,
      ...(bed.cut.at.instant === outlet.at.instant ? [] : [`${name} ${id}: told of another cut`]),
      ...differ(`${name} ${id} size`, here.size!, bed.cut.size.plan.middleCm),
      ...differ(`${name} ${id} size without`, there.size!, bed.cut.size.other.middleCm),
      ...((bed.cut.wet?.plan ?? false) === here.wet && (bed.cut.wet?.other ?? false) === there.wet
        ? []
        : [`${name} ${id}: cut wet or dry`]),
      ...differ(`${name} ${id} weight`, here.cut, bed.cut.weightKg.plan),
      ...differ(`${name} ${id} weight without`, there.cut, bed.cut.weightKg.other),
    ];
  });
}

/** Odds of damage in the worst part of a day, against every other whole one a bed stands through. */
function worstFaults(
  answer: Answer,
  name: string,
  worst: Answer,
  mine: TunnelWhole,
  other: TunnelWhole,
): readonly string[] {
  const damage = (whole: TunnelWhole, walk: number, { succession, outlet }: Bed): number => {
    const own = by<Answer>(
      mine.tunnel.ledger.find(
        (each: Answer) => each.walk === walk && each.setting === whole.schedule[walk]!.key,
      ).successions,
      "succession",
      succession.succession,
    );
    if (outlet === null || walk < outlet.walk) return own.damage;
    const odds = (Math.exp(-own.rooted) - 1) / answer.farm.limits.caution;
    return walk === outlet.walk ? 0 : odds / (1 + odds);
  };
  const most = Math.max(
    0,
    ...mine.beds.flatMap((bed) =>
      mine.schedule.map((_, walk) => Math.abs(damage(mine, walk, bed) - damage(other, walk, bed))),
    ),
  );
  if (worst === null) return differ(`${name} untold odds of damage`, most, 0);
  const bed = mine.beds.find(({ succession }) => succession.succession === worst.succession)!;
  return [
    ...differ(`${name} damage`, damage(mine, worst.walk, bed), worst.odds.plan),
    ...differ(`${name} damage without`, damage(other, worst.walk, bed), worst.odds.other),
    ...differ(`${name} most damage`, most, Math.abs(worst.odds.plan - worst.odds.other)),
  ];
}

/** Everything told of what one change does, recomputed with that change taken out; each contradiction as a sentence. */
export function besideFaults(answer: Answer): readonly string[] {
  const planned = plannedOf(answer);
  const whole = wholeOf(answer, planned);
  const tunnelOf = ({ tunnels }: Whole, { tunnel }: Answer): TunnelWhole =>
    tunnels.find((each) => each.tunnel.tunnel === tunnel)!;
  return answer.tunnels.flatMap((tunnel: Answer): readonly string[] =>
    tunnel.changes.flatMap((change: Answer): readonly string[] => {
      const name = `${tunnel.tunnel} at walk ${change.walk}`;
      const mine = tunnelOf(whole, tunnel);
      const other = tunnelOf(wholeOf(answer, withoutOf(planned, tunnel, change)), tunnel);
      return [
        ...bedFaults(answer, name, change.without.beds, mine, other),
        ...worstFaults(answer, name, change.without.worst, mine, other),
      ];
    }),
  );
}
