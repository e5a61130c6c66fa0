import type { Change, Outcome, TunnelPlan } from "../../../src/decide/index.ts";
import { catalogue, type Farm, type Piece, type Setting, type Tunnel } from "../../../src/farm/index.ts";
import { sample } from "../sample.ts";

export interface Asked {
  readonly tunnel: Tunnel;
  readonly from: Setting;
  readonly to: Setting;
  readonly pieces?: readonly Piece[];
}

/** The sample with other tunnels, each with one change at one walk and the catalogue's covers. */
export function planned(walk: number, asked: readonly Asked[], changedFarm: Partial<Farm> = {}): Outcome {
  const outcome = sample({ covers: catalogue().covers, crops: catalogue().crops, ...changedFarm });
  const [plan] = outcome.tunnels;
  const [like] = plan!.changes;
  const farm = { ...outcome.farm, tunnels: [...outcome.farm.tunnels, ...asked.map(({ tunnel }) => tunnel)] };
  return {
    ...outcome,
    farm,
    tunnels: asked.map(({ tunnel, from, to, pieces = [] }): TunnelPlan => {
      const change: Change = { ...like!, walk: outcome.walks[walk]!, tunnel, from, to, pieces };
      return {
        ...plan!,
        tunnel,
        now: from,
        settings: [from, to],
        choice: outcome.walks.map((_, index) => (index < walk ? 0 : 1)),
        changes: [change],
      };
    }),
  };
}

export const tunnelNamed = (id: string, name: string): Tunnel => ({ ...sample().farm.tunnels[0]!, id, name });
