import type { Crop, Settings } from "../farm/index.ts";
import { type LeafCurve, thermalTimeAt } from "../growth/index.ts";
import { type Centimetre, centimetre } from "../quantity/index.ts";
import type { Seen } from "./seen.ts";

/** A bed at the moment of a note. */
export interface BedThen {
  /** Thermal time since its beginning, as the model has it; never 0. [°C·d] */
  readonly thermalTime: number;
  /** Relative spread that days without a log give it. [1] */
  readonly guess: number;
  /** How well its beginning is known: a cut to the hour, an emergence seen, or one computed. */
  readonly begun: "cut" | "seen" | "computed";
}

/** Thermal time a leaf stands for. One no longer than the seed leaves says no more than that the bed has just begun. [°C·d] */
const timeOf = (curve: LeafCurve, length: number): number =>
  Math.max(1, thermalTimeAt(curve, centimetre(length)));

/**
 * Standard deviation of the logarithm of a bed's thermal time: what is wrong with its sum, its weather and its beginning. All
 * of it is of what the bed has truly grown, which may be far more than the model had it grow.
 *
 * @param grown - What the note says it has grown. [°C·d]
 */
function timeError(
  { thermalTime, guess, begun }: BedThen,
  grown: number,
  requirement: number,
  settings: Settings,
): number {
  const { computedStart, seenStart, thermalError } = settings;
  const start = begun === "cut" ? 0 : begun === "seen" ? seenStart : computedStart;
  const more = Math.max(1, grown / thermalTime);
  return Math.hypot(thermalError * more, guess * more, (start * requirement) / thermalTime);
}

/** What a note says of the logarithm of a requirement's ratio to the crop's; each takes the curve of that requirement. */
export const leafSeen = (
  bed: BedThen,
  length: Centimetre,
  crop: Crop,
  curve: LeafCurve,
  settings: Settings,
): Seen => {
  const expected = timeOf(curve, length);
  // Looked at from the side of what was expected: a leaf as long as leaves become may be of any age, but not of a young bed.
  const side = bed.thermalTime < expected ? -1 : 1;
  const other = timeOf(curve, length * Math.exp(side * settings.leafError));
  return {
    kind: "about",
    value: Math.log(bed.thermalTime / expected),
    error: Math.hypot(
      timeError(bed, expected, thermalTimeAt(curve, crop.smallest), settings),
      Math.max(settings.thermalError, Math.abs(Math.log(expected / other))),
    ),
  };
};

/** A bed cut for salad was somewhere in its window, as its grower judged. */
export const cutSeen = (bed: BedThen, crop: Crop, curve: LeafCurve, settings: Settings): Seen => {
  const [first, last] = [thermalTimeAt(curve, crop.smallest), thermalTimeAt(curve, crop.largest)];
  // As wide as anywhere in the window alike: the variance of a uniform distribution is a twelfth of its width squared.
  const anywhere = Math.log(last / first) / Math.sqrt(12);
  const usual = first + settings.cutPlace * (last - first);
  return {
    kind: "about",
    value: Math.log(bed.thermalTime / usual),
    error: Math.hypot(timeError(bed, usual, first, settings), anywhere, settings.eyeError),
  };
};

/** A bed seen not to be ready has its smallest salad size still to come. */
export const notReadySeen = (bed: BedThen, crop: Crop, curve: LeafCurve, settings: Settings): Seen => {
  const first = thermalTimeAt(curve, crop.smallest);
  return {
    kind: "above",
    value: Math.log(bed.thermalTime / first),
    // It has grown no more than that: what the model had it grow too little is no doubt of this note.
    error: Math.hypot(timeError(bed, bed.thermalTime, first, settings), settings.eyeError),
  };
};
