import type { Crop, Settings } from "../farm/index.ts";
import { type LeafCurve, leafLength, relativeWeight } from "../growth/index.ts";
import { normalQuantile } from "../learn/index.ts";

/** Equally likely values that stand for the spread of a requirement. */
const NODES = 15;

/** Share of the price that a leaf of this length earns. [0–1] */
export function priceShare(length: number, crop: Crop, settings: Settings): number {
  if (length > crop.largest)
    return length <= crop.largest * settings.braisingMost ? settings.shareBraising : 0;
  if (length >= crop.smallest) return 1;
  const none = crop.smallest * settings.nothingBelow;
  return length <= none ? 0 : (settings.shareJustBelow * (length - none)) / (crop.smallest - none);
}

/** The highest share any length from `a` to `b` earns. */
function highestShare(a: number, b: number, crop: Crop, settings: Settings): number {
  if (b >= crop.smallest && a <= crop.largest) return 1;
  return Math.max(priceShare(a, crop, settings), priceShare(b, crop, settings));
}

/** What a succession would bring at a thermal time, before light and losses, expected over the spread of its requirement. */
export interface Value {
  /** @param thermalTime - Since emergence, as the crop's own requirement counts it. [°C·d] */
  at(thermalTime: number): number;
  /** Never less than any `at` between two thermal times. */
  atMost(from: number, to: number): number;
}

/** Width of the cells in which `atMost` looks up. [°C·d] */
const CELL = 3;

/**
 * @param whole - Worth of the whole bed at the middle of the window at full price.
 * @param shift - Logarithm of this succession's requirement relative to the crop's. [1]
 * @param spread - Its standard deviation. [1]
 * @param from - Least thermal time ever asked for. [°C·d]
 * @param to - Greatest. [°C·d]
 */
export function expectedValue(
  whole: number,
  curve: LeafCurve,
  crop: Crop,
  belief: { readonly shift: number; readonly spread: number },
  [from, to]: readonly [number, number],
  settings: Settings,
): Value {
  const scales = Array.from({ length: NODES }, (_, k) =>
    Math.exp(-(belief.shift + belief.spread * normalQuantile((k + 0.5) / NODES))),
  );
  const leastLength = crop.smallest * settings.nothingBelow;
  const at = (thermalTime: number): number => {
    if (leafLength(curve, thermalTime * Math.exp(-belief.shift)) <= leastLength) return 0;
    let sum = 0;
    for (const scale of scales) {
      const length = leafLength(curve, thermalTime * scale);
      const share = priceShare(length, crop, settings);
      if (share > 0) sum += share * relativeWeight(length, crop, settings);
    }
    return (whole * sum) / NODES;
  };
  const cells = Math.max(1, Math.ceil((to - from) / CELL) + 1);
  const highest = new Float64Array(cells);
  for (const scale of scales) {
    let left = leafLength(curve, from * scale);
    for (let c = 0; c < cells; c++) {
      const right = leafLength(curve, (from + (c + 1) * CELL) * scale);
      const heaviest =
        left > crop.largest ? 1 : relativeWeight(Math.min(right, crop.largest), crop, settings);
      highest[c]! += (whole / NODES) * highestShare(left, right, crop, settings) * heaviest;
      left = right;
    }
  }
  const ladder = rangeMaximum(highest);
  const cellOf = (thermalTime: number): number =>
    Math.min(cells - 1, Math.max(0, Math.floor((thermalTime - from) / CELL)));
  return { at, atMost: (a, b) => ladder(cellOf(a), cellOf(b)) };
}

/** Expected values of one succession by their spread, each worked out once, when asked. Parameters are those of `expectedValue`. */
export function values(
  whole: number,
  curve: LeafCurve,
  crop: Crop,
  shift: number,
  range: readonly [number, number],
  settings: Settings,
): (spread: number) => Value {
  const known = new Map<number, Value>();
  return (spread) => {
    const before = known.get(spread);
    if (before !== undefined) return before;
    const made = expectedValue(whole, curve, crop, { shift, spread }, range, settings);
    known.set(spread, made);
    return made;
  };
}

/** Highest value of any run of cells in constant time. */
function rangeMaximum(values: Float64Array): (from: number, to: number) => number {
  const rows = [values];
  for (let step = 1; step * 2 <= values.length; step *= 2) {
    const last = rows[rows.length - 1]!;
    const row = new Float64Array(values.length - 2 * step + 1);
    for (let i = 0; i < row.length; i++) row[i] = Math.max(last[i]!, last[i + step]!);
    rows.push(row);
  }
  return (from, to) => {
    const level = 31 - Math.clz32(to - from + 1);
    const row = rows[level]!;
    return Math.max(row[from]!, row[to - (1 << level) + 1]!);
  };
}
