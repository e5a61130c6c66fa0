import type { Farm, Piece, Setting } from "../farm/index.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import { optionsOf } from "./options.ts";
import { fits, type Laid, piecesFor, type Used } from "./pieces.ts";
import type { Scene } from "./scene.ts";
import { bestSchedule } from "./search.ts";
import type { Standing } from "./standing.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import { type TunnelProblem, tunnelProblem } from "./tunnelProblem.ts";

/** A tunnel with its standings and what can be done with the pieces at hand. */
interface Open {
  readonly at: TunnelNow;
  readonly standings: readonly Standing[];
  readonly problem: TunnelProblem;
  /** Which piece each cover is. */
  readonly pieces: ReadonlyMap<string, Piece>;
}

/** A tunnel with its standings, its problem and its chosen schedule. */
export interface Planned extends Open {
  readonly choice: readonly number[];
  readonly chosen: Evaluation;
  readonly unchanged: Evaluation;
  readonly proved: boolean;
}

/** Leaving on what lies now. */
export const unchangedOf = ({ problem }: Open): readonly number[] =>
  new Array<number>(problem.intervals).fill(problem.now);

/** What one tunnel can do with the pieces left to it. */
export function openTo(scene: Scene, at: TunnelNow, standings: readonly Standing[], used: Used): Open {
  const pieces = piecesFor(scene, at, used);
  const options = optionsOf(scene.farm, at.tunnel, at.now, [...pieces.keys()]);
  const possible = (setting: Setting, interval: number): boolean =>
    setting.every(({ cover }) => pieces.get(cover)?.free(interval) ?? false);
  return {
    at,
    standings,
    problem: tunnelProblem(scene, at, options, possible, standings),
    pieces: new Map([...pieces].map(([cover, { piece }]) => [cover, piece])),
  };
}

/** The best schedule of what a tunnel can do. */
export function solve(open: Open): Planned {
  const { problem } = open;
  const { choice, proved } = bestSchedule(problem);
  return {
    ...open,
    choice,
    proved,
    chosen: evaluate(problem, choice),
    unchanged: evaluate(problem, unchangedOf(open)),
  };
}

/** What its schedule lays out. */
export const held = ({ choice, problem, pieces }: Planned): Laid => ({
  choice,
  settings: problem.settings,
  pieces,
});

/** Covers a schedule lays out that do not lie there now. */
const newCovers = ({ at, problem, choice }: Planned): readonly string[] => {
  const lying = new Set(at.now.map(({ cover }) => cover));
  return [...new Set(choice.flatMap((s) => problem.settings[s]!.map(({ cover }) => cover)))].filter(
    (cover) => !lying.has(cover),
  );
};

/** Pieces a schedule lays out that do not lie there now. */
export const newlyLaid = (planned: Planned): readonly Piece[] =>
  newCovers(planned).flatMap((cover) => planned.pieces.get(cover) ?? []);

/** A plan with the shortest pieces that fit and are free whenever it wants them; in use is what others hold. */
export function shortest(farm: Farm, planned: Planned, used: Used): Planned {
  const { at, problem, choice } = planned;
  const pieces = new Map(planned.pieces);
  for (const cover of newCovers(planned)) {
    const free = (piece: Piece): boolean =>
      choice.every(
        (s, i) =>
          !problem.settings[s]!.some((layer) => layer.cover === cover) || used.get(piece)![i]! < piece.count,
      );
    const chosen = pieces.get(cover)!;
    const [best] = farm.pieces
      .filter((piece) => piece.cover === cover && piece.length < chosen.length && fits(piece, at.tunnel))
      .filter(free)
      .sort((a, b) => a.length - b.length);
    if (best !== undefined) pieces.set(cover, best);
  }
  return { ...planned, pieces };
}

/** Every piece a schedule wants is free whenever it wants it. */
export function stillFree({ problem, choice, pieces }: Planned, used: Used): boolean {
  return choice.every((s, i) =>
    problem.settings[s]!.every(({ cover }) => {
      const piece = pieces.get(cover);
      return piece !== undefined && used.get(piece)![i]! < piece.count;
    }),
  );
}
