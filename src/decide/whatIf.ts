import type { Farm, Market, Piece } from "../farm/index.ts";
import { addDays, instantAt, localHour, startOf, type UtcHour } from "../quantity/index.ts";
import { planTogether } from "./joint.ts";
import { fits, type Taken } from "./lays.ts";
import type { Pick, WhatIf } from "./outcome.ts";
import type { FarmPlan } from "./planned.ts";
import { restated } from "./restated.ts";
import type { Scene } from "./scene.ts";
import { moreThan } from "./settled.ts";
import type { Solver } from "./solver.ts";
import type { FarmProblem } from "./together.ts";
import { tunnelProblem } from "./tunnelProblem.ts";

/** Of each cover owned the length that is the shortest to fit for the most tunnels; of two the shorter. */
function wantedPieces({ pieces, tunnels }: Farm): readonly Piece[] {
  return [...new Set(pieces.map(({ cover }) => cover))].flatMap((cover) => {
    const owned = pieces.filter((piece) => piece.cover === cover).sort((a, b) => a.length - b.length);
    const wanted = tunnels
      .filter(({ hoops }) => hoops !== null)
      .map((tunnel) => owned.find((piece) => fits(piece, tunnel)));
    const wants = (piece: Piece): number => wanted.filter((each) => each === piece).length;
    const top = owned.reduce((a, b) => (wants(b) > wants(a) ? b : a));
    return wants(top) > 0 ? [top] : [];
  });
}

/** Picks on the market's own day are cut in the morning, or nobody could sell them. judgement */
const NOON = 12;

/** A pick moved by a day; as it is where that has gone by, or would be too late for its market. */
function moved({ farm, weather, horizon }: Scene, pick: Pick, days: -1 | 1): Pick {
  const { zone } = farm.place;
  const date = addDays(pick.date, days);
  const hour = localHour(zone, pick.at);
  const at = instantAt(zone, date, hour);
  const late = date > pick.marketDate || (date === pick.marketDate && hour >= NOON);
  if (late || at < horizon.on) return pick;
  return { ...pick, date, at, planned: at <= startOf((weather.first + horizon.end) as UtcHour) };
}

/** The scene with a market's picks moved by a day; null where none of those planned can be. */
function withMoved(scene: Scene, market: Market, days: -1 | 1): Scene | null {
  const picks = scene.picks.map((pick) => (pick.market.id === market.id ? moved(scene, pick, days) : pick));
  if (!picks.some((pick, i) => pick !== scene.picks[i] && scene.picks[i]!.planned)) return null;
  return { ...scene, picks: [...picks].sort((a, b) => a.at - b.at) };
}

const withFarm = (scene: Scene, changed: Partial<Farm>): Scene => ({
  ...scene,
  farm: { ...scene.farm, ...changed },
});

/** The same piece lies, as another farm lists it. */
const inList =
  ({ pieces }: Farm) =>
  (taken: Taken): Taken => ({ ...taken, piece: pieces.find(({ id }) => id === taken.piece?.id) ?? null });

/** Hands for who states none. judgement [min] */
const SOME = 60;

const twice = (minutes: number | null): number | null =>
  minutes === 0 ? SOME : minutes === null ? null : 2 * minutes;

/** What would be worth having: the farm planned anew with each, the most worth first. */
export function whatIfs(scene: Scene, plan: FarmPlan, solver: Solver): readonly WhatIf[] {
  const { farm, settings } = scene;
  const plannedWith = (other: Scene): Omit<WhatIf, "kind"> => {
    const problem: FarmProblem = {
      farm: other.farm,
      settings,
      picks: plan.problem.picks,
      keptCold: plan.problem.keptCold,
      tunnels: plan.plans.map(({ at, standings }) => ({
        id: at.tunnel.id,
        problem: tunnelProblem(other, { ...at, taken: at.taken.map(inList(other.farm)) }, standings),
      })),
    };
    const joint = planTogether(problem, solver, restated(plan.joint.weighed, plan.problem, problem));
    return moreThan(joint, plan.joint);
  };
  const pieces = wantedPieces(farm).map((piece): WhatIf => {
    const more = farm.pieces.map((each) => (each === piece ? { ...each, count: each.count + 1 } : each));
    return { kind: "piece", piece, ...plannedWith(withFarm(scene, { pieces: more })) };
  });
  const { walk, picking } = farm.labour;
  const labour = { ...farm.labour, walk: twice(walk), picking: twice(picking) };
  const hands: readonly WhatIf[] =
    walk === null && picking === null ? [] : [{ kind: "hands", ...plannedWith(withFarm(scene, { labour })) }];
  const days = farm.markets.flatMap((market) =>
    ([-1, 1] as const).flatMap((by): readonly WhatIf[] => {
      const other = withMoved(scene, market, by);
      return other === null ? [] : [{ kind: "pick", market, days: by, ...plannedWith(other) }];
    }),
  );
  return [...pieces, ...hands, ...days].sort((a, b) => b.worth - a.worth);
}
