import type { Climate } from "../cover/index.ts";
import type { Crop, Note, Succession } from "../farm/index.ts";
import { accumulate, between, emergence, type LeafCurve, type Sums } from "../growth/index.ts";
import { type Belief, beliefOf } from "../learn/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { asHardened, livedBefore } from "../watch/index.ts";
import { guessOf } from "./guess.ts";
import { hourAt } from "./horizon.ts";
import { type LastLeaf, lastLeafDraws } from "./lastLeaf.ts";
import { type MemberCourse, memberCourse, type NotUp, requirementDraws } from "./memberCourse.ts";
import { priceOf } from "./price.ts";
import type { Scene } from "./scene.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import { type Value, values } from "./value.ts";

/** Where one succession stands at the moment planned from. */
export interface Standing {
  readonly succession: Succession;
  /** As it has hardened under what lay on it up to now. */
  readonly crop: Crop;
  /** It grows again after its next cut: that is not the last its crop usually gives. */
  readonly regrows: boolean;
  /** null: finished, or its last cut is not dated, or it does not emerge within the time looked at. */
  readonly growing: Growing | null;
  readonly finished: boolean;
  readonly emergence: { readonly at: Instant; readonly seen: boolean } | null;
  /** Notes about what stands that everything else contradicts. */
  readonly surprises: readonly Note[];
}

/** What growth from now on is computed with. */
export interface Growing {
  /** Hour of emergence, or of the last cut. */
  readonly origin: number;
  /** Thermal time corrected for light, from the origin to the moment planned from, with the head start measured leaves give. [°C·d] */
  readonly thermalTime: number;
  /** What it would be had no shade cloth lain: shade delays the leaf, but no bolting. [°C·d] */
  readonly unshadedTime: number;
  /** Light since the origin. [mol/m²] */
  readonly light: number;
  /** To the smallest salad size as the catalogue has it, shortened after a cut. [°C·d] */
  readonly requirement: number;
  readonly curve: LeafCurve;
  readonly belief: Belief;
  /** Share of the time it grew that is guessed, without a log and without a leaf since. [0–1] */
  readonly guessed: number;
  /** Sums from the weather's beginning if nothing is changed. */
  readonly unchanged: Sums;
  /** What lies ahead in every member if nothing is changed, and the requirements drawn with the members, relative to `requirement`. */
  readonly ahead: MemberCourse;
  readonly requirements: Float64Array;
  /** null: no leaf was measured since emergence or the last cut. */
  readonly leaf: LastLeaf | null;
  /** What each member has to bring up first; null: up, or told when. */
  readonly notUp: NotUp | null;
  /** Share of the bed still there. [0–1] */
  readonly share: number;
  /** Worth of the whole bed at the middle of the window, at full price and in full light. */
  readonly whole: number;
  /** What it brings over a spread of thermal time over requirement, worked out once for each. */
  worthOver(spread: number): Value;
}

/** A bed that has been cut, nobody knows when: it stands, and how large it is cannot be said. */
export const isUndated = ({ succession, growing, finished }: Standing): boolean =>
  growing === null && !finished && succession.cuts > 0;

