import { probit } from "simple-statistics";
import type { Answer } from "./answer.ts";

/** Leaf length at a thermal time over requirement. [cm] */
export const lengthAt = ({ curve }: Answer, thermalTime: number): number =>
  curve.startCm +
  (curve.endCm - curve.startCm) / (1 + Math.exp(-curve.ratePerCd * (thermalTime - curve.middleCd)));

/** Thermal time at a leaf length. [°C·d] */
const thermalTimeAt = ({ curve }: Answer, length: number): number =>
  curve.middleCd - Math.log((curve.endCm - curve.startCm) / (length - curve.startCm) - 1) / curve.ratePerCd;

function priceShare(settings: Answer, crop: Answer, length: number): number {
  if (length > crop.largestCm * settings.braisingMost) return 0;
  if (length > crop.largestCm) return settings.shareBraising;
  if (length >= crop.smallestCm) return 1;
  const none = crop.smallestCm * settings.nothingBelow;
  return length <= none ? 0 : (settings.shareJustBelow * (length - none)) / (crop.smallestCm - none);
}

/** Relative to its weight at the middle of the window in full light: salad size, other sizes by their share of the price, all. */
export interface Brought {
  readonly salad: number;
  readonly other: number;
  readonly cut: number;
}

/** What a bed brings at a place on the grid of the logarithm of thermal time, over a spread. */
export type Harvest = (place: number) => Brought;

/** @returns The harvest, and the place of a thermal time over requirement. */
export function harvestOf(
  { settings, harvest: grid }: Answer,
  crop: Answer,
  basis: Answer,
  spread: number,
): { readonly harvest: Harvest; readonly placeOf: (thermalTime: number) => number } {
  const first = Math.log(thermalTimeAt(basis, crop.smallestCm) * grid.least);
  const rows = Math.ceil(Math.log(grid.most / grid.least) / grid.step) + 1;
  const lengthOf = (row: number): number => lengthAt(basis, Math.exp(first + row * grid.step));
  const sure = Array.from({ length: rows }, (_, row): Brought => {
    const length = lengthOf(row);
    const share = priceShare(settings, crop, length);
    const middle = (crop.smallestCm + crop.largestCm) / 2;
    const heavy = length > crop.largestCm ? 1 : (length / middle) ** settings.weightExponent;
    return {
      salad: share === 1 ? heavy : 0,
      other: share === 1 ? 0 : share * heavy,
      cut: share > 0 ? heavy : 0,
    };
  });
  const steps = Array.from({ length: grid.nodes }, (_, k) =>
    Math.round((spread * probit((k + 0.5) / grid.nodes)) / grid.step),
  );
  const least = crop.smallestCm * settings.nothingBelow;
  const rowAt = (row: number, part: keyof Brought): number =>
    lengthOf(row) <= least
      ? 0
      : steps.reduce(
          (sum, by) => sum + sure[Math.min(rows - 1, Math.max(0, row - by))]![part] / grid.nodes,
          0,
        );
  return {
    placeOf: (thermalTime) => (Math.log(Math.max(1e-9, thermalTime)) - first) / grid.step,
    harvest(place) {
      const within = Math.min(rows - 1, Math.max(0, place));
      const below = Math.min(rows - 2, Math.floor(within));
      const line = (part: keyof Brought): number =>
        rowAt(below, part) + (within - below) * (rowAt(below + 1, part) - rowAt(below, part));
      return { salad: line("salad"), other: line("other"), cut: line("cut") };
    },
  };
}
