import type { Cover, Setting } from "../farm/index.ts";
import { between } from "../growth/index.ts";
import type { LimitName } from "./outcome.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** The succession has leaves before an hour. */
const up = ({ growing }: SuccessionTable, hour: number): boolean => growing.origin < hour;

const isKind = (
  covers: ReadonlyMap<string, Cover>,
  id: string,
  ...kinds: readonly Cover["kind"][]
): boolean => kinds.includes(covers.get(id)!.kind);

/** Required net is missing. */
export const lacksNet = ({ farm }: Scene, setting: Setting): boolean =>
  !setting.some(({ cover, state }) => state === "on" && isKind(farm.covers, cover, "net"));

/** Row cover or film that makes some crop warmer and yet slower than the bed without it: heat is no brake. */
export function heatSlows(
  { farm, store }: Scene,
  setting: Setting,
  successions: readonly SuccessionTable[],
  from: number,
  to: number,
): boolean {
  const warms = ({ cover }: { readonly cover: string }): boolean =>
    isKind(farm.covers, cover, "rowCover", "film");
  if (!setting.some(warms)) return false;
  const rest = setting.filter((layer) => !warms(layer));
  return successions.some((table) => {
    if (!up(table, to)) return false;
    const { crop } = table.standing;
    const [under, without] = [store.sums(crop, setting), store.sums(crop, rest)];
    return (
      between(under.thermalTime, under.from, from, to) <
      between(without.thermalTime, without.from, from, to) - 1e-9
    );
  });
}

/** Shade cloth under which the day's light falls below the floor of some crop. */
export function isDim(
  { farm, store }: Scene,
  setting: Setting,
  successions: readonly SuccessionTable[],
  from: number,
  to: number,
): boolean {
  if (!setting.some(({ cover }) => isKind(farm.covers, cover, "shade"))) return false;
  return successions.some((table) => {
    if (!up(table, to)) return false;
    const { crop } = table.standing;
    const sums = store.sums(crop, setting);
    return between(sums.light, sums.from, from, to) < crop.lightFloor;
  });
}

/** What a setting breaks in one interval, whatever stands there. */
export interface Breach {
  readonly netMissing: boolean;
  readonly slowedByHeat: boolean;
  /** A side is lifted while the wind is above the limit for cloth. */
  readonly liftedInWind: boolean;
}

/** Names of the limits broken. */
export function limitsBroken({ netMissing, slowedByHeat, liftedInWind }: Breach): readonly LimitName[] {
  return [
    ...(netMissing ? (["net"] as const) : []),
    ...(liftedInWind ? (["wind"] as const) : []),
    ...(slowedByHeat ? (["rowCoverInHeat"] as const) : []),
  ];
}
