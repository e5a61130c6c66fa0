import { type Climate, climate, lyingIn, type Stretch } from "../cover/index.ts";
import { coverHistory, type Farm, lyingAt, type Setting, type Since, type Tunnel } from "../farm/index.ts";
import type { Weather } from "../weather/index.ts";
import { hourAt, type Round } from "./horizon.ts";
import type { Taken } from "./lays.ts";
import { lyingNow } from "./lyingNow.ts";
import type { Scene } from "./scene.ts";

/** A tunnel with what lay on it and what would go on lying there. */
export interface TunnelNow {
  readonly tunnel: Tunnel;
  readonly history: readonly Since[];
  readonly now: Setting;
  /** The pieces it is made of. */
  readonly taken: readonly Taken[];
  /** From the weather's beginning to the lookout if nothing is changed from now on; hours its own logger recorded are as recorded. */
  readonly unchanged: Climate;
  /** The same without the shade cloth that lay; null when none lay. */
  readonly unshaded: Climate | null;
}

/** Stretches of a setting that changes over time, cut at walks and at the moments of change. */
function stretchesOf(
  weather: Weather,
  rounds: readonly Round[],
  history: readonly Since[],
  farm: Farm,
): readonly Stretch[] {
  const settings = history.map(({ at, setting }) => ({ hour: hourAt(weather, at), setting }));
  const lyingFrom = (hour: number): Setting =>
    settings.findLast((since) => since.hour <= hour)?.setting ?? [];
  return rounds.flatMap(({ from, to, part }) => {
    const edges = [from, ...settings.map(({ hour }) => hour).filter((hour) => hour > from && hour < to), to];
    return edges.slice(0, -1).map((start, i) => ({
      from: start,
      to: edges[i + 1]!,
      lying: lyingIn(lyingFrom(start), part, farm.covers),
    }));
  });
}

const withoutShade = (history: readonly Since[], { covers }: Farm): readonly Since[] =>
  history.map(({ at, setting }) => ({
    at,
    setting: setting.filter(({ cover }) => covers.get(cover)!.kind !== "shade"),
  }));

/** What lies on each tunnel at the moment planned from, and the climate under it all along. */
export function tunnelNow(
  {
    farm,
    weather,
    logs,
    horizon,
    settings,
  }: Pick<Scene, "farm" | "weather" | "logs" | "horizon" | "settings">,
  tunnel: Tunnel,
): TunnelNow {
  const history = coverHistory(farm, tunnel).filter(({ at }) => at <= horizon.on);
  const under = (lain: readonly Since[]): Climate =>
    climate(
      weather,
      stretchesOf(weather, horizon.rounds, lain, farm),
      settings,
      logs.get(tunnel.id)?.temperature ?? null,
    );
  const bright = withoutShade(history, farm);
  const shaded = bright.some(({ setting }, i) => setting.length < history[i]!.setting.length);
  return {
    tunnel,
    history,
    now: lyingAt(history, horizon.on),
    taken: lyingNow(farm, horizon.on).get(tunnel.id)!,
    unchanged: under(history),
    unshaded: shaded ? under(bright) : null,
  };
}
