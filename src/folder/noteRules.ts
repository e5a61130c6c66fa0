import type { CoverState, Note, Succession, Tunnel } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Centimetre, Kilogram, LocalDate } from "../quantity/index.ts";
import { type Spot, shown } from "./faults.ts";

/** Kinds of note, as notes.csv names them. */
export const KINDS: readonly Note["kind"][] = [
  "leaf",
  "strip",
  "emerged",
  "not ready",
  "cover",
  "cut",
  "loss",
  "resown",
];

/** What may be done with a cover. */
export const STATES: readonly CoverState[] = ["on", "vented", "nights", "off"];

/** The longest leaf anyone would note. [cm] judgement */
const LONGEST = 60;

/** What a note breaks, wherever it was written. `received` null: the writing itself. */
export interface Broken extends Pick<Problem, "code" | "expected" | "hint"> {
  readonly received: string | null;
}

/** What is broken at a place of a file. `text`: what is written there. */
export const brokenAt = (spot: Spot, text: string, { received, ...broken }: Broken): Problem => ({
  ...spot,
  ...broken,
  weight: "stops",
  received: received ?? shown(text),
});

/** Each gives what is broken, or null. */
export const leavesBroken = (lengths: readonly Centimetre[]): Broken | null =>
  lengths.every((length) => length > 0 && length <= LONGEST)
    ? null
    : {
        code: "leaf-out-of-range",
        expected: "leaf lengths between 0 and 60 cm (24 in)",
        received: null,
        hint: "Note the longest leaf of each of some five plants.",
      };

export const weightBroken = (weight: Kilogram | null): Broken | null =>
  weight === null || weight > 0
    ? null
    : {
        code: "cut-out-of-range",
        expected: "a weight above 0",
        received: null,
        hint: "Write what was cut, or leave the weight out.",
      };

export const shareBroken = (share: number): Broken | null =>
  share > 0 && share <= 1
    ? null
    : {
        code: "loss-out-of-range",
        expected: "a share above 0 and up to 100 %",
        received: null,
        hint: "Write the share of the bed that is lost.",
      };

export const hoopsBroken = ({ hoops }: Tunnel, name: string): Broken | null =>
  hoops !== null
    ? null
    : {
        code: "hoops-missing",
        expected: "a tunnel with hoops under the cover",
        received: `${name}, hoops: none`,
        hint: "Correct the tunnel here or its hoops in farm.yaml.",
      };

export const sowingBroken = (
  { id, sown }: Pick<Succession, "id" | "sown">,
  date: LocalDate,
): Broken | null =>
  date >= sown
    ? null
    : {
        code: "note-before-sowing",
        expected: `a date from ${sown} on, when ${id} was sown`,
        received: date,
        hint: "Correct the date here or in successions.csv.",
      };
