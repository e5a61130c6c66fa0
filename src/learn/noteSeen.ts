import type { Crop, Settings } from "../farm/index.ts";
import { type LeafCurve, leafLength, thermalTimeAt } from "../growth/index.ts";
import type { Centimetre } from "../quantity/index.ts";
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

/** How the logarithm of thermal time answers to the logarithm of length at a length. [1] */
function steepness(curve: LeafCurve, thermalTime: number): number {
  const step = Math.max(0.5, thermalTime * 0.01);
  const up = Math.log(leafLength(curve, thermalTime + step));
  const down = Math.log(leafLength(curve, Math.max(0, thermalTime - step)));
  const span = Math.log((thermalTime + step) / Math.max(0.1, thermalTime - step));
  return up > down ? span / (up - down) : 10;
}

/** Standard deviation of the logarithm of a bed's thermal time: what is wrong with its sum, its weather and its beginning. */
function timeError({ thermalTime, guess, begun }: BedThen, requirement: number, settings: Settings): number {
  const { computedStart, seenStart, thermalError } = settings;
  const start = begun === "cut" ? 0 : begun === "seen" ? seenStart : computedStart;
  return Math.hypot(thermalError, guess, (start * requirement) / thermalTime);
}

/** What a note says of the logarithm of a requirement's ratio to the crop's; each takes the curve of that requirement. */
export const leafSeen = (
  bed: BedThen,
  length: Centimetre,
  crop: Crop,
  curve: LeafCurve,
  settings: Settings,
): Seen => {
  // A leaf no longer than the seed leaves says no more than that the bed has just begun.
  const expected = Math.max(1, thermalTimeAt(curve, length));
  return {
    kind: "about",
    value: Math.log(bed.thermalTime / expected),
    error: Math.hypot(
      timeError(bed, thermalTimeAt(curve, crop.smallest), settings),
      settings.leafError * steepness(curve, expected),
    ),
  };
};

/** A bed cut for salad was somewhere in its window, as its grower judged. */
export const cutSeen = (bed: BedThen, crop: Crop, curve: LeafCurve, settings: Settings): Seen => {
  const [first, last] = [thermalTimeAt(curve, crop.smallest), thermalTimeAt(curve, crop.largest)];
  // Anywhere in the window alike: the variance of a uniform distribution is a twelfth of its width squared.
  const anywhere = Math.log(last / first) / Math.sqrt(12);
  return {
    kind: "about",
    value: Math.log(bed.thermalTime / Math.sqrt(first * last)),
    error: Math.hypot(timeError(bed, first, settings), anywhere, settings.eyeError),
  };
};

/** A bed seen not to be ready has its smallest salad size still to come. */
export const notReadySeen = (bed: BedThen, crop: Crop, curve: LeafCurve, settings: Settings): Seen => {
  const first = thermalTimeAt(curve, crop.smallest);
  return {
    kind: "above",
    value: Math.log(bed.thermalTime / first),
    error: Math.hypot(timeError(bed, first, settings), settings.eyeError),
  };
};
