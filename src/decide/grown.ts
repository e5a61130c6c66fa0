import type { Climate } from "../cover/index.ts";
import { type Crop, type Farm, median, type Note, type Succession } from "../farm/index.ts";
import { accumulate, between, emergence, type LeafCurve, leafCurve, type Sums } from "../growth/index.ts";
import { type BedThen, cutSeen, leafSeen, notReadySeen, type Seen } from "../learn/index.ts";
import {
  type Centimetre,
  degreeDays,
  type Instant,
  instantAt,
  startOf,
  type UtcHour,
} from "../quantity/index.ts";
import { guessOf } from "./guess.ts";
import { hourAt } from "./horizon.ts";
import type { Scene } from "./scene.ts";

/** A note that says something of a requirement. */
export interface Told {
  readonly note: Note;
  readonly seen: Seen;
  /** Thermal time counted to it, and that it is weighed with; more than none. [°C·d] */
  readonly counted: number;
  readonly weighed: number;
  /** Relative spread that days without a log give it. [1] */
  readonly guess: number;
}

/** From emergence, or a cut, to the next cut or now. */
export interface GrownPart {
  /** Hour of emergence, or of the cut before. */
  readonly origin: number;
  /** Hour from which days without a log count as guessed: the sowing, where nobody saw it emerge. */
  readonly counted: number;
  readonly regrowth: boolean;
  /** To the smallest salad size as the catalogue has it. [°C·d] */
  readonly requirement: number;
  readonly curve: LeafCurve;
  readonly told: readonly Told[];
}

/** What a succession has grown, and what was noted of it, up to the moment planned from. */
export interface Grown {
  readonly succession: Succession;
  readonly notes: readonly Note[];
  readonly cuts: readonly Extract<Note, { readonly kind: "cut" }>[];
  /** Hour it was sown. */
  readonly sown: number;
  readonly emergence: { readonly at: Instant; readonly seen: boolean } | null;
  /** Its emergence was seen, or a leaf shows that it is up, however cold the days are taken to have been. */
  readonly told: boolean;
  readonly sums: Sums;
  /** Oldest first; none: it does not come up within the time looked at. */
  readonly parts: readonly GrownPart[];
}

/** What is needed of the stage. */
export type Stage = Pick<Scene, "farm" | "weather" | "horizon" | "settings">;

/** Notes about one succession up to the moment planned from, in order of time. */
function notesOf(farm: Farm, succession: Succession, on: Instant): readonly Note[] {
  return farm.notes
    .filter((note) => "succession" in note && note.succession === succession.id && note.at <= on)
    .sort((a, b) => a.at - b.at);
}

/** A last cut without a weight clears the bed: nothing says that it was salad. */
const saysSize = (note: Note): boolean => note.kind !== "cut" || note.weight !== null || !note.last;

/** @param climate - Under what lay on its tunnel, from the weather's beginning on. */
export function grownOf(
  { farm, weather, horizon, settings }: Stage,
  succession: Succession,
  climate: Climate,
): Grown {
  const crop = farm.crops.get(succession.crop)!;
  const notes = notesOf(farm, succession, horizon.on);
  const cuts = notes.filter((note) => note.kind === "cut");
  const sown = Math.max(0, hourAt(weather, instantAt(farm.place.zone, succession.sown, 12)));
  const seen = notes.find((note) => note.kind === "emerged");
  const computed = emergence(climate.seedbed.subarray(sown), crop.emergence);
  const expected = seen !== undefined ? hourAt(weather, seen.at) : computed === null ? null : sown + computed;
  const firstCut = cuts[0]?.at ?? Number.POSITIVE_INFINITY;
  // Where a leaf was measured, the bed is up, however cold the days are taken to have been.
  const leaf = notes.find((note) => note.kind === "leaf" && note.at < firstCut);
  const firstLeaf = leaf === undefined ? null : hourAt(weather, leaf.at);
  const early = firstLeaf !== null && (expected === null || firstLeaf < expected);
  const emerged = early ? firstLeaf : expected;
  const sums = accumulate(crop, climate, horizon.mornings, settings);
  const told = seen !== undefined || early;
  const common = { succession, notes, cuts, sown, told, sums };
  if (emerged === null) return { ...common, emergence: null, parts: [] };
  const at = early || seen === undefined ? startOf((weather.first + emerged) as UtcHour) : seen.at;

  const part = (begun: Note | undefined, end: Note | undefined): GrownPart => {
    const origin = begun === undefined ? emerged : hourAt(weather, begun.at);
    const requirement = crop.requirement * (begun === undefined ? 1 : crop.regrowth);
    const curve = leafCurve(crop, degreeDays(requirement), settings);
    const counted = begun === undefined && seen === undefined ? sown : origin;
    const here = notes.filter(
      (note) => (begun === undefined || note.at > begun.at) && (end === undefined || note.at <= end.at),
    );
    return {
      origin,
      counted,
      regrowth: begun !== undefined,
      requirement,
      curve,
      told: here.flatMap((note): readonly Told[] => {
        const hour = hourAt(weather, note.at);
        const grown = between(sums.pace, sums.from, origin, hour);
        // Before the model has anything grow, no more can have grown than since sowing.
        const weighed = grown > 0 ? grown : Math.max(1, between(sums.pace, sums.from, counted, hour));
        const bed: BedThen = {
          thermalTime: weighed,
          guess: guessOf(weather, counted, counted, hour, settings).spread,
          begun: begun !== undefined ? "cut" : seen !== undefined ? "seen" : "computed",
        };
        const said = seenIn(note, bed, crop, curve, settings);
        return said === null ? [] : [{ note, seen: said, counted: grown, weighed, guess: bed.guess }];
      }),
    };
  };
  // Of a bed cut before its first note of a cut, what stood at that cut is not known.
  const dated = succession.cuts <= cuts.length;
  const bounds = [undefined, ...cuts];
  return {
    ...common,
    emergence: { at, seen: seen !== undefined },
    parts: bounds.map((begun, i) => part(begun, bounds[i + 1])).filter((_, i) => i > 0 || dated),
  };
}

function seenIn(
  note: Note,
  bed: BedThen,
  crop: Crop,
  curve: LeafCurve,
  settings: Stage["settings"],
): Seen | null {
  if (!saysSize(note)) return null;
  switch (note.kind) {
    case "leaf":
      return leafSeen(bed, median(note.lengths) as Centimetre, crop, curve, settings);
    case "cut":
      return cutSeen(bed, crop, curve, settings);
    case "not ready":
      return notReadySeen(bed, crop, curve, settings);
    default:
      return null;
  }
}
