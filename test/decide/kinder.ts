import type { FarmProblem, TunnelProblem } from "../../src/decide/index.ts";
import type { Piece } from "../../src/farm/index.ts";
import { kilogram } from "../../src/quantity/index.ts";

/** A farm beside another that can do all the other can, and more or the same. */
export interface Pair {
  readonly name: string;
  readonly less: FarmProblem;
  readonly more: FarmProblem;
  /** Both are the same farm told otherwise. */
  readonly same: boolean;
}

const tunnelsBy = (
  problem: FarmProblem,
  change: (each: TunnelProblem, t: number) => TunnelProblem,
): FarmProblem => ({
  ...problem,
  tunnels: problem.tunnels.map(({ id, problem: each }, t) => ({ id, problem: change(each, t) })),
});

/** One more of each piece. */
function morePieces(problem: FarmProblem): FarmProblem {
  const known = new Map<Piece, Piece>();
  const more = (piece: Piece | null): Piece | null => {
    if (piece === null) return null;
    if (!known.has(piece)) known.set(piece, { ...piece, count: piece.count + 1 });
    return known.get(piece)!;
  };
  return tunnelsBy(problem, (each) => ({
    ...each,
    lays: each.lays.map(({ setting, taken }) => ({
      setting,
      taken: taken.map((layer) => ({ ...layer, piece: more(layer.piece) })),
    })),
  }));
}

function moreHands(problem: FarmProblem): FarmProblem {
  const { labour, handling } = problem.farm;
  const by = (most: number | null): number | null => (most === null ? null : most * 1.2);
  const cold = (most: number | null) => (most === null ? null : kilogram(most * 1.2));
  return {
    ...problem,
    farm: {
      ...problem.farm,
      labour: { ...labour, walk: by(labour.walk), picking: by(labour.picking) },
      handling: { washing: cold(handling.washing), cooler: cold(handling.cooler) },
    },
  };
}

/** Every lay of one cover out of reach, except where it lies now or the grower keeps it. */
function withoutCover(problem: FarmProblem, cover: string): FarmProblem {
  return tunnelsBy(problem, (each) => {
    const L = each.lays.length;
    const has = (l: number): boolean => l > 0 && each.lays[l]!.taken.some((layer) => layer.cover === cover);
    return {
      ...each,
      possible: each.possible.map((open, k) =>
        has(k % L) &&
        each.possible.some(
          (other, m) => other === 1 && Math.floor(m / L) === Math.floor(k / L) && !has(m % L),
        )
          ? 0
          : open,
      ),
    };
  });
}

/** Orders cost when they go short, so a market more is compared where nobody ordered anything. */
const withoutOrders = (problem: FarmProblem): FarmProblem => ({
  ...problem,
  farm: { ...problem.farm, products: problem.farm.products.map((product) => ({ ...product, orders: [] })) },
});

const withoutMarket = (problem: FarmProblem, market: string): FarmProblem =>
  tunnelsBy(problem, (each) => ({
    ...each,
    successions: each.successions.map((table) => {
      const outlets = table.outlets.filter(({ fate }) => fate.pick.market.id !== market);
      return { ...table, outlets, mustCut: table.mustCut && outlets.length > 0 };
    }),
  }));

/** What lies now held on the first tunnel, where it may. */
const held = (problem: FarmProblem): FarmProblem =>
  tunnelsBy(problem, (each, t) => {
    const L = each.lays.length;
    const may = each.possible.every((open, k) => k % L !== 0 || open === 1);
    return t > 0 || !may ? each : { ...each, possible: each.possible.map((_, k) => Number(k % L === 0)) };
  });

/** Every bed of the second tunnel must be cut. */
const mustCut = (problem: FarmProblem): FarmProblem =>
  tunnelsBy(problem, (each, t) =>
    t !== 1
      ? each
      : {
          ...each,
          successions: each.successions.map((table) => ({ ...table, mustCut: table.outlets.length > 0 })),
        },
  );

/** Cuts that do not pay are the grower's to order and not the plan's to offer, so the two are compared where every cut may be offered. */
const everyCutPays = (problem: FarmProblem): FarmProblem =>
  tunnelsBy(problem, (each) => ({
    ...each,
    successions: each.successions.map((table) => ({
      ...table,
      outlets: table.outlets.map((outlet) => ({
        ...outlet,
        pays: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
      })),
    })),
  }));

/** The same farm in another order, by other names. */
function renamed(problem: FarmProblem): FarmProblem {
  const name = (id: string): string => `the ${id.split(" ")[1]}th`;
  const pieces = new Map<Piece, Piece>();
  const other = (piece: Piece | null): Piece | null => {
    if (piece === null) return null;
    if (!pieces.has(piece)) pieces.set(piece, { ...piece, id: `cloth ${pieces.size}` });
    return pieces.get(piece)!;
  };
  return {
    ...problem,
    tunnels: [...problem.tunnels].reverse().map(({ id, problem: each }) => ({
      id: name(id),
      problem: {
        ...each,
        lays: each.lays.map(({ setting, taken }) => ({
          setting,
          taken: taken.map((layer) => ({ ...layer, piece: other(layer.piece), over: layer.over.map(name) })),
        })),
      },
    })),
  };
}

/** Farms that can do more than a farm, and less, and the same. */
export function pairsOf(problem: FarmProblem): readonly Pair[] {
  const pair = (name: string, less: FarmProblem, more: FarmProblem): Pair => ({
    name,
    less,
    more,
    same: false,
  });
  const cover = problem.tunnels.flatMap(({ problem: each }) =>
    each.lays.slice(1).flatMap(({ taken }) => taken),
  )[0]?.cover;
  const market = problem.tunnels.flatMap(({ problem: each }) =>
    each.successions.flatMap(({ outlets }) => outlets.map(({ fate }) => fate.pick.market.id)),
  )[0];
  const noOrders = withoutOrders(problem);
  const anyCut = everyCutPays(problem);
  return [
    pair("one more piece of each", problem, morePieces(problem)),
    pair("a fifth more minutes and cold room", problem, moreHands(problem)),
    ...(cover === undefined ? [] : [pair("one more cover", withoutCover(problem, cover), problem)]),
    ...(market === undefined ? [] : [pair("a market more", withoutMarket(noOrders, market), noOrders)]),
    pair("one tunnel not held", held(problem), problem),
    pair("a bed that need not be cut", mustCut(anyCut), anyCut),
    { name: "renamed and in another order", less: renamed(problem), more: problem, same: true },
  ];
}
