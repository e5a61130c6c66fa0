import type { Settings } from "../farm/index.ts";
import { type LeafCurve, leafLength, thermalTimeAt } from "../growth/index.ts";
import type { Centimetre } from "../quantity/index.ts";

/** A leaf measured, with the thermal time the model had given the succession by then. */
export interface MeasuredLeaf {
  readonly thermalTime: number;
  /** Relative spread that days without a log give this thermal time. [1] */
  readonly guess: number;
  readonly length: Centimetre;
}

/** What is believed of one succession's requirement: the logarithm of its ratio to the crop's. [1] */
export interface Belief {
  readonly shift: number;
  readonly spread: number;
  /**
   * Thermal time the succession is ahead of (or behind) the model's sum, so that the last leaf measured is the leaf it has:
   * an early bed is ahead, it does not grow twice as fast. [°C·d]
   */
  readonly head: number;
  /** The leaves lie further from what the catalogue expects than its spread allows for. */
  readonly surprising: boolean;
  /** Leaves measured. */
  readonly measured: number;
}

/** How the logarithm of thermal time answers to the logarithm of length at a length. [1] */
function steepness(curve: LeafCurve, thermalTime: number): number {
  const step = Math.max(0.5, thermalTime * 0.01);
  const up = Math.log(leafLength(curve, thermalTime + step));
  const down = Math.log(leafLength(curve, Math.max(0, thermalTime - step)));
  const span = Math.log((thermalTime + step) / Math.max(0.1, thermalTime - step));
  return up > down ? span / (up - down) : 10;
}

/** How many spreads a requirement may be moved by leaves; what lies beyond is a bed that was earlier or later, not one that grows otherwise. judgement */
const MOST_SPREADS = 2;

/** How many standard deviations from all expectation a leaf calls for a word to the grower. judgement */
const SURPRISE = 2.5;

/**
 * Updates the belief about a requirement with measured leaves, one after the other.
 * A leaf longer than the model had it means that less thermal time is needed, and the other way round; the less the more of
 * that thermal time is guessed. Guessed or not, the last leaf is the leaf the succession has.
 *
 * @param spread - Prior standard deviation of the logarithm. [1]
 * @param guess - Relative spread that days without a log since the last leaf give the thermal time. [1]
 * @source normal prior with known variances (conjugate, textbook), in the logarithm
 */
export function learnFromLeaves(
  spread: number,
  guess: number,
  curve: LeafCurve,
  leaves: readonly MeasuredLeaf[],
  settings: Settings,
): Belief {
  let shift = 0;
  let variance = spread * spread;
  let measured = 0;
  let surprising = false;
  for (const { thermalTime, guess: guessed, length } of leaves) {
    const expected = thermalTimeAt(curve, length);
    measured += 1;
    if (thermalTime <= 0 || expected <= 0) continue;
    const seen = Math.log(thermalTime / expected);
    const error =
      settings.thermalError ** 2 + guessed ** 2 + (settings.leafError * steepness(curve, expected)) ** 2;
    if (Math.abs(seen) > SURPRISE * Math.sqrt(spread * spread + error)) surprising = true;
    const weight = variance / (variance + error);
    shift += weight * (seen - shift);
    variance *= 1 - weight;
  }
  const bounded = Math.min(MOST_SPREADS * spread, Math.max(-MOST_SPREADS * spread, shift));
  const last = leaves[leaves.length - 1];
  const head =
    last === undefined ? 0 : thermalTimeAt(curve, last.length) * Math.exp(bounded) - last.thermalTime;
  return {
    shift: bounded,
    spread: Math.hypot(Math.max(settings.spreadFloor, Math.sqrt(variance)), guess),
    head,
    surprising,
    measured,
  };
}
