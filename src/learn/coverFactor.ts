/** An effect a cover was expected to have, what was measured of it, and how well; in one unit. */
export interface Pair {
  readonly expected: number;
  readonly measured: number;
  /** Standard deviation of what is measured. */
  readonly error: number;
}

/** How many times its expected effect a cover has on this farm. */
export interface Factor {
  readonly factor: number;
  /** Four of five cases lie between. */
  readonly low: number;
  readonly high: number;
  /** Standard deviation of its logarithm, for draws. [1] */
  readonly spread: number;
  /** Part of the number that is the farm's own, not the catalogue's. [0–1] */
  readonly own: number;
  readonly pairs: number;
}

const FOUR_IN_FIVE = 1.2816;
/** How many spreads a factor may lie off; what says more is a logger that hangs in the sun, or another cloth. judgement */
const MOST_SPREADS = 3;
/** Of the grid, on either side, in spreads of the prior; and its points. */
const REACH = 6;
const POINTS = 2001;

const UNTOUCHED = { own: 0, pairs: 0 } as const;

const sums = (pairs: readonly Pair[]): { readonly information: number; readonly pull: number } => {
  // Smallest first, so that the order in which pairs come in moves no digit.
  const added = (values: readonly number[]): number =>
    [...values].sort((a, b) => a - b).reduce((sum, value) => sum + value, 0);
  return {
    information: added(pairs.map(({ expected, error }) => (expected / error) ** 2)),
    pull: added(pairs.map(({ expected, measured, error }) => (expected * measured) / error ** 2)),
  };
};

/**
 * What a cloth warms, as a factor that is never negative: the prior is normal in its logarithm, and what pairs say is weighed
 * along a grid of it.
 *
 * @param spread - Standard deviation of the logarithm before any pair. [1]
 * @param floor - Least spread after any number of them. [1]
 * @source Bayes' rule on a grid, textbook
 */
export function warmthFactor(spread: number, floor: number, pairs: readonly Pair[]): Factor {
  const bound = Math.exp(FOUR_IN_FIVE * spread);
  if (pairs.length === 0) return { factor: 1, low: 1 / bound, high: bound, spread, ...UNTOUCHED };
  const { information, pull } = sums(pairs);
  const logs = Array.from({ length: POINTS }, (_, i) => spread * REACH * ((2 * i) / (POINTS - 1) - 1));
  const heights = logs.map((x) => {
    const factor = Math.exp(x);
    return pull * factor - (information * factor ** 2) / 2 - (x / spread) ** 2 / 2;
  });
  const most = Math.max(...heights);
  const weights = heights.map((height) => Math.exp(height - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const middle = weights.reduce((sum, weight, i) => sum + weight * logs[i]!, 0) / total;
  const variance = weights.reduce((sum, weight, i) => sum + weight * (logs[i]! - middle) ** 2, 0) / total;
  const left = Math.max(floor, Math.sqrt(variance));
  const shift = Math.min(MOST_SPREADS * spread, Math.max(-MOST_SPREADS * spread, middle));
  return {
    factor: Math.exp(shift),
    low: Math.exp(shift - FOUR_IN_FIVE * left),
    high: Math.exp(shift + FOUR_IN_FIVE * left),
    spread: left,
    own: Math.max(0, 1 - variance / spread ** 2),
    pairs: pairs.length,
  };
}

/** What is left to draw around, however little a cloth does. judgement */
const LEAST = 0.05;

/** Standard deviation of a value whose logarithm has that of `spread`, about a median of 1. @source log-normal distribution, textbook */
export const linearSpread = (spread: number): number =>
  Math.sqrt(Math.expm1(spread ** 2) * Math.exp(spread ** 2));

/**
 * What shade takes, as a factor that may come to nothing: the prior is normal about 1, as wide as one in the logarithm would be.
 *
 * @param spread - Standard deviation of the logarithm before any pair. [1]
 * @source normal prior with known variances (conjugate, textbook)
 */
export function shadeFactor(spread: number, floor: number, pairs: readonly Pair[]): Factor {
  const wide = linearSpread(spread);
  const usual = FOUR_IN_FIVE * wide;
  if (pairs.length === 0) return { factor: 1, low: 1 - usual, high: 1 + usual, spread, ...UNTOUCHED };
  const { information, pull } = sums(pairs);
  const precision = information + 1 / wide ** 2;
  const mean = (pull + 1 / wide ** 2) / precision;
  const left = Math.max(floor, Math.sqrt(1 / precision));
  const factor = Math.max(LEAST, mean);
  return {
    factor,
    low: mean - FOUR_IN_FIVE * left,
    high: mean + FOUR_IN_FIVE * left,
    spread: Math.sqrt(Math.log1p((left / factor) ** 2)),
    own: information / precision,
    pairs: pairs.length,
  };
}
