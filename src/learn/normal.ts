import { errorFunction, probit } from "simple-statistics";

/** Chance that a standard normal value lies at or below `z`; good to 1e-7. */
export const normalBelow = (z: number): number => (1 + errorFunction(z / Math.SQRT2)) / 2;

/** The standard normal value with a share `p` of all values below it. */
export const normalQuantile = (p: number): number => probit(p);
