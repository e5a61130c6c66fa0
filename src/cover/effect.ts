import type { Cover, Settings } from "../farm/index.ts";

/** A cloth lying over the crop during an interval; a rhythm has become "on" or is absent. */
export interface Lying {
  readonly cover: Cover;
  readonly vented: boolean;
}

/** What all that lies comes to, whatever the hour: worked out once, so that an hour costs a few sums. */
export interface Layers {
  /** Share of light let through. [1] */
  readonly light: number;
  /** Of each layer that gains by day; what shade over it and a lifted side take is taken from its `sun`. [1], [W/m²/K], [W/m²/K per m/s] */
  readonly day: readonly Cover["day"][];
  /** Share of its own gain that each layer but the strongest adds by day. [1] */
  readonly furtherLayer: number;
  /** Gain by night in calm air, the share of it lost per wind, and the radiation at which it is gone. [°C], [1/(m/s)], [W/m²] */
  readonly night: {
    readonly clear: number;
    readonly cloudy: number;
    readonly windLoss: number;
    readonly dusk: number;
  };
  /** Night gain that may be promised against frost. [°C] */
  readonly credit: number;
  /** What shade takes, per radiation in the open: from the growing point, the leaf, the seedbed's day. [°C per W/m²] */
  readonly cooling: { readonly growing: number; readonly leaf: number; readonly seedbed: number };
}

/**
 * Light multiplies from layer to layer, gains by night and credits add up, and what lies under shade gets only the sun it lets through.
 *
 * @source parameters leafpaceCoverFit; how layers go together: judgement; cooling of the growing point with a spread of a factor two
 */
export function layersOf(lying: readonly Lying[], settings: Settings): Layers {
  const { ventedDay, ventedNight, furtherLayer, nightWindLoss: windLoss, dusk } = settings;
  let [light, throughShade, clear, cloudy, credit] = [1, 1, 0, 0, 0];
  let learned = 1;
  for (const { cover, vented } of lying) {
    const left = vented ? ventedNight : 1;
    light *= cover.light;
    if (cover.kind === "shade") {
      throughShade *= cover.light;
      learned = cover.learned?.cooling ?? learned;
    }
    clear += cover.night.clear * left;
    cloudy += cover.night.cloudy * left;
    credit += cover.frostCredit * left;
  }
  const day = lying
    .filter(({ cover }) => cover.day.sun !== 0)
    .map(({ cover: { day }, vented }) => ({
      ...day,
      sun: day.sun * throughShade * (vented ? ventedDay : 1),
    }));
  const shaded = 1 - throughShade;
  const cooling = {
    growing: settings.shadeOnPace * shaded * learned,
    leaf: settings.shadeOnLeaf * shaded,
    seedbed: settings.shadeOnSoil * shaded,
  };
  return { light, day, furtherLayer, night: { clear, cloudy, windLoss, dusk }, credit, cooling };
}

/** 1 in the dark, 0 from dusk's radiation on, so that day passes into night without a step. */
const darkness = (radiation: number, dusk: number): number => (radiation < dusk ? 1 - radiation / dusk : 0);

/** Gain by day: the strongest layer's, and a share of what each further one would give alone. [°C] */
function dayGain({ day, furtherLayer }: Layers, radiation: number, wind: number): number {
  let strongest = 0;
  let sum = 0;
  for (let i = 0; i < day.length; i++) {
    const { sun, still, windy } = day[i]!;
    const alone = (sun * radiation) / (still + windy * wind);
    if (alone > strongest) strongest = alone;
    sum += alone;
  }
  return strongest + furtherLayer * (sum - strongest);
}

/** Gain by night, before dusk is counted. [°C] */
const nightGain = ({ night: { clear, cloudy, windLoss } }: Layers, wind: number, cloud: number): number =>
  (clear * (1 - cloud) + cloudy * cloud) / (1 + windLoss * wind);

/**
 * How much warmer the air under the layers is than outside; what shade cools is counted elsewhere.
 *
 * @param radiation - In the open, here and below. [W/m²]
 * @param wind - At 2 m, here and below. [m/s]
 * @param cloud - 0 clear to 1 overcast, here and below. [1]
 * @returns [°C]
 * @source leafpaceCoverFit: day A·S/(B + D·u), night (clear·(1 − C) + cloudy·C)/(1 + 0.2·u); parameters in data/covers.json
 */
export function gain(layers: Layers, radiation: number, wind: number, cloud: number): number {
  const byDay = radiation === 0 ? 0 : dayGain(layers, radiation, wind);
  const dark = darkness(radiation, layers.night.dusk);
  return dark === 0 ? byDay : byDay + dark * nightGain(layers, wind, cloud);
}

/**
 * Night gain that may be promised against frost: the credit of each layer, and never more than is expected.
 *
 * @returns [°C]
 * @source leafpaceCoverFit: clear night's gain less 1.2 °C, nothing for light cloth and dry film; in data/covers.json
 */
export const promisedGain = (layers: Layers, radiation: number, wind: number, cloud: number): number =>
  Math.min(layers.credit, gain(layers, radiation, wind, cloud));

/** How much warmer than the air outside the growing point feels, for thermal time; negative under shade. [°C] */
export const growingGain = (layers: Layers, radiation: number, wind: number, cloud: number): number =>
  gain(layers, radiation, wind, cloud) - layers.cooling.growing * radiation;

/** How much warmer than the air outside the leaf is, for heat; negative under shade. [°C] */
export const leafGain = (layers: Layers, radiation: number, wind: number, cloud: number): number =>
  gain(layers, radiation, wind, cloud) - layers.cooling.leaf * radiation;

/**
 * How much colder than the station the uncovered crop stands on a clear night, fading with cloud and wind.
 *
 * @returns Never negative. [°C]
 * @source commonPractice: about 3 °C on clear calm nights, memory; gone at 3 m/s
 */
export function cropHeightDrop(radiation: number, wind: number, cloud: number, settings: Settings): number {
  const dark = darkness(radiation, settings.dusk);
  if (dark === 0) return 0;
  const calm = Math.max(0, 1 - wind / settings.depressionEndsAtWind);
  return settings.cropHeightDepression * (1 - cloud) * calm * dark;
}