/** Where a succession stands, from sowing, weather, covers and notes. */
export function standing(
  scene: Scene,
  succession: Succession,
  { tunnel, now, unchanged, unshaded }: TunnelNow,
): Standing {
  const { farm, weather, horizon, settings } = scene;
  const lived = livedBefore(unchanged.growing, Math.max(1, horizon.now));
  const crop = asHardened(farm.crops.get(succession.crop)!, lived, settings);
  const { grown, estimates } = scene.learned.successions.get(succession.id)!;
  const { notes, cuts, sown, sums, parts } = grown;
  const finished = cuts.some((note) => note.last);
  const regrows = Math.max(succession.cuts, cuts.length) + 1 < crop.cuts;
  const [part, estimate] = [parts.at(-1), estimates.at(-1)];
  const undated = succession.cuts > 0 && cuts.length === 0;
  const surprises = finished
    ? []
    : parts.flatMap(({ told }, i) =>
        told.flatMap(({ note }, k) => (estimates[i]!.weighed[k]!.surprising ? [note] : [])),
      );
  const common = { succession, crop, regrows, finished, emergence: grown.emergence, surprises };
  if (finished || part === undefined || estimate === undefined || undated)
    return { ...common, growing: null };

  const { origin, counted, requirement, curve } = part;
  const leaves = part.told.flatMap((told, i) =>
    told.note.kind === "leaf"
      ? [{ ...told, hour: hourAt(weather, told.note.at), fate: estimate.weighed[i]! }]
      : [],
  );
  const last = leaves.at(-1);
  const guess = guessOf(weather, counted, last?.hour ?? counted, horizon.now, settings);
  const leaf =
    last === undefined
      ? null
      : { thermalTime: last.counted, grown: last.weighed * Math.exp(-last.fate.taken) };
  const share = notes.reduce((left, note) => (note.kind === "loss" ? left * (1 - note.share) : left), 1);
  const belief = beliefOf(estimate, leaf, guess.spread, leaves.length);
  const sofar = (all: Sums, begin: number): number =>
    Math.max(0, between(all.pace, all.from, begin, horizon.now) + belief.head);
  const thermalTime = sofar(sums, origin);
  const known = part.regrowth || grown.told;
  const bright = (open: Climate): number => {
    const early = emergence(open.seedbed.subarray(sown), crop.emergence);
    const begin = known || early === null ? origin : sown + early;
    return sofar(accumulate(crop, open, horizon.mornings, settings), begin);
  };
  const length = Math.abs(succession.to - succession.from);
  const whole = priceOf(farm, crop.id, settings) * crop.yield * length * share;
  const requirements = requirementDraws(scene, succession.id, belief);
  const guesses = { before: last === undefined ? 0 : last.guess, since: guess.spread };
  const lastSeen =
    last === undefined
      ? null
      : lastLeafDraws(curve, belief, last.counted, guesses, requirements, succession.id, settings);
  const most = ((crop.growth.optimumLow - crop.growth.base) * (horizon.lookout - horizon.now)) / 24;
  const comesUp = !known && origin > horizon.now;
  const notUp = comesUp ? { sown, seedbed: unchanged.seedbed } : null;
  return {
    ...common,
    growing: {
      origin,
      thermalTime,
      unshadedTime: unshaded === null ? thermalTime : Math.max(thermalTime, bright(unshaded)),
      light: between(sums.light, sums.from, origin, horizon.now),
      requirement,
      curve,
      belief,
      guessed: guess.share,
      unchanged: sums,
      ahead: memberCourse(scene, tunnel.id, crop, origin, notUp, () => now),
      requirements,
      leaf: lastSeen,
      notUp,
      share,
      whole,
      worthOver: values(whole, curve, crop, belief.shift, [thermalTime, thermalTime + most], settings),
    },
  };
}

const SURPRISES = {
  leaf: "a leaf far longer or shorter",
  cut: "a cut long before or after it",
  "not ready": "not ready long after it",
} as const;

/** Notes that everything else contradicts: they count the less the further off they lie, and the grower is told. */
export function leafSurprises(standings: readonly Standing[]): readonly Problem[] {
  return standings.flatMap(({ succession, surprises }) =>
    surprises.map(({ kind, line }): Problem => {
      const received = SURPRISES[kind as keyof typeof SURPRISES];
      return {
        code: "leaf-surprises",
        weight: "needsYou",
        file: "notes.csv",
        line,
        column: "value",
        expected: `${succession.id} nearer to what its sowing date and the weather make of it`,
        received,
        hint: "Check its sowing date, its covers and the unit. So far off it counts little; another note that agrees makes it count.",
      };
    }),
  );
}
