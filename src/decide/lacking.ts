import type { Cover } from "../farm/index.ts";
import type { NoCloth } from "../watch/index.ts";
import { fits } from "./lays.ts";
import { type Planned, takenIn } from "./planned.ts";
import type { Scene } from "./scene.ts";

/** Cloth that helps against frost, and against heat. */
export const WARMS: readonly Cover["kind"][] = ["rowCover", "film"];
export const COOLS: readonly Cover["kind"][] = ["shade"];

/**
 * Why a tunnel has none of some kinds of cloth on in an interval of the plans; null when it has, or when one is free that the
 * plan does not want.
 */
export function noCloth(
  { farm, horizon }: Scene,
  plans: readonly Planned[],
  { at: { tunnel }, problem, schedule, choice }: Planned,
  i: number,
  kinds: readonly Cover["kind"][],
): NoCloth | null {
  const isOne = (cover: string): boolean => kinds.includes(farm.covers.get(cover)!.kind);
  if (problem.settings[choice[i]!]!.some(({ cover }) => isOne(cover))) return null;
  const owned = farm.pieces.filter(({ cover }) => isOne(cover));
  if (owned.length === 0) return "none";
  const long = owned.filter((piece) => fits(piece, tunnel));
  if (long.length === 0) return "tooShort";
  const { lays, possible, moves, parts } = problem;
  const helpful = lays.flatMap(({ taken }, l) => (taken.some(({ cover }) => isOne(cover)) ? [l] : []));
  if (!helpful.some((l) => possible[i * lays.length + l])) return "kept";
  const inUse = (piece: (typeof long)[number]): number =>
    plans.filter((other) =>
      takenIn(other, i).some((taken) => taken.piece === piece && taken.over[0] === other.at.tunnel.id),
    ).length;
  if (long.every((piece) => inUse(piece) >= piece.count)) return "inUse";
  const { walk: most } = farm.labour;
  const least = Math.min(...helpful.map((l) => moves[parts[i]!].minutes[schedule[i]! * lays.length + l]!));
  if (most !== null && least > most) return "minutes";
  return horizon.walks[i]!.tooWindy ? "wind" : null;
}
