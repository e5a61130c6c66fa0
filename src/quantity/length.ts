import type { Quantity } from "./brand.ts";

/** A length along a bed, of a cloth, or above the sea. [m] */
export type Metre = Quantity<"m">;

/** The length of a leaf. [cm] */
export type Centimetre = Quantity<"cm">;

/** @example metre(15) // => 15 */
export const metre = (value: number): Metre => value as Metre;

/** @example centimetre(8) // => 8 */
export const centimetre = (value: number): Centimetre => value as Centimetre;

/** @example feet(50) // => 15.24 */
export const feet = (value: number): Metre => (value * 0.3048) as Metre;

/** @example inches(4) // => 10.16 */
export const inches = (value: number): Centimetre => (value * 2.54) as Centimetre;

/** @example toFeet(metre(15.24)) // => 50 */
export const toFeet = (value: Metre): number => value / 0.3048;

/** @example toInches(centimetre(10.16)) // => 4 */
export const toInches = (value: Centimetre): number => value / 2.54;
