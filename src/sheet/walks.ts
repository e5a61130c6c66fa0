import type { Change, Outcome, SuccessionOutlook, TunnelPlan, Walk } from "../decide/index.ts";
import type { Farm, Piece } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { groupBy, type Instant, type LocalDate, localHour } from "../quantity/index.ts";
import { actions } from "./actions.ts";
import { clean } from "./clean.ts";
import { type Cut, cuts } from "./cuts.ts";
import type { Names } from "./names.ts";
import { reason } from "./reason.ts";
import type { Why } from "./why.ts";
import { clock, day, length, minutes, minutesTogether, wind } from "./words.ts";

/** One round along the beds: what to carry and what to do, in the order of the walk. */
export interface WalkBlock {
  readonly walk: number;
  readonly date: LocalDate;
  readonly part: "morning" | "evening";
  /** On the day of the first walk planned. */
  readonly first: boolean;
  readonly heading: string;
  /** All minutes of the round; null when there are none worth naming. */
  readonly minutes: string | null;
  readonly carry: readonly string[];
  /** The same with the shortest names of cloth. */
  readonly carryShort: readonly string[];
  /** Wind, wet, ice and snow, whole sentences. */
  readonly notes: readonly string[];
  /** What is cut then, before anything else is done. */
  readonly cuts: readonly Cut[];
  /** One a tunnel, in the order of the walk. */
  readonly tasks: readonly Task[];
  /** The rounds among them, tunnels with the same steps together. */
  readonly rounds: readonly {
    readonly names: string;
    readonly actions: readonly string[];
    readonly minutes: string | null;
  }[];
}

export interface Task {
  readonly tunnel: string;
  readonly name: string;
  /** Whole sentences, in the order they are done. */
  readonly actions: readonly string[];
  /** The same with the shortest names of cloth and without the pieces. */
  readonly short: readonly string[];
  /** Pieces laid out, by their names in pieces.csv. */
  readonly use: readonly string[];
  /** Minutes of work. [min] */
  readonly spent: number;
  readonly minutes: string | null;
  /** null for the round of a rhythm. */
  readonly reason: Why | null;
  /** A decision of the plan, or the round of a rhythm. */
  readonly kind: "change" | "round";
}

/** "R1 (50 ft)", or "2 × R1 (50 ft each)". */
function pieceWords(farm: Farm, pieces: readonly Piece[]): string[] {
  const counted = groupBy(pieces, ({ id }) => id);
  return [...counted.values()].map((same) => {
    const { id, length: long } = same[0]!;
    const [name, each] = [clean(id), length(farm.units, long)];
    return same.length === 1 ? `${name} (${each})` : `${same.length} × ${name} (${each} each)`;
  });
}

/** The cloth of every change of one walk, counted by piece. */
function carry(farm: Farm, cloth: Names["cover"], changes: readonly Change[]): string[] {
  const pieces = changes.flatMap((change) => change.pieces);
  return [...groupBy(pieces, ({ cover }) => cover)].map(
    ([cover, same]) => `${cloth(cover)}: ${list(pieceWords(farm, same))}`,
  );
}

/** Minutes of one round of the rhythm on a tunnel, as the change that began it says; null when it lay there before. */
function roundMinutes(plan: TunnelPlan, walk: Walk): number | null {
  const begun = plan.changes.filter((change) => change.walk.index < walk.index).at(-1);
  return begun?.to.some(({ state }) => state === "nights") ? begun.minutesEachWalk : null;
}

function task(plan: TunnelPlan, walk: Walk, at: number, outcome: Outcome, names: Names): Task | null {
  const { farm } = outcome;
  const common = { tunnel: plan.tunnel.id, name: names.tunnel(plan.tunnel.id) };
  const change = plan.changes.find((each) => each.walk.index === walk.index);
  if (change !== undefined) {
    const use = change.pieces.length === 0 ? [] : [`Use ${list(pieceWords(farm, change.pieces))}.`];
    return {
      ...common,
      actions: [...actions(change.from, change.to, walk.part, names.shortCover), ...use],
      short: actions(change.from, change.to, walk.part, names.tightCover),
      use: [...new Set(change.pieces.map(({ id }) => clean(id)))],
      spent: change.minutes,
      minutes: minutes(change.minutes),
      reason: reason(change, plan, outcome, names),
      kind: "change",
    };
  }
  const lying = plan.settings[plan.choice[at] ?? -1] ?? plan.now;
  const steps = actions(lying, lying, walk.part, names.shortCover);
  if (steps.length === 0) return null;
  const spent = roundMinutes(plan, walk);
  return {
    ...common,
    actions: steps,
    short: actions(lying, lying, walk.part, names.tightCover),
    use: [],
    spent: spent ?? 0,
    minutes: spent === null ? null : minutes(spent),
    reason: null,
    kind: "round",
  };
}

