import type { Change, Outcome, SuccessionOutlook, TunnelPlan, Walk } from "../../decide/index.ts";
import type { CoverState } from "../../farm/index.ts";
import { ACTS, type Act, type Purpose } from "../../folder/index.ts";
import {
  groupBy,
  type Instant,
  type Kilogram,
  type LocalDate,
  localDate,
  localHour,
  type MetrePerSecond,
} from "../../quantity/index.ts";
import { type StepName, steps } from "../actions.ts";
import { cutAt, walkOf } from "../cuts.ts";

/** One thing to be done, wherever it is done at that walk. */
export type Instruction =
  | {
      readonly kind: "cover";
      readonly act: Act;
      /** As it is noted; null: a round of a rhythm, nothing new. */
      readonly state: CoverState | null;
      readonly cover: string;
      readonly places: readonly Place[];
    }
  | {
      readonly kind: "cut";
      readonly purpose: Purpose;
      /** Selling day. */
      readonly market: LocalDate;
      readonly beds: readonly {
        readonly succession: string;
        readonly crop: string;
        readonly tunnel: string;
        readonly expected: Kilogram;
      }[];
    };

export interface Place {
  readonly tunnel: string;
  /** Pieces to be laid out, by their names in pieces.csv; empty where the cover has only one. */
  readonly pieces: readonly string[];
}

/** What keeps people, cloth and leaves from harm at a walk, told with what it concerns. */
export type Caution =
  | { readonly kind: "windLimit"; readonly limit: MetrePerSecond }
  | { readonly kind: "windExpected"; readonly wind: MetrePerSecond }
  | { readonly kind: "frozenCloth" }
  | { readonly kind: "snowOnCloth" }
  | { readonly kind: "snowOnBeds" }
  | { readonly kind: "wetLeaves" }
  /** null: all day. */
  | { readonly kind: "frozenLeaves"; readonly thaw: Instant | null };

/** Everything done at one moment: a walk, or a cut at an hour of its own. */
export interface Round {
  readonly at: Instant;
  readonly date: LocalDate;
  /** Hour on the farm's clock. [h] */
  readonly hour: number;
  readonly part: Walk["part"] | "cutting";
  readonly cautions: readonly Caution[];
  /** Cuts first, then what comes off, is changed, goes on. */
  readonly instructions: readonly Instruction[];
}

const ACT: Readonly<Record<StepName, Act>> = {
  "off on": "on",
  "off vented": "onLifted",
  "off nights morning": "layReady",
  "off nights evening": "onNights",
  "on off": "off",
  "on vented": "lift",
  "on nights morning": "offNights",
  "on nights evening": "leaveNights",
  "vented off": "off",
  "vented on": "lower",
  "vented nights morning": "offNights",
  "vented nights evening": "lowerNights",
  "nights off morning": "offAlsoNights",
  "nights off evening": "leaveOff",
  "nights on morning": "leaveOn",
  "nights on evening": "onAlsoDays",
  "nights vented morning": "liftAlways",
  "nights vented evening": "onLiftedAlways",
  "nights nights morning": "offForDay",
  "nights nights evening": "onForNight",
};

const GOES_OFF: readonly Act[] = ["off", "offNights", "offAlsoNights", "leaveOff", "offForDay"];
/** Acts that wind may forbid. */
const GOES_ON: readonly Act[] = ["on", "onLifted", "onNights", "onAlsoDays", "onLiftedAlways", "onForNight"];

/** What comes off may be in the way of what goes on. */
const rank = (act: Act): number => (GOES_OFF.includes(act) ? 0 : GOES_ON.includes(act) ? 2 : 1);

/** Pieces a change lays out of one cover, where the farm has more than one to choose from. */
function piecesTold(change: Change | undefined, cover: string, { farm }: Outcome): readonly string[] {
  const owned = farm.pieces.filter((piece) => piece.cover === cover);
  return owned.length < 2
    ? []
    : [...new Set((change?.pieces ?? []).filter((piece) => piece.cover === cover).map(({ id }) => id))];
}

/** What one tunnel asks for at one walk: its change, or the round of its rhythm. */
function tunnelActs(plan: TunnelPlan, walk: Walk, index: number, outcome: Outcome) {
  const change = plan.changes.find((each) => each.walk.index === walk.index);
  const lying = plan.settings[plan.choice[index] ?? -1] ?? plan.now;
  const [from, to] = change === undefined ? [lying, lying] : [change.from, change.to];
  return steps(from, to, walk.part).map(({ cover, name }) => ({
    cover,
    act: ACT[name],
    place: { tunnel: plan.tunnel.id, pieces: piecesTold(change, cover, outcome) },
  }));
}

