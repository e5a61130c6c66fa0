import type { Settings } from "../farm/index.ts";
import { type LeafCurve, leafLength, thermalTimeAt } from "../growth/index.ts";
import { type Belief, normalQuantile } from "../learn/index.ts";
import { centimetre } from "../quantity/index.ts";
import { draws } from "../weather/index.ts";

/** The last leaf measured, as every case drawn has it. */
export interface LastLeaf {
  /** Thermal time at it, with the head start it gives. [°C·d] */
  readonly thermalTime: number;
  /** What the bed had grown by then, as the crop's own requirement counts it. [°C·d] */
  readonly grown: Float64Array;
}

/** What cases are counted from: requirements drawn, relative to the crop's own, and the last leaf; null: none was measured. */
export interface Cases {
  readonly requirements: Float64Array;
  readonly leaf: LastLeaf | null;
}

/** Error that measuring gives the logarithm of what a bed has grown. [1] */
function measuringError(curve: LeafCurve, grown: number, { leafError }: Settings): number {
  const length = leafLength(curve, grown);
  const at = (error: number): number =>
    Math.log(Math.max(1, thermalTimeAt(curve, centimetre(length * Math.exp(error)))));
  return (at(leafError) - at(-leafError)) / 2;
}

/**
 * What a measured bed had grown, in every case. A leaf tells that far better than it tells the requirement: where the requirement is
 * greater than believed, either the bed had more warmth than the model knows, which is all the same from then on, or the leaf
 * was measured too long; the two share it as their variances do.
 *
 * @param thermalTime - At the leaf, as the model has it. [°C·d]
 * @param guess - Relative spread that days without a log give the thermal time, up to the leaf and since. [1]
 * @param requirements - Drawn, relative to the crop's own.
 * @source normal errors given their sum, textbook; sizes: data/settings.json
 */
export function lastLeafDraws(
  curve: LeafCurve,
  { shift, head }: Belief,
  thermalTime: number,
  guess: { readonly before: number; readonly since: number },
  requirements: Float64Array,
  succession: string,
  settings: Settings,
): LastLeaf {
  const begun = Math.max(0, thermalTime + head);
  const grown = begun * Math.exp(-shift);
  const measuring = measuringError(curve, grown, settings) ** 2;
  const time = settings.thermalError ** 2 + guess.before ** 2;
  const share = measuring / (measuring + time);
  const own = Math.sqrt(share * time + (1 - share ** 2) * guess.since ** 2);
  const draw = draws(settings.seed, `leaf ${succession}`);
  return {
    thermalTime: begun,
    grown: requirements.map(
      (needed, i) => grown * Math.exp(own * normalQuantile(draw(i)) - share * (Math.log(needed) - shift)),
    ),
  };
}

/** Thermal time of one case as the crop's own requirement counts it. [°C·d] */
export function ownTime({ requirements, leaf }: Cases, i: number, thermalTime: number): number {
  if (leaf === null) return thermalTime / requirements[i]!;
  const since = thermalTime - leaf.thermalTime;
  return since < 0
    ? (leaf.grown[i]! * thermalTime) / leaf.thermalTime
    : leaf.grown[i]! + since / requirements[i]!;
}

/** The thermal time at which one case has grown so much: the other way round. [°C·d] */
export function timeOf({ requirements, leaf }: Cases, i: number, own: number): number {
  if (leaf === null) return own * requirements[i]!;
  const more = own - leaf.grown[i]!;
  return more < 0 ? (leaf.thermalTime * own) / leaf.grown[i]! : leaf.thermalTime + more * requirements[i]!;
}
