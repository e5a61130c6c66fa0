import type { Crop, Settings } from "../farm/index.ts";
import { damageOdds, predicted } from "../watch/index.ts";
import { extremeBetween } from "./ahead.ts";
import type { Scene } from "./scene.ts";
import { isUndated, type Standing } from "./standing.ts";

/** No cut is planned: hour of the weather. */
export const NEVER: number = Number.POSITIVE_INFINITY;

/** Hours of an interval between walks, or those of them in which a part of a bed stands. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where its leaves stand, up to their cut; null when nowhere. */
export const leavesIn = ({ from, to }: Span, cut: number): Span | null =>
  cut > from ? { from, to: Math.min(to, cut) } : null;

/** Where stubble stands that grows again; null when nowhere. */
export const stubbleIn = ({ from, to }: Span, cut: number, { regrows }: Standing): Span | null =>
  regrows && cut < to ? { from: Math.max(from, cut), to } : null;

/**
 * Stubble has no leaves that could become unfit: only what kills the plant harms it, and its crown sits at the soil, which keeps
 * it warmer than the air at crop height. So it bears what a hardened plant bears. judgement
 */
export const asStubble = (crop: Crop): Crop => ({ ...crop, unfit: crop.kill, killSoft: crop.kill });

const harmed = (crop: Crop, lowest: number, highest: number, lead: number, settings: Settings): boolean =>
  predicted(damageOdds(crop, lowest, highest, lead, settings));

/**
 * On a bare bed more likely than not something would be harmed that still stands: by frost in a night, by heat on a day. Heat
 * harms leaves alone; stubble shoots again.
 *
 * @param up - Hour from which it has leaves.
 * @param cut - Hour of its cut, or `NEVER`.
 */
export function isEndangered(
  { store, settings }: Scene,
  standing: Standing,
  up: number,
  cut: number,
  part: "day" | "night",
  span: Span,
  lead: number,
): boolean {
  if (up >= span.to) return false;
  const bare = store.climate([]);
  const leaves = leavesIn(span, cut);
  if (part === "day") {
    if (leaves === null) return false;
    const highest = extremeBetween(bare.heat, bare.from, leaves.from, leaves.to, Math.max);
    return harmed(standing.crop, Number.POSITIVE_INFINITY, highest, lead, settings);
  }
  const cold = (crop: Crop, { from, to }: Span): boolean =>
    harmed(
      crop,
      extremeBetween(bare.frost, bare.from, from, to, Math.min),
      Number.NEGATIVE_INFINITY,
      lead,
      settings,
    );
  const stubble = stubbleIn(span, cut, standing);
  return (
    (leaves !== null && cold(standing.crop, leaves)) ||
    (stubble !== null && cold(asStubble(standing.crop), stubble))
  );
}

/** Intervals in which some bed would be endangered whose last cut nobody dated: it may have leaves of any length. */
export function alwaysEndangered(
  scene: Scene,
  standings: readonly Standing[],
  parts: readonly ("day" | "night")[],
  leads: readonly number[],
): Uint8Array {
  const { starts, now } = scene.horizon;
  return Uint8Array.from(parts, (part, i) => {
    const span = { from: starts[i]!, to: starts[i + 1]! };
    return standings.some(
      (standing) =>
        isUndated(standing) && isEndangered(scene, standing, now - 1, NEVER, part, span, leads[i]!),
    )
      ? 1
      : 0;
  });
}