function covering(walk: Walk, index: number, outcome: Outcome): readonly Instruction[] {
  const all = outcome.tunnels.flatMap((plan) => tunnelActs(plan, walk, index, outcome));
  return [...groupBy(all, ({ act, cover }) => `${act} ${cover}`).values()]
    .map((same): Instruction & { readonly kind: "cover" } => {
      const { act, cover } = same[0]!;
      return { kind: "cover", act, state: ACTS[act], cover, places: same.map(({ place }) => place) };
    })
    .sort((a, b) => rank(a.act) - rank(b.act));
}

const PURPOSE: Readonly<Record<"salad" | "braising" | "small", Readonly<Record<"pick" | "hold", Purpose>>>> =
  {
    salad: { pick: "salad", hold: "coldSalad" },
    braising: { pick: "braising", hold: "coldBraising" },
    small: { pick: "small", hold: "coldSmall" },
  };

function cutting(cut: readonly SuccessionOutlook[]): readonly Instruction[] {
  const told = cut.flatMap(({ succession, fate, atFate }) =>
    fate.kind === "none" || atFate === null
      ? []
      : [
          {
            purpose: PURPOSE[fate.as][fate.kind],
            market: fate.pick.marketDate,
            bed: {
              succession: succession.id,
              crop: succession.crop,
              tunnel: succession.tunnel,
              expected: atFate.weight,
            },
          },
        ],
  );
  return [...groupBy(told, ({ purpose, market }) => `${market} ${purpose}`).values()].map((same) => {
    const { purpose, market } = same[0]!;
    return { kind: "cut", purpose, market, beds: same.map(({ bed }) => bed) };
  });
}

/** Does a caution concern an instruction? */
export function concerns({ kind }: Caution, instruction: Instruction): boolean {
  const ofLeaves = kind === "frozenLeaves" || kind === "wetLeaves" || kind === "snowOnBeds";
  if (instruction.kind === "cut") return ofLeaves;
  return kind === "frozenCloth" || kind === "snowOnCloth" || (!ofLeaves && GOES_ON.includes(instruction.act));
}

function cautions(
  walk: Walk | undefined,
  covers: readonly Instruction[],
  cut: readonly SuccessionOutlook[],
  outcome: Outcome,
): readonly Caution[] {
  const frozen = cut.filter(({ atFate }) => atFate?.frozen);
  const thaws = frozen.map(({ atFate }) => atFate!.thaw);
  const thaw = thaws.includes(null) ? null : (Math.max(...thaws.map(Number)) as Instant);
  const snow = cut.some((outlook) => walkOf(cutAt(outlook, outcome)!, outcome)?.snow);
  const goesOn = covers.some((each) => each.kind === "cover" && GOES_ON.includes(each.act));
  return [
    ...(goesOn && walk !== undefined
      ? [
          walk.tooWindy
            ? { kind: "windExpected" as const, wind: walk.wind }
            : { kind: "windLimit" as const, limit: outcome.farm.limits.wind },
        ]
      : []),
    ...(walk?.frozen && covers.length > 0 ? [{ kind: "frozenCloth" as const }] : []),
    ...(walk?.snow && covers.length > 0 ? [{ kind: "snowOnCloth" as const }] : []),
    ...(snow ? [{ kind: "snowOnBeds" as const }] : []),
    // A card holds no more cautions; that leaves are wet is the least of them.
    ...(cut.some(({ atFate }) => atFate?.wet) && !(snow && frozen.length > 0)
      ? [{ kind: "wetLeaves" as const }]
      : []),
    ...(frozen.length > 0 ? [{ kind: "frozenLeaves" as const, thaw }] : []),
  ];
}

/** When a succession is cut: a frozen one from the hour on at which it has thawed. */
function cutFrom(outlook: SuccessionOutlook, outcome: Outcome): Instant | null {
  const at = cutAt(outlook, outcome);
  const thaw = outlook.atFate?.frozen ? outlook.atFate.thaw : null;
  return at === null || thaw === null || thaw < at ? at : thaw;
}

/** Everything a plan asks of the people who walk the beds, moment by moment; before any of it is worded. */
export function rounds(outcome: Outcome): readonly Round[] {
  const { farm, walks, successions } = outcome;
  const cuts = groupBy(
    successions.filter((outlook) => cutFrom(outlook, outcome) !== null),
    (outlook) => cutFrom(outlook, outcome)!,
  );
  const moments = [...new Set([...walks.map(({ at }) => at), ...cuts.keys()])].sort((a, b) => a - b);
  return moments.flatMap((at): Round[] => {
    const index = walks.findIndex((walk) => walk.at === at);
    const walk = walks[index];
    const cut = cuts.get(at) ?? [];
    const covers = walk === undefined ? [] : covering(walk, index, outcome);
    const instructions = [...cutting(cut), ...covers];
    if (instructions.length === 0) return [];
    return [
      {
        at,
        date: localDate(farm.place.zone, at),
        hour: localHour(farm.place.zone, at),
        part: walk?.part ?? "cutting",
        cautions: cautions(walk, covers, cut, outcome),
        instructions,
      },
    ];
  });
}
