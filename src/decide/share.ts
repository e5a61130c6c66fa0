import { type Piece, settingKey } from "../farm/index.ts";
import { inDanger, isBetter, meritGained, meritOf, NOTHING, netGained } from "./merit.ts";
import { fits, hold, type Laid, pieceNow, type Used } from "./pieces.ts";
import { held, newlyLaid, openTo, type Planned, shortest, solve, stillFree } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { Standing } from "./standing.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import type { TunnelProblem } from "./tunnelProblem.ts";

/**
 * Plans every tunnel, sharing the pieces by one rule: cloth stays with the tunnel it lies on until that tunnel's own plan
 * takes it off; what is free goes first to tunnels in danger, then to the one that gains most from its best plan, and of what
 * fits a tunnel takes the shortest. One more round offers what was released; then whoever lacks a piece is given it before the
 * tunnel that has it, as long as both together are better off.
 */
export function shareCovers(
  scene: Scene,
  tunnels: readonly { readonly at: TunnelNow; readonly standings: readonly Standing[] }[],
): readonly Planned[] {
  const { farm, horizon } = scene;
  const n = horizon.walks.length;
  const nothing = (): Used => new Map(farm.pieces.map((piece) => [piece, new Int32Array(n)]));
  const alone = tunnels.map(({ at, standings }) => solve(openTo(scene, at, standings, nothing())));
  const danger = new Set(alone.filter(inDanger).map(({ at }) => at));
  const endangered = ({ at }: Planned): boolean => danger.has(at);
  const gained = (planned: Planned): number =>
    endangered(planned) ? meritGained(planned) : netGained(planned);
  const order = alone
    .map((planned, index) => ({ planned, index }))
    .sort(
      (a, b) =>
        Number(endangered(b.planned)) - Number(endangered(a.planned)) ||
        gained(b.planned) - gained(a.planned) ||
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
  const keep = (index: number, planned: Planned): void => {
    result[index] = shortest(farm, planned, used);
    hold(used, held(result[index]!), 1);
  };
  for (const { planned, index } of order) {
    hold(used, lyingNow(planned), -1);
    const fitting = stillFree(planned, used)
      ? planned
      : solve(openTo(scene, planned.at, planned.standings, used));
    keep(index, fitting);
  }
  for (const { planned, index } of order) {
    const first = result[index]!;
    if (first.problem === planned.problem) continue;
    hold(used, held(first), -1);
    const open = openTo(scene, planned.at, planned.standings, used);
    const again = sameProblem(open.problem, first.problem) ? first : solve(open);
    keep(index, stillFree(again, used) && isBetter([again], [first], endangered) ? again : first);
  }

  /** Plans one tunnel before another that has what it lacks; true when both together are better off. */
  const tradeWith = (lacking: number, having: number): boolean => {
    const before = [result[lacking]!, result[having]!];
    for (const planned of before) hold(used, held(planned), -1);
    const [one, other] = before as [Planned, Planned];
    hold(used, lyingNow(other), 1);
    const first = shortest(farm, solve(openTo(scene, one.at, one.standings, used)), used);
    hold(used, lyingNow(other), -1);
    const isFree = stillFree(first, used);
    hold(used, held(first), 1);
    const second = shortest(farm, solve(openTo(scene, other.at, other.standings, used)), used);
    const better = isFree && stillFree(second, used) && isBetter([first, second], before, endangered);
    if (!better) hold(used, held(first), -1);
    [result[lacking], result[having]] = better ? [first, second] : (before as [Planned, Planned]);
    for (const planned of better ? [second] : before) hold(used, held(planned), 1);
    return better;
  };
  const wants = (lacking: number, having: number): boolean => {
    const { at } = alone[lacking]!;
    return (
      lacking !== having &&
      meritOf(alone[lacking]!) > meritOf(result[lacking]!) + NOTHING &&
      newlyLaid(result[having]!).some((piece) => fits(piece, at.tunnel))
    );
  };
  const places = alone.map((_, index) => index);
  while (places.some((a) => places.some((b) => wants(a, b) && tradeWith(a, b))));
  return result;
}

/** The same settings are possible in the same intervals: one and the same answer. */
const sameProblem = (a: TunnelProblem, b: TunnelProblem): boolean =>
  a.settings.map(settingKey).join() === b.settings.map(settingKey).join() &&
  a.possible.every((free, k) => free === b.possible[k]);
