import type { Problem } from "../problem/index.ts";
import type { Metre } from "../quantity/index.ts";
import type { FarmSettings } from "./farmFile.ts";
import { type Spot, shownLength, unknownName } from "./faults.ts";
import { brokenAt, hoopsBroken } from "./noteRules.ts";

/** As much as a cloth stretches: what the plan of covers allows too. [m] */
const STRETCH = 0.05;

/** A cover lies on a tunnel that is known and has hoops. */
export function checkHoops(spot: Spot, tunnelId: string, { tunnels }: FarmSettings): readonly Problem[] {
  const tunnel = tunnels.find(({ id }) => id === tunnelId);
  const ids = tunnels.map(({ id }) => id);
  if (tunnel === undefined) return [unknownName(spot, tunnelId, "a tunnel", ids, "tunnel-unknown")];
  const broken = hoopsBroken(tunnel, tunnelId);
  return broken === null ? [] : [brokenAt(spot, tunnelId, broken)];
}

/** A piece no tunnel is short enough for. Where no tunnel has hoops, all of them count. */
export function checkLength(spot: Spot, length: Metre, { tunnels, units }: FarmSettings): readonly Problem[] {
  const hooped = tunnels.filter(({ hoops }) => hoops !== null);
  const shortest = [...(hooped.length > 0 ? hooped : tunnels)].sort((a, b) => a.length - b.length)[0];
  if (shortest === undefined || length >= shortest.length - STRETCH) return [];
  return [
    {
      ...spot,
      code: "piece-fits-none",
      weight: "needsYou",
      expected: `at least ${shownLength(shortest.length, units)}, the length of ${shortest.id}`,
      received: `${shownLength(length, units)}, which fits no tunnel`,
      hint: "It is not used. Correct it here or the tunnel's length in farm.yaml.",
    },
  ];
}
