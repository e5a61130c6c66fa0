// Farms whose cloth does otherwise than the catalogue says, told from ten measured pairs.

import { catalogue } from "../../src/farm/index.ts";
import { type Factor, type Pair, shadeFactor, warmthFactor } from "../../src/learn/index.ts";
import { chance } from "./simulatedFarms.ts";

export interface CoverTrial {
  readonly what: string;
  readonly truth: number;
  /** Range of the first farm, four of five cases. */
  readonly low: number;
  readonly high: number;
  /** Width of that range before any pair. */
  readonly before: number;
  /** Farms whose range holds the truth, of so many. */
  readonly inside: number;
  readonly seeds: number;
}

const { settings } = catalogue();
const PAIRS = 10;

/** What is expected of one pair, from least to most, and how well it is measured. */
interface Setup {
  readonly what: string;
  readonly truth: number;
  readonly expected: readonly [least: number, most: number];
  readonly error: number;
  learn(pairs: readonly Pair[]): Factor;
}

const SETUPS: readonly Setup[] = [
  {
    what: "row cover that warms half as much, loggers inside and outside by day",
    truth: 0.5,
    expected: [2.5, 6],
    error: settings.gainError,
    learn: (pairs) => warmthFactor(settings.warmthSpread, settings.warmthFloor, pairs),
  },
  {
    what: "shade that does nothing, check strips of a bed that 40 % cloth holds back by 6 % or so",
    truth: 0,
    expected: [-22, -14],
    error: 300 * settings.stripError,
    learn: (pairs) => shadeFactor(settings.shadeSpread, settings.warmthFloor, pairs),
  },
  {
    what: "row cover that does what the catalogue says",
    truth: 1,
    expected: [2.5, 6],
    error: settings.gainError,
    learn: (pairs) => warmthFactor(settings.warmthSpread, settings.warmthFloor, pairs),
  },
];

export const coverTrials = (seeds: number): readonly CoverTrial[] =>
  SETUPS.map(({ what, truth, expected: [least, most], error, learn }) => {
    const ranges = Array.from({ length: seeds }, (_, seed) => {
      const { uniform, normal } = chance(seed + 1);
      return learn(
        Array.from({ length: PAIRS }, () => {
          const expected = least + (most - least) * uniform();
          return { expected, measured: truth * expected + error * normal(), error };
        }),
      );
    });
    const usual = learn([]);
    const [first] = ranges;
    return {
      what,
      truth,
      low: first!.low,
      high: first!.high,
      before: usual.high - usual.low,
      inside: ranges.filter(({ low, high }) => low <= truth && truth <= high).length,
      seeds,
    };
  });
