/** One number from outside, or worked out by other means, beside what the program makes of the same input. */
export interface Check {
  readonly what: string;
  /** Key in data/sources.json; `commonPractice` for what is practice without a source. */
  readonly source: string;
  readonly unit: string;
  /** A number, or the least and the most of what is stated. */
  readonly published: number | readonly [least: number, most: number];
  ours(): number;
  /** Largest difference that passes, in `unit`. */
  readonly tolerance: number;
  /** Why this tolerance and no other. */
  readonly why: string;
}

/** Checks of one subject, and what they show beyond passing, in whole sentences. */
export interface Subject {
  readonly name: string;
  readonly checks: readonly Check[];
  findings?(): readonly string[];
}

/** A check that was made. */
export interface Result {
  readonly check: Check;
  readonly ours: number;
  /** Ours less published; 0 within a stated range, else the way to its nearer end. */
  readonly difference: number;
  readonly passed: boolean;
}

/** Differences of this share of the tolerance beyond it are the binary fraction's. */
const BINARY = 1e-9;

function difference(ours: number, published: Check["published"]): number {
  if (typeof published === "number") return ours - published;
  const [least, most] = published;
  return ours < least ? ours - least : ours > most ? ours - most : Number.isNaN(ours) ? ours : 0;
}

/** A number that is no number fails. */
export function made(check: Check): Result {
  const ours = check.ours();
  const off = difference(ours, check.published);
  const passed = Math.abs(off) <= check.tolerance * (1 + BINARY) + 1e-12;
  return { check, ours, difference: off, passed };
}
