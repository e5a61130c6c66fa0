import type { Farm, Note } from "../farm/index.ts";
import type { Instant, LocalDate } from "../quantity/index.ts";
import { shown } from "./faults.ts";
import type { NoteMoment } from "./noteMoment.ts";
import type { FarmNames } from "./noteNames.ts";
import type { Broken } from "./noteRules.ts";
import type { Said } from "./noteWhen.ts";

/** What a line of words is read against. */
export interface NoteSetting {
  /** With the notes so far: they say what lies where. */
  readonly farm: Farm;
  readonly names: FarmNames;
  readonly now: Instant;
  /** The date the lines are written on, from which names of days count back. */
  readonly today: LocalDate;
  /** Day and hour for lines that say none. */
  readonly said: Said;
}

/** A note with its moment as it was said. */
export interface Noting {
  readonly note: Note;
  readonly moment: NoteMoment;
}

/** Why a line is not understood. */
export interface Misread {
  readonly code: string;
  /** null: a note of any kind. */
  readonly expected: string | null;
  /** null: the line itself. */
  readonly received: string | null;
  readonly hint: string;
  /** The part of the line it is about, as typed; left out: all of it. */
  readonly part?: string;
  /** Words nothing is known about. */
  readonly unknown: readonly string[];
}

/** A line understood: notes, with the day and hour it says itself; or the day and hour for the lines that follow; or a line of a card of which nothing is noted. */
export type LineRead =
  | { readonly kind: "notes"; readonly notings: readonly Noting[]; readonly said: Said }
  | { readonly kind: "heading"; readonly said: Said }
  | { readonly kind: "card" }
  | Misreading;

export interface Misreading {
  readonly kind: "misread";
  readonly misread: Misread;
}

export const misread = (hint: string, more: Partial<Misread> = {}): Misreading => ({
  kind: "misread",
  misread: { code: "note-unreadable", expected: null, received: null, unknown: [], ...more, hint },
});

/** Understood but for a range, of which no end may be taken for the rest to be a remark. */
export const RANGE = "note-range";

/** @param one - What is to be written instead, as "one weight". */
export const ranged = (one: string): Misreading => misread(`Write ${one}.`, { code: RANGE });

/** A rule of notes that a line breaks. */
export const misreadBy = ({ hint, ...broken }: Broken): Misreading => misread(hint, broken);

export const notKnown = (unknown: readonly string[]): Misreading =>
  misread(`Not understood: ${shown(unknown.join(" "))}. Write a remark behind " - ".`, { unknown });
