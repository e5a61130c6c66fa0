import { type Farm, type Piece, type Setting, settingKey, type Tunnel } from "../farm/index.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import { optionsOf } from "./options.ts";
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

/** Count of each piece in use in each interval. */
type Used = Map<Piece, Int32Array>;

const fits = (piece: Piece, tunnel: Tunnel): boolean => piece.length >= tunnel.length - 0.05;

/** The piece that lies on a tunnel as a cover now; null when the list of pieces knows none. */
function pieceNow(farm: Farm, tunnel: Tunnel, cover: string): Piece | null {
  const owned = farm.pieces.filter((piece) => piece.cover === cover);
  return (
    owned.find((piece) => piece.liesOn.includes(tunnel.id)) ??
    owned.find((piece) => fits(piece, tunnel)) ??
    null
  );
}

/** For each cover the one piece a tunnel may use: what lies on it, else the fitting one that is free longest, else shortest. */
function piecesFor(
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

/** What one tunnel can do with the pieces left to it. */
function openTo(scene: Scene, at: TunnelNow, standings: readonly Standing[], used: Used): Open {
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
function solve(open: Open): Planned {
  const { problem } = open;
  const { choice, proved } = bestSchedule(problem);
  return {
    ...open,
    choice,
    proved,
    chosen: evaluate(problem, choice),
    unchanged: evaluate(problem, new Array<number>(problem.intervals).fill(problem.now)),
  };
}

/** Pieces a schedule holds, added to or taken from what is in use. A rhythm keeps its piece by day too. */
function hold(used: Used, planned: Laid, sign: 1 | -1): void {
  planned.choice.forEach((s, i) => {
    for (const { cover } of planned.settings[s]!) {
      const piece = planned.pieces.get(cover);
      if (piece !== undefined) used.get(piece)![i]! += sign;
    }
  });
}

/** What a schedule lays out. */
interface Laid {
  readonly choice: readonly number[];
  readonly settings: readonly Setting[];
  readonly pieces: ReadonlyMap<string, Piece>;
}

const held = ({ choice, problem, pieces }: Planned): Laid => ({ choice, settings: problem.settings, pieces });

const gain = ({ chosen, unchanged }: Planned): number => chosen.worth - unchanged.worth;

/** A tunnel whose crops would more likely than not be damaged some night or day if nothing were changed. */
const inDanger = ({ problem, unchanged }: Planned): boolean =>
  unchanged.breaches.includes("frost") ||
  problem.successions.some(({ damage }) =>
    Array.from(
      { length: problem.intervals },
      (_, i) => damage[i * problem.settings.length + problem.now]!,
    ).some((p) => p >= 0.5),
  );

/**
 * Plans every tunnel, sharing the pieces by one rule: cloth stays with the tunnel it lies on until that tunnel's own plan
 * takes it off; what is free goes first to tunnels in danger, then to the one that gains most from its best plan.
 * One more round offers what was released.
 */
export function shareCovers(
  scene: Scene,
  tunnels: readonly { readonly at: TunnelNow; readonly standings: readonly Standing[] }[],
): readonly Planned[] {
  const { farm, horizon } = scene;
  const n = horizon.walks.length;
  const nothing = (): Used => new Map(farm.pieces.map((piece) => [piece, new Int32Array(n)]));
  const alone = tunnels.map(({ at, standings }) => solve(openTo(scene, at, standings, nothing())));
  const order = alone
    .map((planned, index) => ({ planned, index }))
    .sort(
      (a, b) =>
        Number(inDanger(b.planned)) - Number(inDanger(a.planned)) ||
        gain(b.planned) - gain(a.planned) ||
        a.index - b.index,
    );

  const used = nothing();
  const lyingNow = ({ at }: Planned): Laid => {
    const pieces = new Map<string, Piece>();
    for (const { cover } of at.now) {
      const piece = pieceNow(farm, at.tunnel, cover);
      if (piece !== null) pieces.set(cover, piece);
    }
    return { choice: new Array<number>(n).fill(0), settings: [at.now], pieces };
  };
  for (const planned of alone) hold(used, lyingNow(planned), 1);
  const result = [...alone];
  for (const { planned, index } of order) {
    hold(used, lyingNow(planned), -1);
    const fitting = stillFree(planned, used)
      ? planned
      : solve(openTo(scene, planned.at, planned.standings, used));
    result[index] = fitting;
    hold(used, held(fitting), 1);
  }
  for (const { planned, index } of order) {
    const first = result[index]!;
    if (first === planned) continue;
    hold(used, held(first), -1);
    const open = openTo(scene, planned.at, planned.standings, used);
    const again = sameProblem(open.problem, first.problem) ? first : solve(open);
    const better =
      again.chosen.gravity < first.chosen.gravity ||
      (again.chosen.gravity === first.chosen.gravity && again.chosen.worth > first.chosen.worth);
    result[index] = better ? again : first;
    hold(used, held(result[index]!), 1);
  }
  return result;
}

/** Every piece a schedule wants is free whenever it wants it. */
function stillFree({ problem, choice, pieces }: Planned, used: Used): boolean {
  return choice.every((s, i) =>
    problem.settings[s]!.every(({ cover }) => {
      const piece = pieces.get(cover);
      return piece !== undefined && used.get(piece)![i]! < piece.count;
    }),
  );
}

/** The same settings are possible in the same intervals: one and the same answer. */
const sameProblem = (a: TunnelProblem, b: TunnelProblem): boolean =>
  a.settings.map(settingKey).join() === b.settings.map(settingKey).join() &&
  a.possible.every((free, k) => free === b.possible[k]);
