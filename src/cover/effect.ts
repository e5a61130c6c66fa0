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

/** Light let through by shade cloth alone. [1] */
function throughShade(lying: readonly Lying[]): number {
  let share = 1;
  for (const { cover } of lying) if (cover.kind === "shade") share *= cover.light;
  return share;
}

/** Light kept off by shade cloth alone. [1] */
const shaded = (lying: readonly Lying[]): number => 1 - throughShade(lying);

/** Gain by day: the strongest layer's, and a share of what each further one would give alone. [°C] */
function dayGain(lying: readonly Lying[], { radiation, wind }: Air, settings: Settings): number {
  const sun = radiation * throughShade(lying);
  let strongest = 0;
  let sum = 0;
  for (const { cover, vented } of lying) {
    const { day } = cover;
    if (day.sun === 0) continue;
    const alone = ((day.sun * sun) / (day.still + day.windy * wind)) * (vented ? settings.ventedDay : 1);
    strongest = Math.max(strongest, alone);
    sum += alone;
  }
  return strongest + settings.furtherLayer * (sum - strongest);
}

/** Gain by night, before dusk is counted: layers add up. [°C] */
function nightGain(lying: readonly Lying[], { wind, cloud }: Air, settings: Settings): number {
  let sum = 0;
  for (const { cover, vented } of lying) {
    const calm = cover.night.clear * (1 - cloud) + cover.night.cloudy * cloud;
    sum += calm * (vented ? settings.ventedNight : 1);
  }
  return sum / (1 + settings.nightWindLoss * wind);
}

/**
 * How much warmer the air under the layers is than outside; what shade cools is counted elsewhere.
 *
 * @returns [°C]
 * @source covers.md section 4: day A·S/(B + D·u), night (clear·(1 − C) + cloudy·C)/(1 + 0.2·u); parameters in data/covers.json;
 * what lies under shade gets only the sun it lets through: judgement
 */
export const gain = (lying: readonly Lying[], air: Air, settings: Settings): number =>
  dayGain(lying, air, settings) + nightGain(lying, air, settings) * darkness(air.radiation, settings);

/**
 * Night gain that may be promised against frost: the credit of each layer, and never more than is expected.
 *
 * @returns [°C]
 * @source covers.md, notes on use: clear night's gain less 1.2 °C, nothing for light cloth and dry film; in data/covers.json
 */
export function promisedGain(lying: readonly Lying[], air: Air, settings: Settings): number {
  const credit = lying.reduce(
    (sum, { cover, vented }) => sum + cover.frostCredit * (vented ? settings.ventedNight : 1),
    0,
  );
  return Math.min(credit, gain(lying, air, settings));
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
