/** Chance of at most `hits` of `count` when each has the chance `p`. */
function atMost(hits: number, count: number, p: number): number {
  if (p <= 0) return 1;
  if (p >= 1) return hits >= count ? 1 : 0;
  let term = count * Math.log1p(-p);
  let sum = Math.exp(term);
  for (let i = 1; i <= hits; i++) {
    term += Math.log((count - i + 1) / i) + Math.log(p) - Math.log1p(-p);
    sum += Math.exp(term);
  }
  return Math.min(1, sum);
}

/** The chance at which a share that falls as chances rise comes down to `wanted`. */
function chanceWhere(falling: (p: number) => number, wanted: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (falling(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Chances that so many hits of so many do not rule out: both ends hold at least the confidence, however few there are.
 *
 * @param confidence - Share of all such ranges that hold the true chance. [0–1]
 * @source Clopper and Pearson 1934, exact limits from the tails of the binomial distribution
 */
export function shareLimits(
  hits: number,
  count: number,
  confidence: number,
): { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2;
  return {
    low: hits === 0 ? 0 : chanceWhere((p) => atMost(hits - 1, count, p), 1 - tail),
    high: hits === count ? 1 : chanceWhere((p) => atMost(hits, count, p), tail),
  };
}
