import { type Cover, lyingBy, type Setting, type Settings } from "../farm/index.ts";
import type { Weather } from "../weather/index.ts";
import {
  type Air,
  cropHeightDrop,
  gain,
  growingPoint,
  type Lying,
  leaf,
  lightThrough,
  promisedGain,
  seedbedCooling,
} from "./effect.ts";

/** Hour by hour under what lies; arrays run from hour `first` of the weather's own arrays. */
export interface Climate {
  /** Index into the weather's arrays of the first hour here. */
  readonly from: number;
  /** What the growing point feels in the expected wind. [°C] */
  readonly growing: Float64Array;
  /** Seedbed. [°C] */
  readonly seedbed: Float64Array;
  /** Radiation under the layers. [W/m²] */
  readonly radiation: Float64Array;
  /** At crop height in calm air: for frost, with the gain expected and with the gain that may be promised. [°C] */
  readonly frost: Float64Array;
  readonly frostPromised: Float64Array;
  /** The leaf in calm air: for heat. [°C] */
  readonly heat: Float64Array;
}

/** What lies during one stretch between walks. */
export interface Stretch {
  /** Hours of the weather's arrays, the last not included. */
  readonly from: number;
  readonly to: number;
  readonly lying: readonly Lying[];
}

/** What of a setting lies by day or by night. */
export function lyingIn(
  setting: Setting,
  part: "day" | "night",
  covers: ReadonlyMap<string, Cover>,
): readonly Lying[] {
  return lyingBy(setting, part).map(({ cover, state }) => ({
    cover: covers.get(cover)!,
    vented: state === "vented",
  }));
}

/**
 * The climate under a sequence of stretches that follow each other without a hole. An hour a logger under the cover has
 * recorded is as recorded: its temperature is that of growing point, leaf and crop height, and the seedbed moves by as much as the
 * recorded air differs from the computed. Light stays computed.
 *
 * @param logged - What a logger under the cover recorded, by hour of the weather's arrays; NaN where it has nothing. [°C]
 * @throws RangeError if the stretches leave a hole: a programmer's mistake.
 * @source equations of effect.ts; the seedbed follows the mean of the last 24 h with half of the hour's departure from it: judgement
 */
export function climate(
  weather: Weather,
  stretches: readonly Stretch[],
  settings: Settings,
  logged: Float64Array | null = null,
): Climate {
  const from = stretches[0]?.from ?? 0;
  const length = (stretches[stretches.length - 1]?.to ?? from) - from;
  const make = (): Float64Array => new Float64Array(length);
  const [growing, seedbed, radiation, frost, frostPromised, heat] = [
    make(),
    make(),
    make(),
    make(),
    make(),
    make(),
  ];
  const warm = make();
  const cooling = make();
  let at = from;
  for (const { from: start, to, lying } of stretches) {
    if (start !== at) throw new RangeError(`stretch begins at hour ${start}, expected ${at}`);
    const through = lightThrough(lying);
    for (; at < to; at++) {
      const i = at - from;
      const air: Air = {
        temperature: weather.temperature[at]!,
        radiation: weather.radiation[at]!,
        wind: weather.wind[at]!,
        cloud: weather.cloud[at]!,
      };
      const calm: Air = { ...air, wind: Math.min(air.wind, settings.calmWind) };
      const bare = air.temperature - cropHeightDrop(calm, settings);
      growing[i] = growingPoint(lying, air, settings);
      radiation[i] = air.radiation * through;
      frost[i] = bare + gain(lying, calm, settings);
      frostPromised[i] = bare + promisedGain(lying, calm, settings);
      heat[i] = leaf(lying, calm, settings);
      warm[i] = air.temperature + gain(lying, air, settings);
      cooling[i] = seedbedCooling(lying, air.radiation, settings);
      const recorded = logged?.[at] ?? Number.NaN;
      if (Number.isNaN(recorded)) continue;
      warm[i] = warm[i]! + recorded - growing[i]!;
      growing[i] = recorded;
      frost[i] = recorded;
      frostPromised[i] = recorded;
      heat[i] = recorded;
    }
  }
  runningSeedbed(warm, cooling, seedbed);
  return { from, growing, seedbed, radiation, frost, frostPromised, heat };
}

function runningSeedbed(warm: Float64Array, cooling: Float64Array, into: Float64Array): void {
  let sum = 0;
  let cooled = 0;
  for (let i = 0; i < warm.length; i++) {
    sum += warm[i]!;
    cooled += cooling[i]!;
    if (i >= 24) {
      sum -= warm[i - 24]!;
      cooled -= cooling[i - 24]!;
    }
    const hours = Math.min(24, i + 1);
    const mean = sum / hours;
    into[i] = mean + (warm[i]! - mean) / 2 - cooled / hours;
  }
}
