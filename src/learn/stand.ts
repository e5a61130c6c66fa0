import { median, type Note } from "../farm/index.ts";
import { type Centimetre, HOUR, type Instant, instant, type Kilogram } from "../quantity/index.ts";

export const DAY: number = 24 * HOUR;

/** Days between two leaves up to which a straight line tells the size between them. [d] judgement */
const LINE = 7;

export interface LeafSeen {
  readonly at: Instant;
  /** Median of the plants measured. [cm] */
  readonly length: Centimetre;
}

/** What a bed did between one cut (or sowing) and the next, as noted. */
export interface Stand {
  /** Moment of the cut or the new sowing it began with; null: it is the first. With the succession it names the stand. */
  readonly begun: Instant | null;
  /** Oldest first. */
  readonly leaves: readonly LeafSeen[];
  /** The cut it ended with; null: none is noted. `weight` null: it was not weighed. */
  readonly cut: { readonly at: Instant; readonly weight: Kilogram | null } | null;
  readonly emerged: Instant | null;
  /** When losses noted left nothing of it; null: something is left. */
  readonly lost: Instant | null;
}

/** Share of a bed below which nothing worth cutting is left. [1] judgement */
const NOTHING = 0.01;

function lostAt(notes: readonly Note[]): Instant | null {
  let left = 1;
  for (const note of notes) {
    if (note.kind === "loss") left *= 1 - note.share;
    if (left < NOTHING) return note.at;
  }
  return null;
}

/** The stand of a succession at a moment, with all that was noted of it later. */
export function standAt(all: readonly Note[], succession: string, on: Instant): Stand {
  const own = all
    .filter((note) => "succession" in note && note.succession === succession)
    .sort((a, b) => a.at - b.at);
  const ends = own.filter(({ kind }) => kind === "cut" || kind === "resown");
  const begun = ends.findLast(({ at }) => at <= on)?.at ?? null;
  const end = ends.find(({ at }) => at > on) ?? null;
  const notes = own.filter(({ at }) => (begun === null || at > begun) && (end === null || at <= end.at));
  return {
    begun,
    leaves: notes.flatMap((note) =>
      note.kind === "leaf" ? [{ at: note.at, length: median(note.lengths) as Centimetre }] : [],
    ),
    cut: end?.kind === "cut" ? { at: end.at, weight: end.weight } : null,
    emerged: notes.find(({ kind }) => kind === "emerged")?.at ?? null,
    lost: lostAt(notes),
  };
}

/** How far the second of two moments lies from the first, as a part of the way to a third. */
const part = (from: number, at: number, to: number): number => (at - from) / (to - from);

/**
 * Size at a moment: of the nearest leaf measured within a day of it, else on a straight line between two leaves measured at
 * most a week apart; null: not known.
 */
export function sizeOn({ leaves }: Stand, at: Instant): Centimetre | null {
  const near = [...leaves].sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0];
  if (near !== undefined && Math.abs(near.at - at) <= DAY) return near.length;
  const after = leaves.findIndex((leaf) => leaf.at > at);
  const [a, b] = [leaves[after - 1], leaves[after]];
  if (a === undefined || b === undefined || b.at - a.at > LINE * DAY) return null;
  return (a.length + part(a.at, at, b.at) * (b.length - a.length)) as Centimetre;
}

/**
 * When the longest leaf first was of a size, on a straight line between the last leaf below it and the next, at most a week
 * apart, with the moment of that next leaf, by which it was known; null: leaves do not tell.
 */
export function reachedOn(
  { leaves }: Stand,
  size: Centimetre,
): { readonly at: Instant; readonly knownAt: Instant } | null {
  const next = leaves.findIndex(({ length }) => length >= size);
  const [a, b] = [leaves[next - 1], leaves[next]];
  if (a === undefined || b === undefined || b.at - a.at > LINE * DAY) return null;
  return { at: instant(a.at + part(a.length, size, b.length) * (b.at - a.at)), knownAt: b.at };
}
