import { type Instant, localDate } from "../quantity/index.ts";
import type { Farm, Note, Succession } from "./farm.ts";

/** Successions with the notes about them. */
export interface Sown {
  readonly successions: readonly Succession[];
  readonly notes: readonly Note[];
}

/**
 * What stands at a moment, by the notes of beds sown again: such a bed has the day of its note for its sowing and no cuts.
 * Notes about it up to that day belong to the sowing before: nothing comes up or is cut on the day it is sown.
 */
export function standingSowings({ successions, notes }: Sown, zone: string, on: Instant): Sown {
  const days = new Map<string, Succession["sown"]>();
  for (const note of notes) {
    if (note.kind !== "resown" || note.at > on) continue;
    const day = localDate(zone, note.at);
    const before = days.get(note.succession);
    if (before === undefined || day > before) days.set(note.succession, day);
  }
  return {
    successions: successions.map((succession) => {
      const sown = days.get(succession.id);
      return sown === undefined ? succession : { ...succession, sown, cuts: 0 };
    }),
    notes: notes.filter((note) => {
      const sown = "succession" in note ? days.get(note.succession) : undefined;
      return sown === undefined || localDate(zone, note.at) > sown;
    }),
  };
}

/** A farm with the sowings that stand at a moment. */
export const withStandingSowings = (farm: Farm, on: Instant): Farm => ({
  ...farm,
  ...standingSowings(farm, farm.place.zone, on),
});
