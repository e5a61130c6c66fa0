import { probit } from "simple-statistics";

/** Height of the standard normal at `z`. */
export const normalDensity = (z: number): number => Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Beyond this nothing is left of a double's digits. */
const FAR = 9;

/**
 * Chance that a standard normal value lies at or below `z`; good to 1e-14.
 *
 * @source Φ = ½ + φ·(z + z³/3 + z⁵/(3·5) + …), Marsaglia 2004, from memory
 */
export function normalBelow(z: number): number {
  if (Math.abs(z) > FAR) return z > 0 ? 1 : 0;
  let [term, sum] = [z, z];
  for (let k = 3; sum + term !== sum; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return Math.min(1, Math.max(0, 0.5 + sum * normalDensity(z)));
}

/** The standard normal value with a share `p` of all values below it. */
export const normalQuantile = (p: number): number => probit(p);
