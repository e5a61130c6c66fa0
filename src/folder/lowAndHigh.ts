import { type Celsius, parseQuantity } from "../quantity/index.ts";
import type { Units } from "./faults.ts";
import { ON_A_FARM } from "./onAFarm.ts";

const LABEL = String.raw`(?:(high|hi|max|low|lo|min)\s+(?:of\s+)?)?`;
const TEMPERATURE = String.raw`(-?\d+(?:\.\d+)?)(?:\s*(?:[°º]|degrees?\b))?(?:\s*([fc])\b)?`;
const BETWEEN = String.raw`(?:\s*\/\s*|\s+to\s+|\s+-\s+|\s+|-)`;
const TWO = new RegExp(`^${LABEL}${TEMPERATURE}${BETWEEN}${LABEL}${TEMPERATURE}$`, "u");

/** Two temperatures as people write a day's, the larger being the high. */
export type LowAndHigh =
  | { readonly low: Celsius; readonly high: Celsius; readonly fault: null }
  | { readonly fault: "unreadable" | "swapped" | "outside" };

/**
 * Reads a low and a high in either order. A unit behind one of them counts for both; without any, the farm's does.
 *
 * @example lowAndHigh("62/41", "US") // => { low: 5, high: 16.67, fault: null }
 */
export function lowAndHigh(text: string, units: Units): LowAndHigh {
  const plain = text.toLowerCase().replace(/[−–]/gu, "-").trim();
  const match = TWO.exec(plain);
  if (match === null) return { fault: "unreadable" };
  const [, firstLabel = "", first, firstUnit, secondLabel = "", second, secondUnit] = match;
  const stated = firstUnit ?? secondUnit ?? (units === "US" ? "F" : "C");
  const read = (number: string, unit: string): number | null =>
    parseQuantity(number, "temperature", unit).value;
  const a = read(first!, firstUnit ?? stated);
  const b = read(second!, secondUnit ?? stated);
  if (a === null || b === null) return { fault: "unreadable" };
  const isHigh = (label: string): boolean => label.startsWith("h") || label === "max";
  const isLow = (label: string): boolean => label.startsWith("l") || label === "min";
  if (a < b ? isHigh(firstLabel) || isLow(secondLabel) : a > b && (isLow(firstLabel) || isHigh(secondLabel)))
    return { fault: "swapped" };
  const [low, high] = [Math.min(a, b) as Celsius, Math.max(a, b) as Celsius];
  return low < ON_A_FARM.coldest || high > ON_A_FARM.warmest
    ? { fault: "outside" }
    : { low, high, fault: null };
}
