import type { Quantity } from "./brand.ts";

/** A temperature. [°C] */
export type Celsius = Quantity<"°C">;

/** A difference of two temperatures. [°C] A different type: 4 °F of protection is 2.2 °C, not −15.6. */
export type CelsiusDifference = Quantity<"Δ°C">;

/** Thermal time. [°C·d] */
export type DegreeDays = Quantity<"°C·d">;

/** @example celsius(20) // => 20 */
export const celsius = (value: number): Celsius => value as Celsius;

/** @example celsiusDifference(1.3) // => 1.3 */
export const celsiusDifference = (value: number): CelsiusDifference => value as CelsiusDifference;

/** @example degreeDays(300) // => 300 */
export const degreeDays = (value: number): DegreeDays => value as DegreeDays;

/** @example fahrenheit(50) // => 10 */
export const fahrenheit = (value: number): Celsius => (((value - 32) * 5) / 9) as Celsius;

/** @example fahrenheitDifference(9) // => 5 */
export const fahrenheitDifference = (value: number): CelsiusDifference =>
  ((value * 5) / 9) as CelsiusDifference;

/** @example toFahrenheit(celsius(10)) // => 50 */
export const toFahrenheit = (value: Celsius): number => (value * 9) / 5 + 32;

/** @example toFahrenheitDifference(celsiusDifference(5)) // => 9 */
export const toFahrenheitDifference = (value: CelsiusDifference): number => (value * 9) / 5;
