import type { Climate } from "../cover/index.ts";
import { type Crop, type Farm, median, type Note, type Succession } from "../farm/index.ts";
import { accumulate, between, emergence, type LeafCurve, leafCurve, type Sums } from "../growth/index.ts";
import { type Belief, learnFromLeaves } from "../learn/index.ts";
import type { Problem } from "../problem/index.ts";
import {
  type Centimetre,
  degreeDays,
  type Instant,
  instantAt,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import { asHardened, livedBefore } from "../watch/index.ts";
import { guessOf } from "./guess.ts";
import { type Harvest, harvests } from "./harvest.ts";
import { hourAt } from "./horizon.ts";
import { type LastLeaf, lastLeafDraws } from "./lastLeaf.ts";
import { type MemberCourse, memberCourse, type NotUp, requirementDraws } from "./memberCourse.ts";
import type { Scene } from "./scene.ts";
import type { TunnelNow } from "./tunnelNow.ts";

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
  /** Weight of the whole bed at the middle of the window in full light. [kg] */
  readonly mass: number;
  /** What it brings over a spread of thermal time over requirement, worked out once for each. */
  harvestOver(spread: number): Harvest;
}

/** A bed that has been cut, nobody knows when: it stands, and how large it is cannot be said. */
export const isUndated = ({ succession, growing, finished }: Standing): boolean =>
  growing === null && !finished && succession.cuts > 0;

/** Notes about one succession up to the moment planned from, in order of time. */
function notesOf(farm: Farm, succession: Succession, on: Instant): readonly Note[] {
  return farm.notes
    .filter((note) => "succession" in note && note.succession === succession.id && note.at <= on)
    .sort((a, b) => a.at - b.at);
}

/** Where a succession stands, from sowing, weather, covers and notes. */
export function standing(
  scene: Scene,
  succession: Succession,
  { tunnel, now, unchanged, unshaded }: TunnelNow,
): Standing {
  const { farm, weather, horizon, settings } = scene;
  const lived = livedBefore(unchanged.growing, Math.max(1, horizon.now));
  const crop = asHardened(farm.crops.get(succession.crop)!, lived, settings);
  const notes = notesOf(farm, succession, horizon.on);
  const cuts = notes.filter((note) => note.kind === "cut");
  const finished = cuts.some((note) => note.last);
  const regrows = Math.max(succession.cuts, cuts.length) + 1 < crop.cuts;
  const sown = Math.max(0, hourAt(weather, instantAt(farm.place.zone, succession.sown, 12)));
  const seen = notes.find((note) => note.kind === "emerged");
  const computed = emergence(unchanged.seedbed.subarray(sown), crop.emergence);
  const expected = seen !== undefined ? hourAt(weather, seen.at) : computed === null ? null : sown + computed;
  const cut = cuts[cuts.length - 1];
  const measured = notes.filter((note) => note.kind === "leaf" && (cut === undefined || note.at > cut.at));
  // Where a leaf was measured, the bed is up, however cold the days are taken to have been.
  const firstLeaf = cut === undefined && measured[0] !== undefined ? hourAt(weather, measured[0].at) : null;
  const early = firstLeaf !== null && (expected === null || firstLeaf < expected);
  const emerged = early ? firstLeaf : expected;
  const up =
    emerged === null
      ? null
      : {
          at: early || seen === undefined ? startOf((weather.first + emerged) as UtcHour) : seen.at,
          seen: seen !== undefined,
        };
  if (finished || emerged === null || (succession.cuts > 0 && cut === undefined)) {
    return { succession, crop, regrows, growing: null, finished, emergence: up };
  }

  const origin = cut === undefined ? emerged : hourAt(weather, cut.at);
  const requirement = crop.requirement * (cut === undefined ? 1 : crop.regrowth);
  const curve = leafCurve(crop, degreeDays(requirement), settings);
  const sums = accumulate(crop, unchanged, horizon.mornings, settings);
  const until = (hour: number): number => between(sums.pace, sums.from, origin, hour);
  // What grew in days without a log is guessed, the days before emergence included where nobody saw it.
  const counted = cut === undefined && seen === undefined ? sown : origin;
  const leaves = measured.map((note) => {
    const hour = hourAt(weather, note.at);
    return {
      thermalTime: until(hour),
      guess: guessOf(weather, counted, counted, hour, settings).spread,
      length: (note.kind === "leaf" ? median(note.lengths) : 0) as Centimetre,
    };
  });
  const last = measured.at(-1);
  const lastLeaf = last === undefined ? counted : hourAt(weather, last.at);
  const guess = guessOf(weather, counted, lastLeaf, horizon.now, settings);
  const spread = crop.requirementSpread * (cut === undefined ? 1 : settings.regrowthSpread);
  const share = notes.reduce((left, note) => (note.kind === "loss" ? left * (1 - note.share) : left), 1);
  const belief = learnFromLeaves(spread, guess.spread, curve, leaves, settings);
  const sofar = (all: Sums, begin: number): number =>
    Math.max(0, between(all.pace, all.from, begin, horizon.now) + belief.head);
  const thermalTime = sofar(sums, origin);
  const bright = (open: Climate): number => {
    const early = emergence(open.seedbed.subarray(sown), crop.emergence);
    const begin = cut !== undefined || seen !== undefined || early === null ? origin : sown + early;
    return sofar(accumulate(crop, open, horizon.mornings, settings), begin);
  };
  const length = Math.abs(succession.to - succession.from);
  const requirements = requirementDraws(scene, succession.id, belief);
  const lastSeen = leaves.at(-1);
  const guesses = { before: lastSeen?.guess ?? 0, since: guess.spread };
  const leaf =
    lastSeen === undefined
      ? null
      : lastLeafDraws(curve, belief, lastSeen.thermalTime, guesses, requirements, succession.id, settings);
  const comesUp = cut === undefined && seen === undefined && !early && origin > horizon.now;
  const notUp = comesUp ? { sown, seedbed: unchanged.seedbed } : null;
  return {
    succession,
    crop,
    regrows,
    finished,
    emergence: up,
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
      leaf,
      notUp,
      share,
      mass: crop.yield * length * share,
      harvestOver: harvests(curve, crop, requirement, settings),
    },
  };
}

/** Leaves measured far from what sowing, weather and covers let expect: the plan goes by the leaf, the grower is told. */
export function leafSurprises(standings: readonly Standing[]): readonly Problem[] {
  return standings
    .filter(({ growing }) => growing?.belief.surprising)
    .map(
      ({ succession }): Problem => ({
        code: "leaf-surprises",
        weight: "needsYou",
        file: "notes.csv",
        line: null,
        column: "leaf",
        expected: `leaves of ${succession.id} nearer to what its sowing date and the weather make of it`,
        received: "a leaf far longer or shorter",
        hint: "Check its sowing date, its covers and the unit. The plan goes by your leaf.",
      }),
    );
}
