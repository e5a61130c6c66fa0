import { type Farm, type Layer, lyingBy, type Setting, type Tunnel } from "../farm/index.ts";
import type { Lay, Taken } from "./lays.ts";

/** What going from one lay to another takes at a walk that opens a day or a night: [from × settings + to]. */
export interface Moves {
  /** [min] */
  readonly minutes: Float64Array;
  /** Some cloth is put on; some is taken off; a side of some that stays is lifted or let down. */
  readonly puts: Uint8Array;
  readonly takes: Uint8Array;
  /** Of what is taken off some would have stayed, had the lay not changed: it is more than a rhythm's own round. */
  readonly pulls: Uint8Array;
  readonly vents: Uint8Array;
}

/** Length the covers' minutes are stated for. [m] */
const HUNDRED_FEET = 30.48;

/** Two layers are the same cloth: another piece of the same cover must be carried and laid as well. */
const sameCloth = (a: Layer & Taken, b: Layer & Taken): boolean =>
  a.cover === b.cover && a.piece === b.piece && a.over.length === b.over.length;

/** Moves between all lays, a rhythm's own included, at the walk that opens a part of the day. */
export function movesOf(
  farm: Farm,
  tunnel: Tunnel,
  settings: readonly Setting[],
  lays: readonly Lay[],
  part: "day" | "night",
): Moves {
  const S = lays.length;
  const clothOf = ({ setting, taken }: Lay, by: "day" | "night"): readonly (Layer & Taken)[] =>
    lyingBy(settings[setting]!, by).map((layer) => ({
      ...taken.find(({ cover }) => cover === layer.cover)!,
      ...layer,
    }));
  const minutes = new Float64Array(S * S);
  const puts = new Uint8Array(S * S);
  const takes = new Uint8Array(S * S);
  const pulls = new Uint8Array(S * S);
  const vents = new Uint8Array(S * S);
  const before = part === "day" ? "night" : "day";
  lays.forEach((from, a) => {
    lays.forEach((to, b) => {
      const lay = clothOf(from, before);
      const stays = clothOf(from, part);
      const lies = clothOf(to, part);
      let sum = 0;
      for (const layer of lies) {
        const had = lay.find((other) => sameCloth(other, layer));
        const cost = farm.covers.get(layer.cover)!.minutes;
        if (had === undefined) {
          sum += cost.on;
          puts[a * S + b] = 1;
        } else if ((had.state === "vented") !== (layer.state === "vented")) {
          sum += cost.vent;
          vents[a * S + b] = 1;
        }
      }
      for (const layer of lay) {
        if (lies.some((other) => sameCloth(other, layer))) continue;
        sum += farm.covers.get(layer.cover)!.minutes.off;
        takes[a * S + b] = 1;
        if (stays.some((other) => sameCloth(other, layer))) pulls[a * S + b] = 1;
      }
      minutes[a * S + b] = sum * (tunnel.length / HUNDRED_FEET) * farm.labour.pace;
    });
  });
  return { minutes, puts, takes, pulls, vents };
}
