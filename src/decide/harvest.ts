import type { Crop, Settings } from "../farm/index.ts";
import { type LeafCurve, leafLength, relativeWeight } from "../growth/index.ts";
import { normalQuantile } from "../learn/index.ts";

/** Equally likely values that stand for a spread. */
export const NODES = 15;

/** Step of the logarithm of thermal time at which a harvest is worked out; straight lines between. [1] */
export const STEP = 0.005;

/** Thermal time over requirement from which on, and up to which, a harvest is worked out. [1] */
export const LEAST = 0.2;
export const MOST = 5;

/** Share of the price that a leaf of this length earns. [0–1] */
export function priceShare(length: number, crop: Crop, settings: Settings): number {
  if (length > crop.largest)
    return length <= crop.largest * settings.braisingMost ? settings.shareBraising : 0;
  if (length >= crop.smallest) return 1;
  const none = crop.smallest * settings.nothingBelow;
  return length <= none ? 0 : (settings.shareJustBelow * (length - none)) / (crop.smallest - none);
}

/**
 * What a bed would bring by thermal time, expected over a spread of it; relative to its weight at the middle of the window in
 * full light. Rows by the logarithm of thermal time, from `first` on in steps of `STEP`.
 */
export interface Harvest {
  /** Logarithm of the first row's thermal time. [ln °C·d] */
  readonly first: number;
  /** Salad size. [1] */
  readonly salad: Float64Array;
  /** Of other sizes, by the share of the price they earn. [1] */
  readonly other: Float64Array;
  /** All that is cut to be sold. [1] */
  readonly cut: Float64Array;
}

/**
 * @param requirement - Thermal time of the smallest salad size on the curve. [°C·d]
 * @param spread - Standard deviation of the logarithm of thermal time over requirement. [1]
 */
export function harvestOf(
  curve: LeafCurve,
  crop: Crop,
  requirement: number,
  spread: number,
  settings: Settings,
): Harvest {
  const first = Math.log(requirement * LEAST);
  const rows = Math.ceil(Math.log(MOST / LEAST) / STEP) + 1;
  const sure = { salad: new Float64Array(rows), other: new Float64Array(rows), cut: new Float64Array(rows) };
  const smallest = crop.smallest * settings.nothingBelow;
  let tooSmall = 0;
  for (let i = 0; i < rows; i++) {
    const length = leafLength(curve, Math.exp(first + i * STEP));
    if (length <= smallest) tooSmall = i + 1;
    const share = priceShare(length, crop, settings);
    if (share === 0) continue;
    const weight = relativeWeight(length, crop, settings);
    sure.cut[i] = weight;
    if (share === 1) sure.salad[i] = weight;
    else sure.other[i] = share * weight;
  }
  const moved = Array.from({ length: NODES }, (_, k) =>
    Math.round((spread * normalQuantile((k + 0.5) / NODES)) / STEP),
  );
  /** What is likeliest below half the smallest size is not cut. */
  const expected = (row: Float64Array): Float64Array =>
    row.map((_, i) =>
      i < tooSmall
        ? 0
        : moved.reduce((sum, by) => sum + row[Math.min(rows - 1, Math.max(0, i - by))]!, 0) / NODES,
    );
  return { first, salad: expected(sure.salad), other: expected(sure.other), cut: expected(sure.cut) };
}

/** A row of a harvest read at a place, in straight lines between. @param place - In steps from the first row. */
export function readAt(row: Float64Array, place: number): number {
  if (place <= 0) return row[0]!;
  const last = row.length - 1;
  if (place >= last) return row[last]!;
  const i = Math.floor(place);
  return row[i]! + (place - i) * (row[i + 1]! - row[i]!);
}

/** Harvests of one curve by their spread, each worked out once, when asked. Parameters are those of `harvestOf`. */
export function harvests(
  curve: LeafCurve,
  crop: Crop,
  requirement: number,
  settings: Settings,
): (spread: number) => Harvest {
  const known = new Map<number, Harvest>();
  return (spread) => {
    const before = known.get(spread);
    if (before !== undefined) return before;
    const made = harvestOf(curve, crop, requirement, spread, settings);
    known.set(spread, made);
    return made;
  };
}
