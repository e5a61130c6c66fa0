import {
  crpsFair,
  crpsMembers,
  crpsNormal,
  intervalScore,
  pinball,
  quantile,
  shareLimits,
  sumVariance,
} from "../../../src/index.ts";
import scores from "../../published/scores.json" with { type: "json" };
import type { Check, Subject } from "./check.ts";

const half = (tolerance: number): Pick<Check, "tolerance" | "why"> => ({
  tolerance,
  why: "half of the last digit printed",
});
const derived = { source: "leafpaceDerivation", unit: "1" } as const;
const members = scores.members.join(", ");

/** Scores of forecasts and the variance of sums, to the digits printed. */
export const scoresOfForecasts: Subject = {
  name: "Scores of forecasts",
  checks: [
    ...scores.normal.map(
      ({ source, mean, spread, outcome, score }): Check => ({
        what: `CRPS of N(${mean}, ${spread}) at ${outcome}`,
        source,
        unit: "1",
        published: score,
        ours: () => crpsNormal(mean, spread, outcome),
        ...half(5e-9),
      }),
    ),
    ...scores.ofMembers.flatMap(({ outcome, score, fair }): readonly Check[] => [
      {
        what: `CRPS of ${members} at ${outcome}`,
        ...derived,
        published: score,
        ours: () => crpsMembers(scores.members, outcome),
        ...half(5e-7),
      },
      {
        what: `fair CRPS of ${members} at ${outcome}`,
        ...derived,
        published: fair,
        ours: () => crpsFair(scores.members, outcome),
        ...half(5e-7),
      },
    ]),
    ...scores.pinball.map(
      ({ quantile: value, outcome, share, loss }): Check => ({
        what: `pinball loss of ${value} as the ${share} quantile at ${outcome}`,
        ...derived,
        published: loss,
        ours: () => pinball(share, value, outcome),
        ...half(1e-9),
      }),
    ),
    ...scores.interval.map(
      ({ low, high, share, outcome, score }): Check => ({
        what: `interval score of ${low} to ${high} for ${share} at ${outcome}`,
        ...derived,
        published: score,
        ours: () => intervalScore(low, high, share, outcome),
        ...half(1e-9),
      }),
    ),
    ...scores.sums.map(
      ({ spread, kept, days, variance }): Check => ({
        what: `variance of ${days} days' errors of ${spread} that keep ${kept}`,
        ...derived,
        published: variance,
        ours: () => sumVariance(spread, kept, days),
        ...half(5e-7),
      }),
    ),
    ...scores.shares.flatMap(({ hits, count, confidence, ...limits }): readonly Check[] =>
      (["low", "high"] as const).map((end) => ({
        what: `${end} end of the exact limits of ${hits} in ${count} at ${confidence}`,
        source: "rBinomTest",
        unit: "1",
        published: limits[end],
        ours: () => shareLimits(hits, count, confidence)[end],
        ...half(5e-8),
      })),
    ),
    {
      what: `quantile ${scores.quantile.share} of ${members}`,
      ...derived,
      published: scores.quantile.value,
      ours: () => quantile(scores.members, scores.quantile.share),
      ...half(1e-9),
    },
  ],
};
