import { conditioned, type Normal } from "../../src/learn/index.ts";
import published from "../published/requirement-updates.json" with { type: "json" };

const { prior, error, harvests } = published;

/**
 * The requirement after so many harvests, all at once: one value a harvest, each what the one before was and a step.
 *
 * @param drift - Variance of the step before every harvest. [(°C·d)²]
 */
export function afterHarvests(count: number, drift: number): Normal {
  const values = harvests.slice(0, count).map((_, i) => i);
  const { mean, variance } = conditioned(
    values.map((i) => values.map((j) => prior.spread ** 2 + drift * (1 + Math.min(i, j)))),
    values.map((i) => ({ precision: 1 / error ** 2, pull: (harvests[i]! - prior.mean) / error ** 2 })),
  ).values[count - 1]!;
  return { mean: prior.mean + mean, variance };
}

/** Part of the way a harvest moves the mean. [1] */
export const gainOf = (count: number): number => afterHarvests(count, 0).variance / error ** 2;
