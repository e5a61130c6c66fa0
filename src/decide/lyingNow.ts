import { coverHistory, type Farm, lyingAt, type Piece, type Setting } from "../farm/index.ts";
import type { Instant } from "../quantity/index.ts";
import { fits, spansOf, type Taken } from "./lays.ts";

/**
 * What lies on every tunnel at a moment, and of which pieces: first a wide piece over the neighbours it is said to lie over, then
 * a piece where the list says it lies, then any that is long enough and left. No piece lies more often than it is owned.
 */
export function lyingNow(farm: Farm, on: Instant): ReadonlyMap<string, readonly Taken[]> {
  const settings = new Map(
    farm.tunnels.map((tunnel) => [tunnel.id, lyingAt(coverHistory(farm, tunnel), on)]),
  );
  const lying = new Map(farm.tunnels.map(({ id }): [string, Taken[]] => [id, []]));
  const left = new Map(farm.pieces.map((piece) => [piece, piece.count]));
  const layer = (id: string, cover: string): Setting[number] | undefined =>
    settings.get(id)!.find((each) => each.cover === cover);
  const open = (id: string, cover: string): boolean =>
    layer(id, cover) !== undefined && !lying.get(id)!.some((taken) => taken.cover === cover);
  const lay = (cover: string, piece: Piece | null, over: readonly string[]): void => {
    for (const id of over) lying.get(id)!.push({ ...layer(id, cover)!, piece, over });
    if (piece !== null) left.set(piece, left.get(piece)! - 1);
  };
  for (const piece of farm.pieces) {
    // With more of a kind nobody can say which of the tunnels named share one.
    if (piece.count !== 1) continue;
    const alike = (over: readonly string[]): boolean =>
      over.every(
        (id) =>
          piece.liesOn.includes(id) &&
          open(id, piece.cover) &&
          layer(id, piece.cover)!.state === layer(over[0]!, piece.cover)!.state,
      );
    const over = farm.tunnels
      .flatMap((tunnel) => spansOf(farm, tunnel, piece))
      .filter(alike)
      .sort((a, b) => b.length - a.length)[0];
    if (over !== undefined) lay(piece.cover, piece, over);
  }
  for (const { id } of farm.tunnels)
    for (const { cover } of settings.get(id)!) {
      const said = farm.pieces.find(
        (piece) => piece.cover === cover && left.get(piece)! > 0 && piece.liesOn.includes(id),
      );
      if (said !== undefined && open(id, cover)) lay(cover, said, [id]);
    }
  for (const tunnel of farm.tunnels)
    for (const { cover } of settings.get(tunnel.id)!) {
      if (!open(tunnel.id, cover)) continue;
      const other = farm.pieces.find(
        (piece) => piece.cover === cover && left.get(piece)! > 0 && fits(piece, tunnel),
      );
      lay(cover, other ?? null, [tunnel.id]);
    }
  return lying;
}
