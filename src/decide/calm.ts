import { type Setting, settingKey, type Tunnel } from "../farm/index.ts";
import type { Scene } from "./scene.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";
import { wageOf } from "./wage.ts";

/** The sheet given out says nothing of a walk. */
export const FREE = -2;
/** It leaves the tunnel as it is at a walk. */
export const STAYS = -1;

/** What the sheet given out asks of one tunnel, and what it costs to ask for something else. */
export interface Calm {
  /** Worth of one changed instruction. */
  readonly price: number;
  /** By walk: index of the setting that is to lie from it on; more than any index: one that cannot be had; FREE, STAYS. */
  readonly entered: Int32Array;
}

/** The price of a changed instruction: as the farm states it, else by the minutes it takes to spread the word. */
export const calmPrice = (scene: Pick<Scene, "farm" | "settings">): number =>
  scene.farm.labour.changedInstruction ?? (scene.settings.changedInstruction * wageOf(scene)) / 60;

/** What the sheet given out asks of a tunnel at each walk; null: nothing. */
export function calmOf(
  { issued, farm, settings, horizon }: Pick<Scene, "issued" | "farm" | "settings" | "horizon">,
  { id }: Tunnel,
  options: readonly Setting[],
): Calm | null {
  if (issued === null || !issued.tunnels.includes(id)) return null;
  const said = new Map(issued.walks.map(({ at, date, part }) => [`${date} ${part}`, at]));
  const changes = new Map(
    issued.changes.filter(({ tunnel }) => tunnel === id).map(({ walk, to }) => [walk.at, settingKey(to)]),
  );
  const entered = Int32Array.from(horizon.walks, ({ date, part }) => {
    const at = said.get(`${date} ${part}`);
    if (at === undefined) return FREE;
    const key = changes.get(at);
    if (key === undefined) return STAYS;
    const index = options.findIndex((setting) => settingKey(setting) === key);
    return index < 0 ? options.length : index;
  });
  return entered.every((each) => each === FREE) ? null : { price: calmPrice({ farm, settings }), entered };
}

/**
 * Is a move another instruction than the sheet's? Where the sheet has a setting entered, that setting counts, whatever lay
 * there before; where it has none, any move does.
 */
export function differs(
  { calm, lays }: Pick<TunnelProblem, "calm" | "lays">,
  walk: number,
  from: number,
  to: number,
): boolean {
  const asked = calm?.entered[walk] ?? FREE;
  return asked === FREE ? false : asked === STAYS ? from !== to : lays[to]!.setting !== asked;
}

/** What a move at a walk costs for differing from the sheet given out. */
export const calmCost = (
  problem: Pick<TunnelProblem, "calm" | "lays">,
  walk: number,
  from: number,
  to: number,
): number => (differs(problem, walk, from, to) ? problem.calm!.price : 0);
