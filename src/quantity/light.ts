import type { Quantity } from "./brand.ts";

/** Solar radiation on level ground, all wavelengths. [W/m²] */
export type WattPerSquareMetre = Quantity<"W/m²">;

/** Solar radiation summed over a stretch of time. [MJ/m²] */
export type Megajoule = Quantity<"MJ/m²">;

/** Photosynthetic light summed over a stretch of time; over a day it is the daily light integral. [mol/m²] */
export type Mol = Quantity<"mol/m²">;

/** @example megajoule(20) // => 20 */
export const megajoule = (value: number): Megajoule => value as Megajoule;

/** @example mol(12) // => 12 */
export const mol = (value: number): Mol => value as Mol;
