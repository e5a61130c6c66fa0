import {
  type Air,
  cropHeightDrop as cropHeightDropOf,
  gain as gainOf,
  growingPoint as growingPointOf,
  type Lying,
  layersOf,
  leaf as leafOf,
  promisedGain as promisedGainOf,
} from "../../src/cover/index.ts";
import type { Settings } from "../../src/farm/index.ts";

/** The air around one hour. */
export type Hour = { readonly [K in keyof Air]: number };

/** A stretch of air of these hours. */
export const airOf = (hours: readonly Hour[]): Air => ({
  temperature: Float64Array.from(hours, ({ temperature }) => temperature),
  radiation: Float64Array.from(hours, ({ radiation }) => radiation),
  wind: Float64Array.from(hours, ({ wind }) => wind),
  cloud: Float64Array.from(hours, ({ cloud }) => cloud),
});

type OneHour = (lying: readonly Lying[], hour: Hour, settings: Settings) => number;
const inOneHour =
  (equation: typeof gainOf): OneHour =>
  (lying, hour, settings) =>
    equation(layersOf(lying, settings), airOf([hour]), 0);

export const gain: OneHour = inOneHour(gainOf);
export const promisedGain: OneHour = inOneHour(promisedGainOf);
export const growingPoint: OneHour = inOneHour(growingPointOf);
export const leaf: OneHour = inOneHour(leafOf);
export const cropHeightDrop = (hour: Hour, settings: Settings): number =>
  cropHeightDropOf(airOf([hour]), 0, settings);
export const lightThrough = (lying: readonly Lying[], settings: Settings): number =>
  layersOf(lying, settings).light;
export const seedbedCooling = (lying: readonly Lying[], radiation: number, settings: Settings): number =>
  layersOf(lying, settings).cooling.seedbed * radiation;
