import { type Farm, type Piece, type Setting, settingKey, type Tunnel } from "../farm/index.ts";
import type { TunnelNow } from "./tunnelNow.ts";

/** A piece as it lies on a tunnel. */
export interface Taken {
  readonly cover: string;
  /** null: the list of pieces knows none of what lies there. */
  readonly piece: Piece | null;
  /** All tunnels it lies over when it is wide enough for neighbours, else the tunnel alone. */
  readonly over: readonly string[];
}

/** A setting with the pieces it takes: index into the settings. */
export interface Lay {
  readonly setting: number;
  readonly taken: readonly Taken[];
}

export const fits = (piece: Piece, tunnel: Tunnel): boolean => piece.length >= tunnel.length - 0.05;

/** The piece that lies on a tunnel as a cover now; null when the list of pieces knows none. */
export function pieceNow(farm: Farm, tunnel: Tunnel, cover: string): Piece | null {
  const owned = farm.pieces.filter((piece) => piece.cover === cover);
  return (
    owned.find((piece) => piece.liesOn.includes(tunnel.id)) ??
    owned.find((piece) => fits(piece, tunnel)) ??
    null
  );
}

/** Neighbours, a tunnel among them, that one piece can lie over together. */
function spansOf(farm: Farm, tunnel: Tunnel, piece: Piece): readonly (readonly string[])[] {
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

const takenKey = ({ piece, over }: Taken): string => `${piece?.id ?? ""} ${over.join(" ")}`;

/** Every way a tunnel's cover can be laid with the pieces the farm owns; what lies now comes first. */
function waysOf(farm: Farm, { tunnel, now }: TunnelNow, cover: string): readonly Taken[] {
  const lying = now.some((layer) => layer.cover === cover) ? pieceNow(farm, tunnel, cover) : undefined;
  const alone = (piece: Piece | null): Taken => ({ cover, piece, over: [tunnel.id] });
  const beside = (piece: Piece): readonly Taken[] =>
    spansOf(farm, tunnel, piece).map((over) => ({ cover, piece, over }));
  const first = lying === undefined ? [] : lying === null ? [alone(null)] : nowOver(lying, alone, beside);
  const others = farm.pieces
    .filter((piece) => piece.cover === cover && fits(piece, tunnel))
    .sort((a, b) => a.length - b.length)
    .flatMap((piece) => [alone(piece), ...beside(piece)]);
  return [...new Map([...first, ...others].map((taken) => [takenKey(taken), taken])).values()];
}

/** A wide piece lies over the neighbours that are said to lie under it. */
function nowOver(
  piece: Piece,
  alone: (piece: Piece) => Taken,
  beside: (piece: Piece) => readonly Taken[],
): readonly Taken[] {
  const under = beside(piece)
    .filter(({ over }) => over.every((id) => piece.liesOn.includes(id)))
    .sort((a, b) => b.over.length - a.over.length)[0];
  return [piece.count === 1 && under !== undefined ? under : alone(piece)];
}

/** Every setting with every choice of pieces for it, what lies now first; a setting no piece is owned for is left out. */
export function laysOf(farm: Farm, at: TunnelNow, settings: readonly Setting[]): readonly Lay[] {
  const ways = new Map<string, readonly Taken[]>();
  const of = (cover: string): readonly Taken[] => {
    const known = ways.get(cover);
    if (known !== undefined) return known;
    const found = waysOf(farm, at, cover);
    ways.set(cover, found);
    return found;
  };
  const now = settingKey(at.now);
  return settings
    .flatMap((setting, index): readonly Lay[] =>
      setting
        .reduce<readonly (readonly Taken[])[]>(
          (lists, { cover }) => lists.flatMap((list) => of(cover).map((taken) => [...list, taken])),
          [[]],
        )
        .map((taken) => ({ setting: index, taken })),
    )
    .sort(
      (a, b) =>
        Number(settingKey(settings[b.setting]!) === now) - Number(settingKey(settings[a.setting]!) === now),
    );
}
