import {
  cropHeightDrop as cropHeightDropOf,
  gain as gainOf,
  growingGain,
  type Layers,
  type Lying,
  layersOf,
  leafGain,
  promisedGain as promisedGainOf,
} from "../../src/cover/index.ts";
import type { Settings } from "../../src/farm/index.ts";

/** The air around one hour. */
export interface Hour {
  /** [°C] */
  readonly temperature: number;
  /** In the open. [W/m²] */
  readonly radiation: number;
  /** At 2 m. [m/s] */
  readonly wind: number;
  /** 0 clear to 1 overcast. [1] */
  readonly cloud: number;
}

type OneHour = (lying: readonly Lying[], hour: Hour, settings: Settings) => number;
type Equation = (layers: Layers, radiation: number, wind: number, cloud: number) => number;

const inOneHour =
  (equation: Equation): OneHour =>
  (lying, { radiation, wind, cloud }, settings) =>
    equation(layersOf(lying, settings), radiation, wind, cloud);

export const gain: OneHour = inOneHour(gainOf);
export const promisedGain: OneHour = inOneHour(promisedGainOf);
export const growingPoint: OneHour = (lying, hour, settings) =>
  hour.temperature + inOneHour(growingGain)(lying, hour, settings);
export const leaf: OneHour = (lying, hour, settings) =>
  hour.temperature + inOneHour(leafGain)(lying, hour, settings);
export const cropHeightDrop = ({ radiation, wind, cloud }: Hour, settings: Settings): number =>
  cropHeightDropOf(radiation, wind, cloud, settings);
export const lightThrough = (lying: readonly Lying[], settings: Settings): number =>
  layersOf(lying, settings).light;
export const seedbedCooling = (lying: readonly Lying[], radiation: number, settings: Settings): number =>
  layersOf(lying, settings).cooling.seedbed * radiation;
