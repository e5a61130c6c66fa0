// The equations of a cover as they are written down, one hour and one layer at a time: what the quick form must equal.

import type { Climate, Lying, Stretch } from "../../src/cover/index.ts";
import type { Settings } from "../../src/farm/index.ts";
import type { Weather } from "../../src/weather/index.ts";
import type { Hour } from "./oneHour.ts";

const darkness = (radiation: number, { dusk }: Settings): number => Math.max(0, 1 - radiation / dusk);

function lightThrough(lying: readonly Lying[]): number {
  return lying.reduce((share, { cover }) => share * cover.light, 1);
}

function throughShade(lying: readonly Lying[]): number {
  let share = 1;
  for (const { cover } of lying) if (cover.kind === "shade") share *= cover.light;
  return share;
}

const shaded = (lying: readonly Lying[]): number => 1 - throughShade(lying);

function dayGain(lying: readonly Lying[], { radiation, wind }: Hour, settings: Settings): number {
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

function nightGain(lying: readonly Lying[], { wind, cloud }: Hour, settings: Settings): number {
  let sum = 0;
  for (const { cover, vented } of lying) {
    const calm = cover.night.clear * (1 - cloud) + cover.night.cloudy * cloud;
    sum += calm * (vented ? settings.ventedNight : 1);
  }
  return sum / (1 + settings.nightWindLoss * wind);
}

const gain = (lying: readonly Lying[], air: Hour, settings: Settings): number =>
  dayGain(lying, air, settings) + nightGain(lying, air, settings) * darkness(air.radiation, settings);

function promisedGain(lying: readonly Lying[], air: Hour, settings: Settings): number {
  const credit = lying.reduce(
    (sum, { cover, vented }) => sum + cover.frostCredit * (vented ? settings.ventedNight : 1),
    0,
  );
  return Math.min(credit, gain(lying, air, settings));
}

function growingPoint(lying: readonly Lying[], air: Hour, settings: Settings): number {
  return air.temperature + gain(lying, air, settings) - settings.shadeOnPace * shaded(lying) * air.radiation;
}

function leaf(lying: readonly Lying[], air: Hour, settings: Settings): number {
  return air.temperature + gain(lying, air, settings) - settings.shadeOnLeaf * shaded(lying) * air.radiation;
}

function seedbedCooling(lying: readonly Lying[], radiation: number, settings: Settings): number {
  return settings.shadeOnSoil * shaded(lying) * radiation;
}

function cropHeightDrop({ radiation, wind, cloud }: Hour, settings: Settings): number {
  const calm = Math.max(0, 1 - wind / settings.depressionEndsAtWind);
  return settings.cropHeightDepression * (1 - cloud) * calm * darkness(radiation, settings);
}

export function plainClimate(
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
      const air: Hour = {
        temperature: weather.temperature[at]!,
        radiation: weather.radiation[at]!,
        wind: weather.wind[at]!,
        cloud: weather.cloud[at]!,
      };
      const calm: Hour = { ...air, wind: Math.min(air.wind, settings.calmWind) };
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
