import {
  coverHistory,
  type Farm,
  lyingAt,
  type Piece,
  type Tunnel,
  tunnelIds,
  tunnelsCalled,
} from "../farm/index.ts";
import { list, type Problem } from "../problem/index.ts";
import type { Instant, Metre } from "../quantity/index.ts";
import type { FarmSettings } from "./farmFile.ts";
import { type Spot, shown, shownLength, unknownName } from "./faults.ts";
import { brokenAt, hoopsBroken } from "./noteRules.ts";
import type { Draft } from "./successionsFile.ts";

/** As much as a cloth stretches: what the plan of covers allows too. [m] */
const STRETCH = 0.05;

/** A cover lies on a tunnel that is known and has hoops. */
export function checkHoops(spot: Spot, tunnelId: string, { tunnels }: FarmSettings): readonly Problem[] {
  const [tunnel] = tunnelsCalled(tunnels, tunnelId);
  if (tunnel === undefined)
    return [unknownName(spot, tunnelId, "a tunnel", tunnelIds(tunnels), "tunnel-unknown")];
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

/** Tunnels as they are named, each long one as its sections. A name nobody knows stays. */
export const inSections = (
  named: readonly string[],
  { tunnels }: Pick<FarmSettings, "tunnels">,
): string[] => [
  ...new Set(
    named.flatMap((name) => {
      const called = tunnelsCalled(tunnels, name).map(({ id }) => id);
      return called.length > 0 ? called : [name];
    }),
  ),
];

/** How many pieces it takes to lie on these tunnels, when one reaches over so many neighbours. */
function needed(on: readonly string[], spans: number, rows: FarmSettings["sideBySide"]): number {
  // Neighbours that are covered stand in one run; a gap begins another piece.
  const beside = rows.map((row) =>
    row
      .map((tunnel) => (on.includes(tunnel) ? "x" : " "))
      .join("")
      .split(/ +/u)
      .reduce((sum, { length }) => sum + Math.ceil(length / spans), 0),
  );
  const alone = on.filter((tunnel) => !rows.some((row) => row.includes(tunnel)));
  return beside.reduce((sum, pieces) => sum + pieces, alone.length);
}

const many = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;

/** More tunnels than the pieces there are can lie on. */
export function checkCount(
  spot: Spot,
  { liesOn, count, spans }: Draft<Piece>,
  farm: FarmSettings,
): readonly Problem[] {
  const on = inSections(liesOn ?? [], farm);
  if (count === null || spans === null || needed(on, spans, farm.sideBySide) <= count) return [];
  return [
    {
      ...spot,
      code: "pieces-too-few",
      weight: "stops",
      expected:
        spans === 1
          ? `at most ${many(count, "tunnel")}, as many as there are pieces`
          : `tunnels that ${many(count, "piece")} can lie on, each over ${spans} side by side`,
      received:
        on.length > (liesOn ?? []).length
          ? `${shown((liesOn ?? []).join(" "))}, which is ${list(on)}`
          : shown((liesOn ?? []).join(" ")),
      hint: "Raise the count or take a tunnel out.",
    },
  ];
}

/** A piece that is wide enough for more neighbours than there are anywhere. */
export function checkSpans(spot: Spot, spans: number, { sideBySide }: FarmSettings): readonly Problem[] {
  const most = Math.max(1, ...sideBySide.map((row) => row.length));
  if (spans <= most) return [];
  return [
    {
      ...spot,
      code: "piece-spans-none",
      weight: "needsYou",
      expected: `at most ${most}, ${most === 1 ? "since no tunnels stand" : "as many tunnels as stand"} side by side in farm.yaml`,
      received: shown(String(spans)),
      hint: 'It is laid over fewer. Say there which do, like "side by side: [[T1, T2]]".',
    },
  ];
}

/** Covers that can lie on a tunnel: those of which a piece is long enough, and those that lie there already. */
export const layable = (tunnel: Tunnel, farm: Farm, at: Instant): readonly string[] => [
  ...new Set([
    ...farm.pieces.filter(({ length }) => length >= tunnel.length - STRETCH).map(({ cover }) => cover),
    ...lyingAt(coverHistory(farm, tunnel), at).map(({ cover }) => cover),
  ]),
];
