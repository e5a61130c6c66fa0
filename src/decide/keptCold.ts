import type { Farm } from "../farm/index.ts";
import type { IssuedSheet } from "../folder/index.ts";
import {
  addDays,
  HOUR,
  type Instant,
  type Kilogram,
  type LocalDate,
  localDate,
  weekday,
} from "../quantity/index.ts";
import type { Pick } from "./outcome.ts";

/** Greens that have been cut and wait for a selling day, as noted with their weight. */
export interface KeptCold {
  readonly succession: string;
  readonly crop: string;
  readonly at: Instant;
  /** [kg] */
  readonly weight: Kilogram;
  readonly market: string;
  readonly marketDate: LocalDate;
}

/** A cut as noted is the one the sheet planned when it lies so near it. [h] judgement */
const SAME_CUT = 24;

/**
 * What lies in the cold, and for which selling day: the one the sheet given out named for the cut, else the first from the day of the
 * cut on of the bed's own market, or of any, as long as the crop keeps. Once that day is over it counts as sold: nothing is promised
 * twice. What that sheet sold as anything but salad is not counted.
 */
export function keptColdOf(
  farm: Farm,
  issued: IssuedSheet | null,
  picks: readonly Pick[],
  on: Instant,
): readonly KeptCold[] {
  const { zone } = farm.place;
  return farm.notes.flatMap((note): readonly KeptCold[] => {
    if (note.kind !== "cut" || note.at > on || !(note.weight !== null && note.weight > 0)) return [];
    const succession = farm.successions.find(({ id }) => id === note.succession);
    const crop = succession === undefined ? undefined : farm.crops.get(succession.crop);
    if (succession === undefined || crop === undefined) return [];
    const fate = issued?.successions.find((each) => each.succession === succession.id)?.fate ?? null;
    const planned = fate !== null && Math.abs(fate.cut - note.at) <= SAME_CUT * HOUR ? fate : null;
    if (planned !== null && planned.as !== "salad") return [];
    const cut = localDate(zone, note.at);
    const markets = farm.markets.filter(({ id }) => (succession.market ?? id) === id);
    const first = Array.from({ length: crop.storage + 1 }, (_, days) => addDays(cut, days)).find((date) =>
      markets.some((market) => market.weekday === weekday(date)),
    );
    const sold = picks.find(({ market, marketDate }) =>
      planned === null
        ? marketDate === first && markets.includes(market)
        : market.id === planned.pick.market && marketDate === planned.pick.marketDate,
    );
    return sold === undefined
      ? []
      : [
          {
            succession: succession.id,
            crop: crop.id,
            at: note.at,
            weight: note.weight,
            market: sold.market.id,
            marketDate: sold.marketDate,
          },
        ];
  });
}

/** What of it a selling day finds, by crop. [kg] */
export function coldFor(
  kept: readonly KeptCold[],
  { market, marketDate }: Pick,
): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  for (const each of kept)
    if (each.market === market.id && each.marketDate === marketDate)
      weights.set(each.crop, (weights.get(each.crop) ?? 0) + each.weight);
  return weights;
}
