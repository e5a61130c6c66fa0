import { type Climate, climate, lyingIn } from "../cover/index.ts";
import { type Crop, type Farm, type Setting, type Settings, settingKey } from "../farm/index.ts";
import { accumulate, type Sums } from "../growth/index.ts";
import type { Weather } from "../weather/index.ts";
import type { Horizon } from "./horizon.ts";

/** Climates and sums under every setting from now to the lookout, each computed once. */
export interface Ahead {
  climate(setting: Setting): Climate;
  sums(crop: Crop, setting: Setting): Sums;
}

/** A store of what lies ahead, filled when asked. */
export function ahead(farm: Farm, weather: Weather, horizon: Horizon, settings: Settings): Ahead {
  const climates = new Map<string, Climate>();
  const sums = new Map<string, Sums>();
  // From the last morning walk on, so that the day under way has its whole light and the seedbed its past.
  const begin = horizon.mornings.findLast((hour) => hour <= horizon.now) ?? horizon.now;
  const rounds = horizon.rounds
    .filter(({ to }) => to > begin)
    .map((round) => ({ ...round, from: Math.max(round.from, begin) }));
  const under = (setting: Setting): Climate => {
    const key = settingKey(setting);
    const known = climates.get(key);
    if (known !== undefined) return known;
    const lying = {
      day: lyingIn(setting, "day", farm.covers),
      night: lyingIn(setting, "night", farm.covers),
    };
    const made = climate(
      weather,
      rounds.map(({ from, to, part }) => ({ from, to, lying: lying[part] })),
      settings,
    );
    climates.set(key, made);
    return made;
  };
  return {
    climate: under,
    sums(crop, setting) {
      const key = `${crop.id} ${settingKey(setting)}`;
      const known = sums.get(key);
      if (known !== undefined) return known;
      const made = accumulate(crop, under(setting), horizon.mornings, settings);
      sums.set(key, made);
      return made;
    },
  };
}

/** Lowest or highest of a climate's values between two hours of the weather; the nearest value when there is none between. */
export function extremeBetween(
  values: Float64Array,
  from: number,
  a: number,
  b: number,
  pick: (x: number, y: number) => number,
): number {
  const first = Math.max(0, a - from);
  let found = values[Math.min(values.length - 1, first)]!;
  for (let i = first; i < Math.min(values.length, b - from); i++) found = pick(found, values[i]!);
  return found;
}
