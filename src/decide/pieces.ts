import type { Farm, Piece, Setting, Tunnel } from "../farm/index.ts";
import type { Scene } from "./scene.ts";
import type { TunnelNow } from "./tunnelNow.ts";

/** Count of each piece in use in each interval. */
export type Used = Map<Piece, Int32Array>;

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

/** For each cover the one piece a tunnel may use: what lies on it, else the fitting one that is free longest, else shortest. */
export function piecesFor(
  scene: Scene,
  at: TunnelNow,
  used: Used,
): ReadonlyMap<string, { piece: Piece; free: (i: number) => boolean }> {
  const { farm, horizon } = scene;
  const found = new Map<string, { piece: Piece; free: (i: number) => boolean }>();
  for (const { cover } of at.now) {
    const piece = pieceNow(farm, at.tunnel, cover);
    if (piece !== null) found.set(cover, { piece, free: (i) => used.get(piece)![i]! < piece.count });
  }
  const candidates = farm.pieces
    .filter((piece) => fits(piece, at.tunnel) && !found.has(piece.cover))
    .map((piece) => {
      const taken = used.get(piece)!;
      const free = (i: number): boolean => taken[i]! < piece.count;
      const intervals = horizon.walks.filter(({ index }) => free(index)).length;
      return { piece, free, intervals };
    })
    .filter(({ intervals }) => intervals > 0)
    .sort((a, b) => b.intervals - a.intervals || a.piece.length - b.piece.length);
  for (const { piece, free } of candidates)
    if (!found.has(piece.cover)) found.set(piece.cover, { piece, free });
  return found;
}

/** What a schedule lays out. */
export interface Laid {
  readonly choice: readonly number[];
  readonly settings: readonly Setting[];
  readonly pieces: ReadonlyMap<string, Piece>;
}

/** Pieces a schedule holds, added to or taken from what is in use. A rhythm keeps its piece by day too. */
export function hold(used: Used, planned: Laid, sign: 1 | -1): void {
  planned.choice.forEach((s, i) => {
    for (const { cover } of planned.settings[s]!) {
      const piece = planned.pieces.get(cover);
      if (piece !== undefined) used.get(piece)![i]! += sign;
    }
  });
}
