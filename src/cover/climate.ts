import { type Cover, lyingBy, type Setting, type Settings } from "../farm/index.ts";
import { whenAsked } from "../quantity/index.ts";
import type { Weather } from "../weather/index.ts";
import {
  cropHeightDrop,
  gain,
  growingGain,
  type Layers,
  type Lying,
  layersOf,
  leafGain,
  promisedGain,
} from "./effect.ts";

/** Hour by hour under what lies; arrays run from hour `from` of the weather's own arrays. Each is computed when it is first asked for. */
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

/** A stretch with what its layers come to. */
interface Under extends Pick<Stretch, "from" | "to"> {
  readonly layers: Layers;
}

/** @throws RangeError if the stretches leave a hole. */
function underEach(stretches: readonly Stretch[], settings: Settings): readonly Under[] {
  const known = new Map<readonly Lying[], Layers>();
  let at = stretches[0]?.from ?? 0;
  return stretches.map(({ from, to, lying }) => {
    if (from !== at) throw new RangeError(`stretch begins at hour ${from}, expected ${at}`);
    at = to;
    const layers = known.get(lying) ?? layersOf(lying, settings);
    known.set(lying, layers);
    return { from, to, layers };
  });
}

/** What an equation makes of every hour of one stretch; each has a loop of its own, so that an hour costs no call. */
type Fill = (row: Float64Array, stretch: Under) => void;

/**
 * The climate under a sequence of stretches that follow each other without a hole. An hour a logger under the cover has
 * recorded is as recorded: its temperature is that of growing point, leaf and crop height, and the seedbed moves by as much as the
 * recorded air differs from the computed. Light stays computed.
 *
 * @param logged - What a logger under the cover recorded, by hour of the weather's arrays; NaN where it has nothing. [°C]
 * @throws RangeError if the stretches leave a hole: a programmer's mistake.
 * @source equations of effect.ts
 */
export function climate(
  weather: Weather,
  stretches: readonly Stretch[],
  settings: Settings,
  logged: Float64Array | null = null,
): Climate {
  const first = stretches[0]?.from ?? 0;
  const end = stretches.at(-1)?.to ?? first;
  const under = underEach(stretches, settings);
  const { temperature: air, radiation: sun, wind, cloud } = weather;
  const { calmWind } = settings;
  const row = (fill: Fill): Float64Array => {
    const values = new Float64Array(end - first);
    for (const stretch of under) fill(values, stretch);
    return values;
  };
  const felt = (fill: Fill): Float64Array => {
    const values = row(fill);
    logged?.subarray(first, end).forEach((recorded, i) => {
      if (!Number.isNaN(recorded)) values[i] = recorded;
    });
    return values;
  };
  const rows: Climate = whenAsked({
    from: () => first,
    growing: () =>
      felt((into, { from, to, layers }) => {
        for (let i = from; i < to; i++)
          into[i - first] = air[i]! + growingGain(layers, sun[i]!, wind[i]!, cloud[i]!);
      }),
    radiation: () =>
      row((into, { from, to, layers: { light } }) => {
        for (let i = from; i < to; i++) into[i - first] = sun[i]! * light;
      }),
    frost: () =>
      felt((into, { from, to, layers }) => {
        for (let i = from; i < to; i++) {
          const calm = Math.min(wind[i]!, calmWind);
          const drop = cropHeightDrop(sun[i]!, calm, cloud[i]!, settings);
          into[i - first] = air[i]! - drop + gain(layers, sun[i]!, calm, cloud[i]!);
        }
      }),
    frostPromised: () =>
      felt((into, { from, to, layers }) => {
        for (let i = from; i < to; i++) {
          const calm = Math.min(wind[i]!, calmWind);
          const drop = cropHeightDrop(sun[i]!, calm, cloud[i]!, settings);
          into[i - first] = air[i]! - drop + promisedGain(layers, sun[i]!, calm, cloud[i]!);
        }
      }),
    heat: () =>
      felt((into, { from, to, layers }) => {
        for (let i = from; i < to; i++)
          into[i - first] = air[i]! + leafGain(layers, sun[i]!, Math.min(wind[i]!, calmWind), cloud[i]!);
      }),
    seedbed: () => {
      const { growing } = rows;
      const warm = row((into, { from, to, layers }) => {
        for (let i = from; i < to; i++)
          into[i - first] = growing[i - first]! + layers.cooling.growing * sun[i]!;
      });
      const cooling = row((into, { from, to, layers }) => {
        for (let i = from; i < to; i++) into[i - first] = layers.cooling.seedbed * sun[i]!;
      });
      return seedbed(warm, cooling);
    },
  });
  return rows;
}

/**
 * The seedbed follows the mean of the last 24 h with half of the hour's departure from it.
 *
 * @param warm - The air under the layers, shade's cooling not counted. [°C]
 * @param cooling - What shade takes from the seedbed in the hour. [°C]
 * @source judgement
 */
function seedbed(warm: Float64Array, cooling: Float64Array): Float64Array {
  const row = new Float64Array(warm.length);
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
    row[i] = mean + (warm[i]! - mean) / 2 - cooled / hours;
  }
  return row;
}
