import type { Outcome, SuccessionOutlook, Walk } from "../decide/index.ts";
import { type Instant, localDate, localHour } from "../quantity/index.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { clock, day, moment, weight } from "./words.ts";

/** A succession to be cut. */
export interface Cut {
  readonly succession: string;
  readonly at: Instant;
  /** A whole sentence; the hour stands before it when that is not the hour of the walk. */
  readonly sentence: string;
}

const SOLD = { salad: "", braising: " as braising greens", small: " below salad size" } as const;

/** When a succession is cut in the days planned; null when it is not. */
function cutAt({ fate }: SuccessionOutlook, { walks, farm }: Outcome): Instant | null {
  const last = walks.at(-1)?.date;
  if (fate.kind === "none" || last === undefined) return null;
  if (fate.kind === "pick") return fate.pick.planned ? fate.pick.at : null;
  return localDate(farm.place.zone, fate.cut) <= last ? fate.cut : null;
}

/** The walk a cut belongs to: the last of its day that has begun, else the first of its day, else the last before it. */
function walkOf(at: Instant, { walks, farm }: Outcome): Walk | undefined {
  const date = localDate(farm.place.zone, at);
  const sameDay = walks.filter((walk) => walk.date === date);
  return (
    sameDay.findLast((walk) => walk.at <= at) ??
    sameDay[0] ??
    walks.findLast((walk) => walk.at <= at) ??
    walks[0]
  );
}

function sentence(
  outlook: SuccessionOutlook,
  at: Instant,
  walk: Walk,
  { farm }: Outcome,
  names: Names,
): string {
  const { fate, atFate, succession } = outlook;
  if (fate.kind === "none") return "";
  const { units, place } = farm;
  const heavy = atFate === null ? "" : `, ${mark(outlook)}${weight(units, atFate.weight)}`;
  const sold = day(units, fate.pick.marketDate);
  const what = `ut the ${names.succession(succession.id)}${SOLD[fate.as]}, ${names.tunnel(succession.tunnel)}${heavy}, ${fate.kind === "hold" ? "keep cold for" : "for"} ${sold}.`;
  if (at === walk.at) return `C${what}`;
  const when =
    localDate(place.zone, at) === walk.date ? clock(units, localHour(place.zone, at)) : moment(farm, at);
  return `${when}: c${what}`;
}

/** What is cut at, or beside, one walk, in the order of the day. */
export function cuts(walk: Walk, outcome: Outcome, names: Names): readonly Cut[] {
  return outcome.successions
    .flatMap((outlook): Cut[] => {
      const at = cutAt(outlook, outcome);
      return at === null || walkOf(at, outcome)?.index !== walk.index
        ? []
        : [
            {
              succession: outlook.succession.id,
              at,
              sentence: sentence(outlook, at, walk, outcome, names),
            },
          ];
    })
    .sort((a, b) => a.at - b.at);
}
