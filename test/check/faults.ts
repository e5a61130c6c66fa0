import { type Answer, bedsOf, by, layBefore, plannedOf, same, unchangedOf, withoutOf } from "./answer.ts";
import { bedAt } from "./bed.ts";
import { calmFaults } from "./calm.ts";
import { ledgerFaults } from "./ledger.ts";
import { breachesOf, clothFaults, layerFaults, overrunFaults, overrunsOf } from "./limits.ts";
import { priceAlone } from "./market.ts";
import { near } from "./near.ts";
import { wetFaults } from "./wet.ts";
import { type Whole, wholeOf } from "./whole.ts";

const PARTS = ["timing", "stress", "damage", "again", "labour", "orders"] as const;
const OWN = ["timing", "stress", "damage", "again", "labour"] as const;

const differ = (what: string, ours: number, told: number): readonly string[] =>
  near(ours, told) ? [] : [`${what}: ${told} told, ${ours} recomputed`];

const sameList = (what: string, ours: readonly string[], told: readonly string[]): readonly string[] =>
  [...ours].sort().join() === [...told].sort().join() ? [] : [`${what}: ${told} told, ${ours} recomputed`];

const unique = (list: readonly string[]): readonly string[] => [...new Set(list)];

/** Worth, parts and limits of the plan, or of changing nothing, against what is told of them. */
function wholeFaults(answer: Answer, whole: Whole, way: "planned" | "unchanged"): readonly string[] {
  const planned = way === "planned";
  const { together } = answer;
  const parts = planned ? "parts" : "partsUnchanged";
  const worth = planned ? "worth" : "worthUnchanged";
  return [
    ...PARTS.flatMap((part) => differ(`${way} ${part}`, whole.parts[part], together[parts][part])),
    ...differ(`${way} worth`, whole.worth, together[worth]),
    ...overrunFaults(overrunsOf(answer, whole), together[planned ? "overrun" : "overrunUnchanged"]).map(
      (fault) => `${way}: ${fault}`,
    ),
    ...clothFaults(answer, whole).map((fault) => `${way}: ${fault}`),
    ...whole.tunnels.flatMap((each) => {
      const { tunnel } = each;
      const name = `${way} ${tunnel.tunnel}`;
      const own = OWN.reduce((sum, part) => sum + each.parts[part], 0);
      return [
        ...OWN.flatMap((part) => differ(`${name} ${part}`, each.parts[part], tunnel[parts][part])),
        ...differ(`${name} worth`, own, tunnel[worth]),
        ...sameList(
          `${name} limits`,
          unique(breachesOf(answer, each)),
          tunnel[planned ? "gaveWay" : "unchangedBreaks"],
        ),
        ...each.beds.flatMap((bed) => bedFaults(bed.succession, bed.outlet, planned)),
      ];
    }),
  ];
}

/** The fate told is the outlet chosen. */
function bedFaults(succession: Answer, outlet: Answer | null, planned: boolean): readonly string[] {
  const fate = succession[planned ? "fate" : "fateUnchanged"];
  const wanted =
    outlet === null ? "none" : `${outlet.kind} ${outlet.at.instant} ${outlet.market} ${outlet.marketDate}`;
  const told =
    fate.kind === "none"
      ? "none"
      : `${fate.kind} ${(fate.kind === "hold" ? fate.cut : fate.pick.at).instant} ${fate.pick.market} ${fate.pick.marketDate}`;
  return wanted === told ? [] : [`${succession.succession}: ${told} told, ${wanted} chosen`];
}

/** What each bed is worth by the metre, and how large it is at every pick. */
function successionFaults(answer: Answer): readonly string[] {
  const ways = [
    ["planned", plannedOf(answer)],
    ["unchanged", unchangedOf(answer)],
  ] as const;
  return answer.tunnels.flatMap((tunnel: Answer) =>
    bedsOf(answer, tunnel.tunnel).flatMap((succession: Answer) => {
      const { basis, succession: id } = succession;
      const crop = by<Answer>(answer.crops, "crop", succession.crop);
      const regrown = answer.settings.regrowthWorth * basis.massKg * basis.price;
      const minutes = (basis.massKg / crop.yieldKgPerM) * answer.farm.labour.cuttingMinPerM;
      const length = Math.abs(succession.toM - succession.fromM);
      return [
        ...differ(`${id} price`, priceAlone(answer, crop.crop), basis.price),
        ...differ(`${id} minutes`, minutes, basis.cuttingMin),
        ...(basis.massKg > crop.yieldKgPerM * length * (1 + 1e-6) ? [`${id} weighs more than its bed`] : []),
        ...(basis.regrown === 0 ? [] : differ(`${id} regrowth`, regrown, basis.regrown)),
        ...basis.outlets.flatMap((outlet: Answer, cut: number) => {
          const at = succession.atPicks.find(
            ({ pick }: Answer) =>
              pick.at.instant === outlet.at.instant &&
              pick.market === outlet.market &&
              pick.marketDate === outlet.marketDate,
          );
          if (outlet.kind !== "pick" || at === undefined) return [];
          return ways.flatMap(([way, { schedules }]) =>
            differ(
              `${way} leaf of ${id} at ${outlet.at.clock}`,
              bedAt(answer, tunnel, succession, schedules.get(tunnel.tunnel)!, cut).size!,
              at[way].middleCm,
            ),
          );
        }),
      ];
    }),
  );
}

