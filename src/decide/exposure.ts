import type { Crop } from "../farm/index.ts";
import type { Standing } from "./standing.ts";

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
