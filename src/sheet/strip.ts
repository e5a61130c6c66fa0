import { type Outcome, stripTeaches } from "../decide/index.ts";
import { clean } from "./clean.ts";
import type { Names } from "./names.ts";
import { dayOf, leafLimit, value } from "./words.ts";

/** Worth that what a strip teaches must bear on for it to be asked for, as many of the farm's currency, or kilograms. judgement */
const WORTH_A_LINE = 1;

/** Where a check strip would teach most, in one sentence; null where it would teach nothing worth the walk. */
export function strip({ farm, strip: place, successions }: Outcome, names: Names): string | null {
  if (place === null || stripTeaches(place) * place.worth < WORTH_A_LINE) return null;
  const crop = successions.find(({ succession }) => succession.id === place.succession)?.crop;
  if (crop === undefined) return null;
  const cloth = names.cover(place.cover);
  const example = leafLimit(farm.units, crop.smallest).replace(/\s/gu, "");
  return `Leave a short stretch of the ${names.succession(place.succession)} in ${names.tunnel(place.tunnel)} bare beside its ${cloth} and measure both on ${dayOf(farm, place.at)}: that teaches most about what this cloth does; ${value(farm, place.worth)} of the plan hangs on it. Note it as "${clean(place.succession)} strip ${example}".`;
}
