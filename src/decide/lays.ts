import type { Farm, Layer, Piece, Setting, Tunnel } from "../farm/index.ts";
import { settingKey } from "../farm/index.ts";
import type { TunnelNow } from "./tunnelNow.ts";

/** A cloth as it lies on a tunnel, and what of. */
export interface Taken extends Layer {
  /** null: the list of pieces knows none for what lies there. */
  readonly piece: Piece | null;
  /** All tunnels it lies over when it is wide enough for neighbours, else the tunnel alone. */
  readonly over: readonly string[];
}

/** A setting with the pieces it takes: index into the settings. */
export interface Lay {
  readonly setting: number;
  readonly taken: readonly Taken[];
}

type Way = Pick<Taken, "piece" | "over">;

export const fits = (piece: Piece, tunnel: Tunnel): boolean => piece.length >= tunnel.length - 0.05;

/** Neighbours, a tunnel among them, that one piece can lie over together. */
export function spansOf(farm: Farm, tunnel: Tunnel, piece: Piece): readonly (readonly string[])[] {
  const long = (id: string): boolean => {
    const other = farm.tunnels.find((each) => each.id === id);
    return other !== undefined && other.hoops !== null && fits(piece, other);
  };
  return farm.sideBySide.flatMap((row) =>
    row.flatMap((_, from) =>
      Array.from({ length: piece.spans - 1 }, (__, more) => row.slice(from, from + 2 + more)).filter(
        (over, more) => over.length === more + 2 && over.includes(tunnel.id) && over.every(long),
      ),
    ),
  );
}

const wayKey = ({ piece, over }: Way): string => `${piece?.id ?? ""} ${over.join(" ")}`;

/** Every way a tunnel's cover can be laid with the pieces the farm owns; what lies now comes first. */
function waysOf(farm: Farm, { tunnel, taken }: TunnelNow, cover: string): readonly Way[] {
  const lying = taken.filter((each) => each.cover === cover).map(({ piece, over }) => ({ piece, over }));
  const others = farm.pieces
    .filter((piece) => piece.cover === cover && fits(piece, tunnel))
    .sort((a, b) => a.length - b.length)
    .flatMap((piece) => [[tunnel.id], ...spansOf(farm, tunnel, piece)].map((over) => ({ piece, over })));
  return [...new Map([...lying, ...others].map((way) => [wayKey(way), way])).values()];
}

/** Every setting with every choice of pieces for it, what lies now first; a setting no piece is owned for is left out. */
export function laysOf(farm: Farm, at: TunnelNow, settings: readonly Setting[]): readonly Lay[] {
  const ways = new Map<string, readonly Way[]>();
  const of = (cover: string): readonly Way[] => {
    const known = ways.get(cover);
    if (known !== undefined) return known;
    const found = waysOf(farm, at, cover);
    ways.set(cover, found);
    return found;
  };
  const isNow = ({ setting }: Lay): boolean => settingKey(settings[setting]!) === settingKey(at.now);
  return settings
    .flatMap((setting, index): readonly Lay[] =>
      setting
        .reduce<readonly (readonly Taken[])[]>(
          (lists, layer) =>
            lists.flatMap((list) => of(layer.cover).map((way) => [...list, { ...layer, ...way }])),
          [[]],
        )
        .map((taken) => ({ setting: index, taken })),
    )
    .sort((a, b) => Number(isNow(b)) - Number(isNow(a)));
}