/** What each change gains is the plan's worth with it less the worth without it, and what forbids leaving it out is told. */
function changeFaults(answer: Answer, whole: Whole): readonly string[] {
  const planned = plannedOf(answer);
  const more = (list: readonly string[], than: readonly string[]): readonly string[] => {
    const count = (all: readonly string[], name: string): number =>
      all.filter((each) => each === name).length;
    return unique(list).filter((name) => count(list, name) > count(than, name));
  };
  return whole.tunnels.flatMap((mine) => {
    const { tunnel, schedule } = mine;
    const at = schedule.flatMap((lay, i) => (same(lay, layBefore(tunnel, schedule, i)) ? [] : [i]));
    return [
      ...sameList(
        `${tunnel.tunnel} changes at walks`,
        at.map(String),
        tunnel.changes.map(({ walk }: Answer) => `${walk}`),
      ),
      ...tunnel.changes.flatMap((change: Answer) => {
        const name = `${tunnel.tunnel} without its change at walk ${change.walk}`;
        const other = wholeOf(answer, withoutOf(planned, tunnel, change));
        const its = by(other.tunnels, "tunnel", tunnel);
        const breaks = breachesOf(answer, its);
        const { without, gain } = change;
        const forbids = more(
          [...breaks, ...without.overrun],
          [...breachesOf(answer, mine), ...answer.together.overrun],
        );
        const lay = schedule[change.walk]!;
        const had = layBefore(tunnel, schedule, change.walk);
        const laid = lay.taken.filter(({ piece }) => !had.taken.some((lain) => lain.piece === piece));
        const rhythm = lay.taken.some(({ state }) => state === "nights");
        const strongest = Math.max(...PARTS.map((part) => gain[part]), gain.calm);
        return [
          ...PARTS.flatMap((part) =>
            differ(`${name} ${part}`, whole.parts[part] - other.parts[part], gain[part]),
          ),
          ...differ(`${name} worth`, other.worth, without.worth),
          ...sameList(`${name} limits`, breaks, without.breaks),
          ...overrunFaults(overrunsOf(answer, other), without.overrun).map((fault) => `${name}: ${fault}`),
          ...(without.overrun.includes("pieces") === clothFaults(answer, other).length > 0
            ? []
            : [`${name}: pieces ${clothFaults(answer, other).join(", ")}`]),
          ...((change.limit === null ? forbids.length === 0 : forbids.includes(change.limit))
            ? []
            : [`${name}: ${change.limit} told, ${forbids} forbid it`]),
          ...((change.limit === null ? near(gain[change.decidedBy], strongest) : change.decidedBy === "limit")
            ? []
            : [`${name}: decided by ${change.decidedBy}`]),
          ...(change.from === had.key && change.to === lay.key ? [] : [`${name}: settings`]),
          ...sameList(
            `${name} pieces`,
            laid.flatMap(({ piece }) => piece ?? []),
            change.pieces,
          ),
          ...differ(`${name} minutes`, mine.moves[change.walk]!.minutes, change.minutesMin),
          ...(rhythm || change.eachWalkMin === 0 ? [] : [`${name}: minutes at each walk`]),
        ];
      }),
    ];
  });
}

/** Everything told in a week's printed JSON that its own numbers contradict, each as a sentence. */
export function faultsOf(answer: Answer): readonly string[] {
  const { together } = answer;
  if (together === null) return [];
  const whole = wholeOf(answer, plannedOf(answer));
  const scale = Math.max(1, Math.abs(together.worth), Math.abs(together.bound));
  const changes = answer.tunnels.flatMap((tunnel: Answer) => tunnel.changes);
  return [
    ...wholeFaults(answer, whole, "planned"),
    ...wholeFaults(answer, wholeOf(answer, unchangedOf(answer)), "unchanged"),
    ...layerFaults(answer, whole),
    ...changeFaults(answer, whole),
    ...calmFaults(answer),
    ...successionFaults(answer),
    ...answer.tunnels.flatMap((tunnel: Answer) => ledgerFaults(answer, tunnel)),
    ...answer.tunnels.flatMap((tunnel: Answer) => wetFaults(answer, tunnel)),
    ...(together.bound >= together.worth - 1e-6 * scale ? [] : ["the plan is worth more than its bound"]),
    ...differ("gap", together.bound - together.worth, together.gap),
    ...Object.entries(together.decidedBy).flatMap(([part, share]) =>
      differ(
        `changes decided by ${part}`,
        changes.length === 0
          ? 0
          : changes.filter(({ decidedBy }: Answer) => decidedBy === part).length / changes.length,
        share as number,
      ),
    ),
    ...differ(
      "shares of the weathers",
      answer.weathers.reduce((sum: number, share: number) => sum + share, 0),
      1,
    ),
  ];
}
