import type { Outcome, SuccessionOutlook, Walk } from "../decide/index.ts";
import { type Instant, localDate, localHour } from "../quantity/index.ts";
import { SECOND_USE } from "./fate.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { clock, day, moment, weight } from "./words.ts";

/** A succession to be cut. */
export interface Cut {
  readonly succession: string;
  readonly at: Instant;
  /** The same in two parts, so that what is cut alike can be told together: "Cut, keep cold for Fri Apr 24". */
  readonly how: string;
  readonly what: string;
  /** A whole sentence; the hour stands before it when that is not the hour of the walk. */
  readonly sentence: string;
}

const SOLD = { salad: "", braising: ` as ${SECOND_USE}`, small: " below salad size" } as const;

/** When a succession is cut in the days planned; null when it is not. */
export function cutAt(
  { fate }: SuccessionOutlook,
  { walks, farm }: Pick<Outcome, "walks" | "farm">,
): Instant | null {
  const last = walks.at(-1)?.date;
  if (fate.kind === "none" || last === undefined) return null;
  if (fate.kind === "pick") return fate.pick.planned ? fate.pick.at : null;
  return localDate(farm.place.zone, fate.cut) <= last ? fate.cut : null;
}

/** The walk a cut belongs to: the nearest of its day, else the last before it. */
export function walkOf(at: Instant, { walks, farm }: Outcome): Walk | undefined {
  const date = localDate(farm.place.zone, at);
  const [nearest] = walks
    .filter((walk) => walk.date === date)
    .sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at));
  return nearest ?? walks.findLast((walk) => walk.at <= at) ?? walks[0];
}

function told(
  outlook: SuccessionOutlook,
  at: Instant,
  walk: Walk,
  { farm }: Outcome,
  names: Names,
): Pick<Cut, "how" | "what" | "sentence"> {
  const { fate, atFate, succession } = outlook;
  if (fate.kind === "none") return { how: "", what: "", sentence: "" };
  const { units, place } = farm;
  const heavy = atFate === null ? "" : `, ${mark(outlook)}${weight(units, atFate.weight)}`;
  const sold = day(units, fate.pick.marketDate);
  const [who, where] = [names.succession(succession.id), names.tunnel(succession.tunnel)];
  const held = fate.kind === "hold";
  const until = held ? "keep cold for" : "for";
  const rest = `ut the ${who} in ${where}${SOLD[fate.as]}${heavy}${held ? `; keep it cold for ${sold}` : `, for ${sold}`}.`;
  const what = `${who}, ${where}${heavy}`;
  const how = (cut: string): string => `${cut}${SOLD[fate.as]}, ${until} ${sold}`;
  if (atFate?.frozen) {
    const { thaw } = atFate;
    const when =
      thaw === null ? "Once thawed" : `From about ${clock(units, localHour(place.zone, thaw))}, when thawed`;
    return { how: how(`${when}: cut`), what, sentence: `${when}: c${rest}` };
  }
  if (at === walk.at) return { how: how("Cut"), what, sentence: `C${rest}` };
  const when =
    localDate(place.zone, at) === walk.date ? clock(units, localHour(place.zone, at)) : moment(farm, at);
  return { how: how(`${when}: cut`), what, sentence: `${when}: c${rest}` };
}

/** What is cut at, or beside, one walk, in the order of the day. */
export function cuts(walk: Walk, outcome: Outcome, names: Names): readonly Cut[] {
  return outcome.successions
    .flatMap((outlook): Cut[] => {
      const at = cutAt(outlook, outcome);
      return at === null || walkOf(at, outcome)?.index !== walk.index
        ? []
        : [{ succession: outlook.succession.id, at, ...told(outlook, at, walk, outcome, names) }];
    })
    .sort((a, b) => a.at - b.at);
}