const PART: Readonly<Record<Walk["part"], string>> = { morning: "morning", evening: "evening" };

/** Frozen leaves spoil when they are touched. */
function thawFirst(frozen: readonly SuccessionOutlook[], farm: Farm, names: Names): string {
  const who = list(frozen.map(({ succession }) => names.succession(succession.id)));
  const thaws = frozen.flatMap(({ atFate }) => (atFate?.thaw == null ? [] : [atFate.thaw]));
  const when =
    thaws.length === 0
      ? ""
      : `, about ${clock(farm.units, localHour(farm.place.zone, Math.max(...thaws) as Instant))}`;
  return `Leaves of the ${who} may be frozen then: cut and touch them only when they have thawed${when}.`;
}

/** Leaves under row cover that rain has wet. */
function dryFirst(wet: readonly SuccessionOutlook[], names: Names): string {
  const who = list(wet.map(({ succession }) => names.succession(succession.id)));
  return `Rain will have wet row cover and leaves of the ${who}: open early and cut when the leaves have dried.`;
}

/** Every walk of the plan that asks for something, and both walks of the first day whether they do or not. */
export function walks(outcome: Outcome, names: Names): readonly WalkBlock[] {
  const { farm } = outcome;
  const firstDate = outcome.walks[0]?.date;
  return outcome.walks.flatMap((walk, at): WalkBlock[] => {
    const done = outcome.tunnels.flatMap((plan) => task(plan, walk, at, outcome, names) ?? []);
    const cut = cuts(walk, outcome, names);
    if (done.length === 0 && cut.length === 0 && walk.date !== firstDate) return [];
    const changes = outcome.tunnels.flatMap((plan) =>
      plan.changes.filter((change) => change.walk.index === walk.index),
    );
    const gathered = cut.flatMap(({ succession }) =>
      outcome.successions.filter(({ succession: { id } }) => id === succession),
    );
    const frozen = gathered.filter(({ atFate }) => atFate?.frozen);
    const wet = gathered.filter(({ atFate }) => atFate?.wet);
    const cutting = minutes(gathered.reduce((sum, { atFate }) => sum + (atFate?.minutes ?? 0), 0));
    const spent = minutesTogether(done.map(({ spent }) => spent));
    return [
      {
        walk: walk.index,
        date: walk.date,
        part: walk.part,
        first: walk.date === firstDate,
        heading: `${day(farm.units, walk.date)}, ${PART[walk.part]}, ${clock(farm.units, localHour(farm.place.zone, walk.at))}`,
        minutes:
          cutting === null
            ? spent
            : spent === null
              ? `${cutting} of cutting`
              : `${spent} with covers, ${cutting} of cutting`,
        carry: carry(farm, names.cover, changes),
        carryShort: carry(farm, names.tightCover, changes),
        notes: [
          ...(walk.tooWindy ? [`Wind ${wind(farm.units, walk.wind)}: put no cloth on at this walk.`] : []),
          ...(frozen.length > 0 ? [thawFirst(frozen, farm, names)] : []),
          ...(wet.length > 0 ? [dryFirst(wet, names)] : []),
          ...(walk.frozen && done.length > 0
            ? ["Frozen cloth tears: wait until it has thawed before you move it."]
            : []),
          ...(walk.snow && done.length + cut.length > 0
            ? ["Snow may lie: brush it off gently before you open a bed, and drag no cloth from under it."]
            : []),
        ],
        cuts: cut,
        tasks: done,
        rounds: [
          ...groupBy(
            done.filter(({ kind }) => kind === "round"),
            ({ actions }) => actions.join(" "),
          ).values(),
        ].map((same) => ({
          names: list(same.map(({ name }) => name)),
          actions: same[0]!.actions,
          minutes: minutesTogether(same.map(({ spent }) => spent)),
        })),
      },
    ];
  });
}
