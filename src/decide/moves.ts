import { type Farm, lyingBy, type Setting, type Tunnel } from "../farm/index.ts";

/** What going from one setting to another takes at a walk that opens a day or a night: [from × settings + to]. */
export interface Moves {
  /** [min] */
  readonly minutes: Float64Array;
  /** Some cloth is put on; some is taken off. */
  readonly puts: Uint8Array;
  readonly takes: Uint8Array;
}

/** Length the covers' minutes are stated for. [m] */
const HUNDRED_FEET = 30.48;

/** Moves between all settings, a rhythm's own included, at the walk that opens a part of the day. */
export function movesOf(
  farm: Farm,
  tunnel: Tunnel,
  options: readonly Setting[],
  part: "day" | "night",
): Moves {
  const S = options.length;
  const minutes = new Float64Array(S * S);
  const puts = new Uint8Array(S * S);
  const takes = new Uint8Array(S * S);
  const before = part === "day" ? "night" : "day";
  options.forEach((from, a) => {
    options.forEach((to, b) => {
      const lay = lyingBy(from, before);
      const lies = lyingBy(to, part);
      let sum = 0;
      for (const { cover, state } of lies) {
        const had = lay.find((layer) => layer.cover === cover);
        const cost = farm.covers.get(cover)!.minutes;
        if (had === undefined) {
          sum += cost.on;
          puts[a * S + b] = 1;
        } else if ((had.state === "vented") !== (state === "vented")) sum += cost.vent;
      }
      for (const { cover } of lay) {
        if (lies.some((layer) => layer.cover === cover)) continue;
        sum += farm.covers.get(cover)!.minutes.off;
        takes[a * S + b] = 1;
      }
      minutes[a * S + b] = sum * (tunnel.length / HUNDRED_FEET) * farm.labour.pace;
    });
  });
  return { minutes, puts, takes };
}
