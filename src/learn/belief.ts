import type { GrowthEstimate } from "./requirement.ts";

/** What is believed of one succession's requirement: the logarithm of its ratio to the crop's. [1] */
export interface Belief {
  readonly shift: number;
  readonly spread: number;
  /**
   * Thermal time the succession is ahead of (or behind) the model's sum, so that the last leaf measured is the leaf it has:
   * an early bed is ahead, it does not grow twice as fast. [°C·d]
   */
  readonly head: number;
  /** Notes about it lie further from what everything else lets expect than their spread allows for. */
  readonly surprising: boolean;
  /** Leaves measured. */
  readonly measured: number;
}

/** The last leaf measured. */
export interface LeafSeenLast {
  /** Thermal time counted since emergence or the last cut. [°C·d] */
  readonly thermalTime: number;
  /** What the bed had grown by then as the leaf has it, in the crop's own requirement. [°C·d] */
  readonly grown: number;
}

/** How many spreads a requirement may be moved; what lies beyond is a bed that was earlier or later, not one that grows otherwise. judgement */
const MOST_SPREADS = 2;

/**
 * What is believed of the growth that stands. Its last leaf is the leaf it has, as far as that leaf is taken.
 *
 * @param guess - Relative spread that days without a log since the last leaf give the thermal time. [1]
 */
export function beliefOf(
  { shift, spread, before, weighed }: GrowthEstimate,
  last: LeafSeenLast | null,
  guess: number,
  measured: number,
): Belief {
  const bounded = Math.min(MOST_SPREADS * before, Math.max(-MOST_SPREADS * before, shift));
  return {
    shift: bounded,
    spread: Math.hypot(spread, guess),
    head: last === null ? 0 : last.grown * Math.exp(bounded) - last.thermalTime,
    surprising: weighed.some(({ surprising }) => surprising),
    measured,
  };
}
