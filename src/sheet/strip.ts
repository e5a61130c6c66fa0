import { type Outcome, stripTeaches } from "../decide/index.ts";
import { clean } from "./clean.ts";
import type { Names } from "./names.ts";
import { dayOf, leafLimit, value } from "./words.ts";

/** Worth that what a strip teaches must bear on for it to be asked for, as many of the farm's currency, or kilograms. judgement */
const WORTH_A_LINE = 1;

/** A check strip that is asked for, in whole sentences. */
export interface Strip {
  readonly asked: string;
  readonly why: string;
}

/** Where a check strip would teach most; null where it would teach nothing worth the walk. */
export function strip({ farm, strip: place, successions }: Outcome, names: Names): Strip | null {
  if (place === null || stripTeaches(place) * place.worth < WORTH_A_LINE) return null;
  const crop = successions.find(({ succession }) => succession.id === place.succession)?.crop;
  if (crop === undefined) return null;
  const cloth = names.shortCover(place.cover);
  const example = leafLimit(farm.units, crop.smallest).replace(/\s/gu, "");
  return {
    asked: `Leave a short stretch of the ${names.succession(place.succession)} in ${names.tunnel(place.tunnel)} bare. On ${dayOf(farm, place.at)} measure a leaf there and one under the ${cloth} beside it, and note the bare leaf as "${clean(place.succession)} strip ${example}".`,
    why: `So you learn what this cloth does for you: ${value(farm, place.worth)} of the plan hangs on it.`,
  };
}
