import { gain, layersOf, lyingIn } from "../cover/index.ts";
import { coverHistory, lyingAt } from "../farm/index.ts";
import type { Pair } from "../learn/index.ts";
import { type Instant, startOf, type UtcHour } from "../quantity/index.ts";
import { ORIGINS } from "../weather/index.ts";
import type { Scene } from "./scene.ts";

/** A day's or a night's mean gain under one cover, beside what was expected. */
export interface CoverPair extends Pair {
  readonly cover: string;
  readonly part: "day" | "night";
}

/** Fewer hours of a day or a night are no mean of it. [h] judgement */
const LEAST_HOURS = 4;
/** Gains expected below this teach nothing and only add noise. [°C] judgement */
const LEAST_GAIN = 0.3;

/**
 * Loggers in tunnels beside the record outside: one pair for each day and each night through which one cloth lay alone, closed,
 * and both recorded. A net beside it does not count as a cloth.
 */
export function coverPairs({
  farm,
  weather,
  logs,
  horizon,
  settings,
}: Pick<Scene, "farm" | "weather" | "logs" | "horizon" | "settings">): readonly CoverPair[] {
  return farm.tunnels.flatMap((tunnel) => {
    const log = logs.get(tunnel.id)?.temperature;
    if (log === undefined) return [];
    const history = coverHistory(farm, tunnel);
    return horizon.rounds.flatMap(({ from, to, part }): readonly CoverPair[] => {
      if (from >= horizon.now) return [];
      const [since, until] = [from, to].map((hour) => startOf((weather.first + hour) as UtcHour)) as [
        Instant,
        Instant,
      ];
      if (history.some(({ at }) => at > since && at < until)) return [];
      const lying = lyingIn(lyingAt(history, since), part, farm.covers);
      const cloths = lying.filter(({ cover }) => cover.kind !== "net");
      const [only] = cloths;
      if (only === undefined || cloths.length > 1 || only.cover.kind === "shade" || only.vented) return [];
      const layers = layersOf(lying, settings);
      let [hours, expected, measured] = [0, 0, 0];
      for (let hour = from; hour < Math.min(to, horizon.now); hour++) {
        const inside = log[hour]!;
        if (Number.isNaN(inside) || ORIGINS[weather.origin[hour]!] !== "logger") continue;
        const sun = weather.radiation[hour]!;
        // Around sunset the one gain passes into the other.
        if (part === "day" ? sun < settings.dusk : sun >= settings.dusk) continue;
        hours++;
        expected += gain(layers, sun, weather.wind[hour]!, weather.cloud[hour]!);
        measured += inside - weather.temperature[hour]!;
      }
      if (hours < LEAST_HOURS || expected / hours < LEAST_GAIN) return [];
      return [
        {
          cover: only.cover.id,
          part,
          expected: expected / hours,
          measured: measured / hours,
          error: settings.gainError,
        },
      ];
    });
  });
}
