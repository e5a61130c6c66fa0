import { normalBelow, normalDensity } from "./normal.ts";

/**
 * Continuous ranked probability score of a normal forecast: 0 is best; of a forecast without spread it is the error.
 *
 * @source Gneiting and Raftery 2007, from memory; checked against scoringRulesTests and numeric integrals
 * @example crpsNormal(0, 1, -3).toFixed(8) // => "2.43657473"
 */
export function crpsNormal(mean: number, spread: number, outcome: number): number {
  const z = (outcome - mean) / spread;
  return spread * (z * (2 * normalBelow(z) - 1) + 2 * normalDensity(z) - 1 / Math.sqrt(Math.PI));
}

/** Sum of the differences of all pairs, each counted both ways. */
function differences(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return 2 * sorted.reduce((sum, value, i) => sum + (2 * i + 1 - sorted.length) * value, 0);
}

const meanError = (members: readonly number[], outcome: number): number =>
  members.reduce((sum, value) => sum + Math.abs(value - outcome), 0) / members.length;

/**
 * The same score of equally likely members as they are.
 *
 * @example crpsMembers([21, 22, 22, 24, 27], 23) // => 0.68
 */
export const crpsMembers = (members: readonly number[], outcome: number): number =>
  meanError(members, outcome) - differences(members) / (2 * members.length ** 2);

/**
 * The same score of what the members were drawn from: their number does not count against them.
 *
 * @source Ferro et al. 2008; two members or more
 */
export const crpsFair = (members: readonly number[], outcome: number): number =>
  meanError(members, outcome) - differences(members) / (2 * members.length * (members.length - 1));

/** Loss of a value given as the one with a share `p` of all below it. */
export const pinball = (p: number, quantile: number, outcome: number): number =>
  outcome >= quantile ? p * (outcome - quantile) : (1 - p) * (quantile - outcome);

/** Score of a range said to hold a share of all outcomes: its width, and what is missed many times over. */
export const intervalScore = (low: number, high: number, share: number, outcome: number): number =>
  high - low + (2 / (1 - share)) * (Math.max(0, low - outcome) + Math.max(0, outcome - high));

/**
 * Variance of the sum of daily errors that keep a part of themselves from one day to the next.
 *
 * @param spread - Of one day.
 * @param kept - Correlation of one day's error with the next.
 * @example sumVariance(2, 0, 10) // => 40
 */
export const sumVariance = (spread: number, kept: number, days: number): number =>
  spread ** 2 * ((days * (1 + kept)) / (1 - kept) - (2 * kept * (1 - kept ** days)) / (1 - kept) ** 2);

/** The value with a share `p` of all below it, on straight lines between those in order; of values already sorted. */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const at = p * (sorted.length - 1);
  const [below, part] = [Math.floor(at), at - Math.floor(at)];
  const low = sorted[below]!;
  return part === 0 ? low : low + part * (sorted[below + 1]! - low);
}

/**
 * Brier's score of chances: the mean square of chance less what came, 0 best, 1 worst; 0.25 for saying one half each time.
 *
 * @source Brier 1950, in the form for two outcomes that counts one of them
 */
export const brier = (said: readonly { readonly odds: number; readonly came: boolean }[]): number =>
  said.reduce((sum, { odds, came }) => sum + (odds - (came ? 1 : 0)) ** 2, 0) / said.length;
