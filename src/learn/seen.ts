import { type Conditioned, conditioned, type Normal, type Site } from "./conditioned.ts";
import { normalBelow, normalDensity } from "./normal.ts";

/** One note about a value: it is about so much, or it is more than so much; with the standard deviation of saying so. */
export interface Seen {
  readonly kind: "about" | "above";
  readonly value: number;
  readonly error: number;
}

/** What became of one note. */
export interface Weighed {
  /** All others contradict it. */
  readonly surprising: boolean;
  /** What it says; of one that surprises no more than `surprise` standard deviations from what all others say. */
  readonly taken: number;
}

/** What notes come to; what became of each, by value and note as given. */
export interface Settled {
  readonly all: Conditioned;
  readonly weighed: readonly (readonly Weighed[])[];
}

/** Rounds after which it ends in any case; random notes that contradict each other wildly settle within 300. */
const ROUNDS = 400;
const STILL = 1e-13;

/** Height of the normal over what lies below `z`. @source continued fraction of Laplace for the far tail, textbook */
function hazard(z: number): number {
  if (z > -4) return normalDensity(z) / normalBelow(z);
  let tail = -z;
  for (let k = 60; k >= 1; k--) tail = -z + k / tail;
  return tail;
}

/** What all but one note say of its value. */
function without({ mean, variance }: Normal, { precision, pull }: Site): Normal {
  const left = 1 / variance - precision;
  return { mean: (mean / variance - pull) / left, variance: 1 / left };
}

/** How far a note lies from what all others say, in standard deviations; one that says "more than" is only contradicted by less. */
function offBy({ kind, value, error }: Seen, { mean, variance }: Normal): number {
  const z = (value - mean) / Math.sqrt(variance + error * error);
  return kind === "about" ? Math.abs(z) : Math.max(0, z);
}

/** The note as a normal one, its error so wide that it lies no more than `surprise` standard deviations off. */
function siteOf(seen: Seen, others: Normal, surprise: number): Site {
  const { kind, value, error } = seen;
  const { mean, variance } = others;
  const widened =
    offBy(seen, others) > surprise ? ((value - mean) / surprise) ** 2 - variance : error * error;
  if (kind === "about") return { precision: 1 / widened, pull: value / widened };
  const spread = Math.sqrt(widened + variance);
  const z = (mean - value) / spread;
  const rate = hazard(z);
  const slope = (rate * (z + rate)) / spread ** 2;
  const precision = slope / (1 - variance * slope);
  const tilted = mean + (variance * rate) / spread;
  return { precision, pull: tilted * (1 / variance + precision) - mean / variance };
}

/**
 * Weighs all notes at once: each in the light of all others, round after round, until nothing moves any more. A note that lies
 * further than `surprise` standard deviations from what all others say has its error widened until it lies just so far: the
 * further off, the less it counts.
 *
 * @param prior - Covariances of the values; each has its notes in the same place of `seen`.
 * @source expectation propagation (Minka 2001) for "more than", from memory; widened errors: judgement
 */
export function settle(
  prior: readonly (readonly number[])[],
  seen: readonly (readonly Seen[])[],
  surprise: number,
): Settled {
  const nothing: Site = { precision: 0, pull: 0 };
  let sites = seen.map((notes) =>
    notes.map(({ kind, value, error }) =>
      kind === "above" ? nothing : { precision: 1 / error ** 2, pull: value / error ** 2 },
    ),
  );
  const together = (): Conditioned =>
    conditioned(
      prior,
      sites.map((own) => ({
        precision: own.reduce((sum, { precision }) => sum + precision, 0),
        pull: own.reduce((sum, { pull }) => sum + pull, 0),
      })),
    );
  let all = together();
  for (let round = 0; round < ROUNDS; round++) {
    let moved = 0;
    sites = sites.map((own, i) =>
      own.map((site, k) => {
        const next = siteOf(seen[i]![k]!, without(all.values[i]!, site), surprise);
        const by = (from: number, to: number): number => Math.abs(to - from) / (1 + Math.abs(to));
        moved = Math.max(moved, by(site.precision, next.precision), by(site.pull, next.pull));
        return next;
      }),
    );
    if (moved > 0) all = together();
    if (moved < STILL) break;
  }
  const weighed = sites.map((own, i) =>
    own.map((site, k): Weighed => {
      const note = seen[i]![k]!;
      const others = without(all.values[i]!, site);
      const off = offBy(note, others);
      if (off <= surprise) return { surprising: false, taken: note.value };
      return { surprising: true, taken: others.mean + ((note.value - others.mean) * surprise) / off };
    }),
  );
  return { all, weighed };
}
