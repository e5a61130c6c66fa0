import type { SeasonOfYear } from "./season.ts";

/** A value the grower froze or set in learned.csv: it counts as it stands, whatever the notes say. */
export interface KeptValue {
  /** Logarithm of its ratio to the catalogue's, and its standard deviation. [1] */
  readonly shift: number;
  readonly spread: number;
  /** Typed by hand; else frozen as it had been learned. */
  readonly typed: boolean;
}

/** What of a crop or a cover can be kept. */
export type KeptWhat = "requirement" | "day warmth" | "night warmth" | "shade";

/** Values kept, by what they are of. */
export interface KeptLearned {
  readonly what: KeptWhat;
  /** A crop or a cover. */
  readonly name: string;
  /** null: all year. */
  readonly season: SeasonOfYear | null;
  readonly value: KeptValue;
  readonly line: number;
}
