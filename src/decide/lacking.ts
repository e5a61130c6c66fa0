import type { Cover } from "../farm/index.ts";
import type { NoCloth } from "../watch/index.ts";
import { fits } from "./lays.ts";
import { type Planned, takenIn } from "./planned.ts";
import type { Scene } from "./scene.ts";
import { NOW } from "./tunnelProblem.ts";

/** Cloth that helps against frost, and against heat. */
const WARMS: readonly Cover["kind"][] = ["rowCover", "film"];
const COOLS: readonly Cover["kind"][] = ["shade"];

/** Why a tunnel has no cloth on that would help in an interval of the plans; null when it has, or when one is free that the plan does not want. */
export type WhyNone = (
  scene: Scene,
  plans: readonly Planned[],
  planned: Planned,
  i: number,
) => NoCloth | null;

/**
 * Why warm cloth still lies on a tunnel in the heat of an interval: the grower keeps it there, or no walk up to then has the minutes
 * to take it off beside what it has to do; null: the plan would have it so.
 */
function leftOn(
  farm: Scene["farm"],
  plans: readonly Planned[],
  { problem, schedule }: Planned,
  i: number,
): NoCloth | null {
  const { lays, possible, moves, parts, settings } = problem;
  const open = lays.flatMap(({ setting }, l) =>
    settings[setting]!.some(({ cover }) => WARMS.includes(farm.covers.get(cover)!.kind)) ? [] : [l],
  );
  if (!open.some((l) => possible[i * lays.length + l])) return "keptOn";
  const { walk: most } = farm.labour;
  if (most === null) return null;
  const minutesAt = ({ problem: of, schedule: its }: Planned, w: number, to: number): number =>
    of.moves[of.parts[w]!]!.minutes[(w === 0 ? NOW : its[w - 1]!) * of.lays.length + to]!;
  const walks = Array.from({ length: i + 1 }, (_, w) => w);
  return walks.every((w) => {
    const least = Math.min(
      ...open.map((l) => moves[parts[w]!].minutes[(w === 0 ? NOW : schedule[w - 1]!) * lays.length + l]!),
    );
    const others = plans.reduce(
      (sum, other) => (other.problem === problem ? sum : sum + minutesAt(other, w, other.schedule[w]!)),
      0,
    );
    return least + others > most;
  })
    ? "minutesOff"
    : null;
}

const lies = (
  { farm }: Scene,
  { problem, choice }: Planned,
  i: number,
  kinds: readonly Cover["kind"][],
): boolean => problem.settings[choice[i]!]!.some(({ cover }) => kinds.includes(farm.covers.get(cover)!.kind));

const noneOf =
  (kinds: readonly Cover["kind"][]): WhyNone =>
  (scene, plans, planned, i) => {
    if (lies(scene, planned, i, kinds)) return null;
    const { farm, horizon } = scene;
    const {
      at: { tunnel },
      problem: { lays, possible, moves, parts },
      schedule,
    } = planned;
    const isOne = (cover: string): boolean => kinds.includes(farm.covers.get(cover)!.kind);
    const owned = farm.pieces.filter(({ cover }) => isOne(cover));
    if (owned.length === 0) return "none";
    const long = owned.filter((piece) => fits(piece, tunnel));
    if (long.length === 0) return "tooShort";
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
  };

export const noWarmCloth: WhyNone = noneOf(WARMS);

const noShade: WhyNone = noneOf(COOLS);

/** Against heat, taking off what warms comes before any cloth that cools. */
export const noCoolCloth: WhyNone = (scene, plans, planned, i) =>
  lies(scene, planned, i, WARMS) && !lies(scene, planned, i, COOLS)
    ? leftOn(scene.farm, plans, planned, i)
    : noShade(scene, plans, planned, i);
