import type { Note } from "../farm/index.ts";
import type { IssuedPick, IssuedSheet } from "../folder/index.ts";
import { groupBy, type Instant, type Kilogram, kilogram } from "../quantity/index.ts";
import { DAY } from "./stand.ts";

/** All that was to be cut for one selling day, and what was. */
export interface PickOutcome {
  readonly pick: IssuedPick;
  /** Salad-size weight of all products. */
  readonly expected: Kilogram;
  readonly ordered: Kilogram;
  readonly cut: Kilogram;
}

const total = (weights: readonly number[]): Kilogram =>
  kilogram(weights.reduce((sum, weight) => sum + weight, 0));

/** Weights cut of successions from one moment to another; null where one of them has no weighed cut. */
function cutOf(
  notes: readonly Note[],
  successions: ReadonlySet<string>,
  from: Instant,
  until: number,
): Kilogram | null {
  const weights = [...successions].map((id) => {
    const cuts = notes.flatMap((note) =>
      note.kind === "cut" && note.succession === id && note.at > from && note.at <= until ? [note] : [],
    );
    return cuts.length === 0 || cuts.some(({ weight }) => weight === null)
      ? null
      : total(cuts.map(({ weight }) => weight!));
  });
  return weights.some((weight) => weight === null) ? null : total(weights.map((weight) => weight!));
}

/** Picks of which every bed that was to be cut for them was weighed, each by the last sheet that was a day or more ahead. */
export function pickOutcomes(
  notes: readonly Note[],
  sheets: readonly IssuedSheet[],
  now: Instant,
): readonly PickOutcome[] {
  const found = new Map<string, PickOutcome | null>();
  for (const { on, products } of sheets)
    for (const [key, all] of groupBy(
      products,
      ({ pick }) => `${pick.market} ${pick.marketDate} ${pick.at}`,
    )) {
      const { pick } = all[0]!;
      if (on > pick.at - DAY || pick.at > now) continue;
      const from = new Set(all.flatMap(({ successions }) => successions));
      const cut = from.size === 0 ? null : cutOf(notes, from, on, Math.min(now, pick.at + DAY));
      found.set(
        key,
        cut === null
          ? null
          : {
              pick,
              expected: total(all.map(({ expected }) => expected)),
              ordered: total(all.map(({ ordered }) => ordered)),
              cut,
            },
      );
    }
  return [...found.values()].filter((each) => each !== null).sort((a, b) => a.pick.at - b.pick.at);
}
