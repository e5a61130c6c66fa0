import type { Quantity } from "./brand.ts";

/** A weight of greens. [kg] */
export type Kilogram = Quantity<"kg">;

/** The international avoirdupois pound. [kg] */
const POUND = 0.45359237;

/** @example kilogram(2) // => 2 */
export const kilogram = (value: number): Kilogram => value as Kilogram;

/** @example pounds(10) // => 4.5359237 */
export const pounds = (value: number): Kilogram => (value * POUND) as Kilogram;

/** @example toPounds(kilogram(4.5359237)) // => 10 */
export const toPounds = (value: Kilogram): number => value / POUND;
