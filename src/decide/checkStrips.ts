import { type Climate, climate, lyingIn } from "../cover/index.ts";
import { coverHistory, median, type Note, type Tunnel } from "../farm/index.ts";
import { between, emergence, thermalTimeAt } from "../growth/index.ts";
import type { Pair } from "../learn/index.ts";
import { type Centimetre, groupBy, localDate } from "../quantity/index.ts";
import { type Grown, grownOf } from "./grown.ts";
import { hourAt } from "./horizon.ts";
import type { Scene } from "./scene.ts";
import { tunnelNow } from "./tunnelNow.ts";

/** A check strip and the bed beside it, measured on one day: what the cloth has gained by then, in thermal time. */
export interface StripPair extends Pair {
  readonly cover: string;
  readonly crop: string;
  /** A day's growth then, to tell the gain in days. [°C·d/d] */
  readonly pace: number;
}

type StripNote = Extract<Note, { readonly kind: "strip" }>;

/** A cover that lay for less of the time than this beside another has not made the difference. [0–1] judgement */
const BESIDE = 0.2;
const WEEK = 7 * 24;

type Stage = Pick<Scene, "farm" | "weather" | "horizon" | "settings">;

/** The one cloth that lay on a tunnel from hour to hour; null: none, or more than one to speak of. */
function laid({ farm, weather, horizon }: Stage, tunnel: Tunnel, from: number, to: number): string | null {
  const history = coverHistory(farm, tunnel);
  const hours = new Map<string, number>();
  for (const round of horizon.rounds) {
    const [begin, end] = [Math.max(from, round.from), Math.min(to, round.to)];
    if (begin >= end) continue;
    const setting = history.findLast(({ at }) => hourAt(weather, at) <= begin)?.setting ?? [];
    for (const { cover } of lyingIn(setting, round.part, farm.covers))
      if (cover.kind !== "net") hours.set(cover.id, (hours.get(cover.id) ?? 0) + end - begin);
  }
  const [most, next] = [...hours].sort((a, b) => b[1] - a[1]);
  return most === undefined || (next !== undefined && next[1] > BESIDE * most[1]) ? null : most[0];
}

/** Hours by which a bed left bare would have come up later. */
function laterUp(
  { sown }: Grown,
  covered: Climate,
  bare: Climate,
  crop: Parameters<typeof emergence>[1],
): number {
  const up = (under: Climate): number | null => emergence(under.seedbed.subarray(sown), crop);
  const [first, second] = [up(covered), up(bare)];
  return first === null || second === null ? 0 : second - first;
}

/**
 * Every check strip whose bed was measured on the same day. What the cloth gained is told from the two leaves alone: by which
 * part of its thermal time the strip lies behind.
 */
export function stripPairs(stage: Stage): readonly StripPair[] {
  const { farm, weather, horizon, settings } = stage;
  const { zone } = farm.place;
  const strips = farm.notes.filter(
    (note): note is StripNote => note.kind === "strip" && note.at <= horizon.on,
  );
  const byBed = groupBy(strips, ({ succession }) => succession);
  return [...byBed].flatMap(([id, notes]): readonly StripPair[] => {
    const succession = farm.successions.find((one) => one.id === id);
    const tunnel = farm.tunnels.find((one) => one.id === succession?.tunnel);
    if (succession === undefined || tunnel === undefined) return [];
    const crop = farm.crops.get(succession.crop)!;
    const { unchanged } = tunnelNow({ ...stage, logs: new Map() }, tunnel);
    const bare = climate(weather, [{ from: 0, to: weather.temperature.length, lying: [] }], settings);
    const [grown, open] = [grownOf(stage, succession, unchanged), grownOf(stage, succession, bare)];
    return notes.flatMap((note): readonly StripPair[] => {
      const day = localDate(zone, note.at);
      for (const { told, origin, curve, regrowth } of grown.parts) {
        const beside = told.find(
          ({ note: other }) => other.kind === "leaf" && localDate(zone, other.at) === day,
        );
        const cover = laid(stage, tunnel, origin, hourAt(weather, note.at));
        if (beside === undefined || beside.note.kind !== "leaf" || beside.counted <= 0 || cover === null)
          continue;
        const hour = hourAt(weather, beside.note.at);
        const begun = origin + (regrowth ? 0 : laterUp(grown, unchanged, bare, crop.emergence));
        const grownBare = between(open.sums.pace, open.sums.from, begun, hour);
        const timeOf = (lengths: readonly Centimetre[]): number =>
          thermalTimeAt(curve, median(lengths) as Centimetre);
        const [bed, strip] = [timeOf(beside.note.lengths), timeOf(note.lengths)];
        if (bed <= 0) continue;
        const under = beside.counted;
        return [
          {
            cover,
            crop: crop.id,
            expected: under - grownBare,
            measured: under * (1 - strip / bed),
            error: under * settings.stripError,
            pace: (between(grown.sums.pace, grown.sums.from, hour - WEEK, hour) / WEEK) * 24,
          },
        ];
      }
      return [];
    });
  });
}

/** A bed on which a strip could be left. */
export interface StripPlace extends Pick<Pair, "expected" | "error"> {
  readonly succession: string;
  readonly cover: string;
  /** Spread of the cover's factor now. [1] */
  readonly spread: number;
  /** Worth that hangs on the cover's effect, in the farm's currency. */
  readonly worth: number;
}

/** How much surer one strip is expected to make a cover's factor. [1] */
export const stripTeaches = ({ expected, error, spread }: StripPlace): number =>
  spread - Math.sqrt(1 / (1 / spread ** 2 + (expected / error) ** 2));

/** Where a strip would teach most: the largest expected reduction of spread times the worth at stake; null: nowhere. */
export function bestStrip<Place extends StripPlace>(places: readonly Place[]): Place | null {
  const gainOf = (place: StripPlace): number => stripTeaches(place) * place.worth;
  return places.reduce<Place | null>(
    (best, place) => (gainOf(place) > (best === null ? 0 : gainOf(best)) ? place : best),
    null,
  );
}
