import type { Cover, Settings } from "../farm/index.ts";

/** A cloth lying over the crop during an interval; a rhythm has become "on" or is absent. */
export interface Lying {
  readonly cover: Cover;
  readonly vented: boolean;
}

/** The air around an hour. */
export interface Air {
  /** [°C] */
  readonly temperature: number;
  /** In the open. [W/m²] */
  readonly radiation: number;
  /** At 2 m. [m/s] */
  readonly wind: number;
  /** 0 clear to 1 overcast. [1] */
  readonly cloud: number;
}

/** 1 in the dark, 0 from dusk's radiation on, so that day passes into night without a step. */
const darkness = (radiation: number, { dusk }: Settings): number => Math.max(0, 1 - radiation / dusk);

/** Share of light let through by all that lies. [1] @source covers.md section 4, layers multiplied: judgement */
export function lightThrough(lying: readonly Lying[]): number {
  return lying.reduce((share, { cover }) => share * cover.light, 1);
}

/** Light kept off by shade cloth alone. [1] */
const shaded = (lying: readonly Lying[]): number =>
  1 -
  lying.filter(({ cover }) => cover.kind === "shade").reduce((share, { cover }) => share * cover.light, 1);

/**
 * How much warmer the air under the layers is than outside, shade left out. Layers add up.
 *
 * @returns [°C]
 * @source covers.md section 4: day A·S/(B + D·u), night (clear·(1 − C) + cloudy·C)/(1 + 0.2·u); parameters in data/covers.json
 */
export function gain(lying: readonly Lying[], { radiation, wind, cloud }: Air, settings: Settings): number {
  const dark = darkness(radiation, settings);
  return lying.reduce((sum, { cover, vented }) => {
    const { sun, still, windy } = cover.day;
    const day = sun === 0 ? 0 : (sun * radiation) / (still + windy * wind);
    const night =
      ((cover.night.clear * (1 - cloud) + cover.night.cloudy * cloud) / (1 + settings.nightWindLoss * wind)) *
      dark;
    return sum + day * (vented ? settings.ventedDay : 1) + night * (vented ? settings.ventedNight : 1);
  }, 0);
}

/** Temperature the growing point feels, for thermal time. [°C] Shade's share is a judgement with a spread of a factor two. */
export function growingPoint(lying: readonly Lying[], air: Air, settings: Settings): number {
  return air.temperature + gain(lying, air, settings) - settings.shadeOnPace * shaded(lying) * air.radiation;
}

/** Temperature of the leaf, for heat. [°C] */
export function leaf(lying: readonly Lying[], air: Air, settings: Settings): number {
  return air.temperature + gain(lying, air, settings) - settings.shadeOnLeaf * shaded(lying) * air.radiation;
}

/** Day's mean cooling of the seedbed by shade. [°C] @param radiation - Mean of 24 h in the open. [W/m²] */
export function seedbedCooling(lying: readonly Lying[], radiation: number, settings: Settings): number {
  return settings.shadeOnSoil * shaded(lying) * radiation;
}

/**
 * How much colder than the station the uncovered crop stands on a clear night, fading with cloud and wind.
 *
 * @returns Never negative. [°C]
 * @source covers.md section 4: about 3 °C on clear calm nights, memory; gone at 3 m/s
 */
export function cropHeightDrop({ radiation, wind, cloud }: Air, settings: Settings): number {
  const calm = Math.max(0, 1 - wind / settings.depressionEndsAtWind);
  return settings.cropHeightDepression * (1 - cloud) * calm * darkness(radiation, settings);
}
