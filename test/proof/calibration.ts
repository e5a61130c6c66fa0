// Simulation-based calibration: parameters drawn from what is believed before any note, notes drawn from them, and the rank of
// each parameter among draws from what is believed afterwards. If all is as it should be, every rank is as likely as any other.

import { catalogue, type Settings } from "../../src/farm/index.ts";
import { type Growth, learnRequirement, normalBelow, type Seen } from "../../src/learn/index.ts";
import { chance, noteOf, truthOf } from "./simulatedFarms.ts";

/** What the ranks of one parameter come to. */
export interface Ranks {
  readonly what: string;
  /** Pearson's χ² over twenty bins, and the chance of more if the ranks are uniform. */
  readonly chiSquare: number;
  readonly p: number;
  /** Mean of the ranks as shares, 0.5 when right; their standard deviation, 0.289 when right. */
  readonly mean: number;
  readonly spread: number;
}

const DRAWS = 99;
const BINS = 20;
const SPREAD = 0.15;
const NOTHING_KEPT = { farm: null, seasons: new Map() };

/** Floor, drift and weighing down switched off by their settings, for only without them is the model its own truth. */
export const plainSettings = (): Settings => ({
  ...catalogue().settings,
  spreadFloor: 0,
  requirementDrift: 0,
  surprise: 1e9,
});

/** Wilson and Hilferty's normal approximation of χ². */
const above = (chiSquare: number, freedom: number): number => {
  const part = 2 / (9 * freedom);
  return 1 - normalBelow(((chiSquare / freedom) ** (1 / 3) - (1 - part)) / Math.sqrt(part));
};

const RANKED = ["the farm", "the season", "a bed with notes", "a bed without"] as const;

/** One farm whose every bed called not ready is not: others are drawn again, as their notes were never made. */
function farmAt(draw: ReturnType<typeof chance>, settings: Settings) {
  for (;;) {
    const truth = truthOf(draw, SPREAD, 6, settings);
    const notes = truth.growths
      .slice(0, 5)
      .map(({ truth: own }, i): readonly (Seen | null)[] => [
        noteOf(draw, own, "about", 0.08, 0),
        ...(i % 2 === 0 ? [noteOf(draw, own, "about", 0.06, 0)] : []),
        ...(i === 1 || i === 2 ? [noteOf(draw, own, "above", 0.08, 0.05 * (i - 2))] : []),
      ]);
    if (notes.some((own) => own.includes(null))) continue;
    const growths = truth.growths.map(
      ({ growth }, i): Growth => ({
        ...growth,
        age: Math.max(0, 4 - i),
        seen: (notes[i] ?? []) as readonly Seen[],
      }),
    );
    return { truth, growths };
  }
}

/**
 * @source Talts, Betancourt, Simpson, Vehtari and Gelman 2018, Validating Bayesian Inference Algorithms with Simulation-Based
 * Calibration, arXiv:1804.06788
 */
export function calibration(farms: number, seed: number, settings: Settings): readonly Ranks[] {
  const draw = chance(seed);
  const ranks = RANKED.map((): number[] => []);
  for (let i = 0; i < farms; i++) {
    const { truth, growths } = farmAt(draw, settings);
    const learned = learnRequirement(SPREAD, growths, NOTHING_KEPT, settings);
    const pairs = [
      [truth.farm, learned.farm],
      [truth.farm + truth.season.get("spring")!, learned.season("spring")],
      [truth.growths[1]!.truth, learned.growths[1]!],
      [truth.growths[5]!.truth, learned.growths[5]!],
    ] as const;
    pairs.forEach(([own, { shift, spread }], k) => {
      let below = 0;
      for (let d = 0; d < DRAWS; d++) if (shift + spread * draw.normal() < own) below++;
      ranks[k]!.push(below);
    });
  }
  return ranks.map((own, k) => {
    const bins = new Array<number>(BINS).fill(0);
    for (const rank of own) bins[Math.floor((rank * BINS) / (DRAWS + 1))]!++;
    const expected = farms / BINS;
    const chiSquare = bins.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    const shares = own.map((rank) => (rank + 0.5) / (DRAWS + 1));
    const mean = shares.reduce((sum, share) => sum + share, 0) / farms;
    const variance = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / farms;
    return { what: RANKED[k]!, chiSquare, p: above(chiSquare, BINS - 1), mean, spread: Math.sqrt(variance) };
  });
}

const lineOf = ({ what, chiSquare, p, mean, spread }: Ranks): string =>
  `  ${what.padEnd(18)} χ² ${chiSquare.toFixed(1).padStart(6)} of 19, p ${p.toFixed(3)}; mean ${mean.toFixed(3)} (0.500), spread ${spread.toFixed(3)} (0.289)`;

/** The ranks without floor, drift and weighing down and with them, as lines; whether the first are uniform. */
export function calibrationTold(farms: number): {
  readonly lines: readonly string[];
  readonly uniform: boolean;
} {
  const plain = calibration(farms, 1, plainSettings());
  return {
    lines: [
      `Simulation-based calibration (Talts and others 2018, arXiv:1804.06788), ${farms} farms; floor, drift and weighing down off, every rank should be as likely:`,
      ...plain.map(lineOf),
      "The same with all of them on, how far they move it:",
      ...calibration(farms, 1, catalogue().settings).map(lineOf),
    ],
    uniform: plain.every(({ p }) => p > 0.001),
  };
}
