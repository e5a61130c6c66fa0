import { type Farm, lyingBy, type Setting, type Settings } from "../farm/index.ts";
import { addDays, type Instant, instantAt, localDate, localHour } from "../quantity/index.ts";
import type { Weather } from "../weather/index.ts";
import { type Horizon, hourAt } from "./horizon.ts";
import type { OutletTable } from "./successionTable.ts";

/** Noon on the farm's clock: what is cut later has dried, and rain before the noon of the day before as well. [h] judgement */
const NOON = 12;

/** What row cover in the night before a cut leaves of its price, after rain has wet it. */
export interface Dry {
  /** The cut's own interval is that night, or the one before it; before the first, what lies now. */
  readonly night: "own" | "before";
  /** By setting. [0–1] */
  readonly keeps: Float64Array;
}

/** Rain from noon of the day before up to a cut in the morning; none for a later one. [mm] */
export function rainBefore(zone: string, weather: Weather, at: Instant): number {
  if (localHour(zone, at) >= NOON) return 0;
  const noon = hourAt(weather, instantAt(zone, addDays(localDate(zone, at), -1), NOON));
  return weather.rain
    .subarray(Math.max(0, noon), Math.max(0, hourAt(weather, at)))
    .reduce((sum, each) => sum + each, 0);
}

/** Does a setting keep leaves wet after rain: row cover lies by night, and no film over it? */
function staysWet({ covers }: Pick<Farm, "covers">, setting: Setting): boolean {
  const kinds = lyingBy(setting, "night").map(({ cover }) => covers.get(cover)!.kind);
  return kinds.includes("rowCover") && !kinds.includes("film");
}

/**
 * What wet row cover leaves of a cut, by the setting of the night before it; null where no rain wets it, and beyond the time
 * planned, where the next plan will look after it.
 */
export function dryOf(
  farm: Farm,
  { starts, walks }: Horizon,
  options: readonly Setting[],
  { interval, hour, rain }: { readonly interval: number; readonly hour: number; readonly rain: number },
  { wetRain, wetCutLoss }: Pick<Settings, "wetRain" | "wetCutLoss">,
): Dry | null {
  const walk = walks[interval];
  if (walk === undefined || rain < wetRain) return null;
  return {
    night: walk.part === "evening" && hour >= starts[0]! ? "own" : "before",
    keeps: Float64Array.from(options, (setting) => (staysWet(farm, setting) ? 1 - wetCutLoss : 1)),
  };
}

/** Share of its price that a cut keeps. @param before - Setting of the interval before it. @param own - Of its own. */
export const keptDry = ({ dry }: Pick<OutletTable, "dry">, before: number, own: number): number =>
  dry === null ? 1 : dry.keeps[dry.night === "own" ? own : before]!;
