import { type FarmProblem, type Lay, laysOf, type Pick, type TunnelNow } from "../../src/decide/index.ts";
import {
  type Crop,
  catalogue,
  type Farm,
  type Market,
  type Order,
  type Piece,
  type Product,
  type Setting,
  settingKey,
  type Tunnel,
} from "../../src/farm/index.ts";
import { addDays, HOUR, type Instant, instantAt, kilogram, metre } from "../../src/quantity/index.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { type Dice, seeded } from "./dice.ts";
import { type Ahead, randomTunnel } from "./randomTunnel.ts";

/** How large a random farm is: least and most. */
export interface Size {
  readonly tunnels: readonly [number, number];
  readonly walks: readonly [number, number];
  readonly lays: readonly [number, number];
  readonly successions: readonly [number, number];
  readonly outlets: number;
  readonly changesPerWeek: readonly [number, number];
}

/** Small enough to try every plan. */
export const SMALL: Size = {
  tunnels: [3, 3],
  walks: [3, 4],
  lays: [4, 5],
  successions: [1, 2],
  outlets: 2,
  changesPerWeek: [2, 3],
};

/** Small enough to make every schedule with its cuts a column. */
export const MIDDLE: Size = {
  tunnels: [11, 13],
  walks: [8, 8],
  lays: [4, 4],
  successions: [1, 2],
  outlets: 3,
  changesPerWeek: [1, 2],
};

/** A week of a real farm. */
export const LARGE: Size = {
  tunnels: [10, 40],
  walks: [14, 14],
  lays: [4, 6],
  successions: [1, 2],
  outlets: 3,
  changesPerWeek: [1, 2],
};

const { settings, crops: CROPS } = catalogue();
const example = exampleFarm();
const MONDAY = "2026-05-04";
const COVERS = ["shade-40", "row-cover-19", "row-cover-30"] as const;
const SETTINGS: readonly Setting[] = [
  [],
  ...COVERS.map((cover): Setting => [{ cover, state: "on" }]),
  ...COVERS.slice(1).map((cover): Setting => [{ cover, state: "nights" }]),
];

const orders = (dice: Dice, markets: readonly Market[], typical: number): readonly Order[] =>
  markets.flatMap(({ id }) =>
    Array.from({ length: dice.happens(0.6) ? dice.whole(1, 2) : 0 }, () => ({
      market: id,
      weight: kilogram(typical * dice.between(0.08, 0.35)),
      short: dice.happens(0.5) ? dice.between(1, 25) : null,
    })),
  );

/** A product for most crops, and mixes, some with crops that may stand in for others. */
function products(
  dice: Dice,
  crops: readonly Crop[],
  markets: readonly Market[],
  typical: number,
): readonly Product[] {
  const named = (id: string, parts: Product["parts"], low: number, high: number): Product => ({
    id,
    name: id,
    parts,
    price: dice.happens(0.1) ? null : dice.between(low, high),
    stall: dice.happens(0.65) ? kilogram(typical * dice.between(0.15, 0.7)) : null,
    orders: orders(dice, markets, typical),
  });
  const single = crops
    .filter(() => dice.happens(0.85))
    .map(({ id }) => named(id, [{ crop: id, share: 1, swaps: [] }], 10, 24));
  const mixes = Array.from({ length: crops.length > 1 ? dice.whole(0, 2) : 0 }, (_, m) => {
    const [a, b, ...rest] = dice.shuffled(crops.map(({ id }) => id));
    const others = [a!, b!].map((crop) => ({
      crop,
      share: dice.between(0.2, 0.8),
      swaps: rest.filter(() => dice.happens(0.5)),
    }));
    return named(`mix ${m}`, others, 16, 32);
  });
  return [...single, ...mixes];
}

/** Moments to pick for one or two markets, in and just beyond the time planned. */
function picks(dice: Dice, markets: readonly Market[], first: Instant, walks: number): readonly Pick[] {
  return Array.from({ length: dice.whole(2, 4) }, () => {
    // Where there are few walks, not before something can have been done.
    const hours = dice.whole(walks < 6 ? walks * 6 : 6, walks * 12 + 12);
    const date = addDays(MONDAY, Math.floor((hours + 6) / 24));
    const before = dice.whole(0, 1);
    return {
      market: dice.one(markets),
      marketDate: addDays(date, before),
      at: (first + hours * HOUR) as Instant,
      date,
      planned: hours < walks * 12,
    };
  });
}

/** Pieces of some lengths and counts, fewer than the tunnels that could use them; one may be wide enough for neighbours. */
function piecesFor(dice: Dice, tunnels: number): readonly Piece[] {
  const each = COVERS.flatMap((cover) =>
    Array.from({ length: dice.happens(tunnels < 5 ? 1 : 0.85) ? dice.whole(1, 2) : 0 }, (_, p) => ({
      id: `${cover} ${p}`,
      cover,
      length: metre(p === 0 ? 30 : dice.between(10, 25)),
      count: Math.max(1, Math.round(tunnels * dice.between(0.1, 0.45))),
      spans: 1,
      liesOn: [],
    })),
  );
  const wide: Piece = {
    id: "wide",
    cover: dice.one(COVERS.slice(1)),
    length: metre(30),
    count: 1,
    spans: 2,
    liesOn: [],
  };
  return dice.happens(0.4) ? [...each, wide] : each;
}

/** What lies on each tunnel now: bare ground or one of the pieces, as long as there are any; a wide one over two neighbours. */
function lyingNow(dice: Dice, tunnels: readonly Tunnel[], owned: readonly Piece[]) {
  const now = new Map<string, Setting>(tunnels.map(({ id }) => [id, []]));
  const liesOn = new Map(owned.map(({ id }) => [id, [] as string[]]));
  const lay = ({ id, cover }: Piece, on: readonly Tunnel[]): void => {
    for (const tunnel of on) {
      now.set(tunnel.id, [{ cover, state: dice.happens(0.95) ? "on" : "nights" }]);
      liesOn.get(id)!.push(tunnel.id);
    }
  };
  for (const piece of owned) {
    const free = tunnels.filter(({ id, length }) => now.get(id)!.length === 0 && piece.length >= length);
    if (piece.spans > 1) {
      const from = tunnels.findIndex((tunnel, t) => free.includes(tunnel) && free.includes(tunnels[t + 1]!));
      if (from >= 0 && dice.happens(0.5)) {
        const pair = tunnels.slice(from, from + 2);
        lay(piece, pair);
        now.set(pair[1]!.id, now.get(pair[0]!.id)!);
      }
    } else for (const tunnel of free.slice(0, piece.count)) if (dice.happens(0.45)) lay(piece, [tunnel]);
  }
  return { now, pieces: owned.map((piece) => ({ ...piece, liesOn: liesOn.get(piece.id)! })) };
}

/** Some of the lays a tunnel could have, what lies now first; neighbours keep the same ones. */
function someLays(
  all: readonly Lay[],
  options: readonly Setting[],
  most: number,
  liking: (key: string) => number,
) {
  const keyOf = ({ setting, taken }: Lay): string =>
    `${settingKey(options[setting]!)} ${taken.map(({ piece, over }) => `${piece?.id} ${over.join(" ")}`)}`;
  const [now, ...others] = all;
  return [now!, ...others.sort((a, b) => liking(keyOf(a)) - liking(keyOf(b))).slice(0, most - 1)];
}

/** A farm's problem made directly, without weather: everything that tunnels share may bind. */
export function randomFarm(seed: number, size: Size): FarmProblem {
  const dice = seeded(seed);
  const first = instantAt(example.place.zone, MONDAY, 6);
  const [count, walks] = [dice.whole(...size.tunnels), dice.whole(...size.walks)];
  const tunnels = Array.from(
    { length: count },
    (_, t): Tunnel => ({
      id: `tunnel ${t + 1}`,
      name: `tunnel ${t + 1}`,
      length: metre(dice.between(12, 30)),
      hoops: "wire",
      beds: 1,
    }),
  );
  const markets = Array.from(
    { length: dice.whole(1, 2) },
    (_, m): Market => ({ id: `market ${m + 1}`, name: `market ${m + 1}`, weekday: 6, picks: [] }),
  );
  const crops = dice.shuffled([...CROPS.values()]).slice(0, dice.whole(1, 4));
  const { now, pieces } = lyingNow(dice, tunnels, piecesFor(dice, count));
  const bed = 9;
  const beds = (count * (size.successions[0] + size.successions[1])) / 2;
  // What one pick and crop sees of all beds, roughly.
  const typical = (beds * bed) / (2 * crops.length);
  const some = <Most>(chance: number, most: () => Most): Most | null =>
    dice.happens(chance) ? most() : null;
  const farm: Farm = {
    ...example,
    currency: dice.happens(0.85) ? "$" : null,
    markets,
    products: products(dice, crops, markets, typical),
    tunnels,
    sideBySide: [tunnels.map(({ id }) => id)],
    pieces,
    successions: [],
    notes: [],
    labour: {
      wage: dice.between(2, 15),
      pace: 1,
      cutting: 2,
      walk: some(0.6, () => Math.max(walks < 6 ? 35 : 20, count * dice.between(0.7, 4))),
      picking: some(0.6, () => Math.max(30, beds * dice.between(2, 10))),
    },
    handling: {
      washing: some(0.5, () => kilogram(Math.max(7, beds * dice.between(0.5, 3)))),
      cooler: some(0.5, () => kilogram(Math.max(7, beds * dice.between(0.5, 3)))),
    },
  };
  const week = Math.ceil(walks * (walks < 9 && dice.happens(0.3) ? 0.5 : 1));
  const groups = Array.from({ length: dice.whole(2, 3) }, () => dice.between(0.3, 1));
  // Where there are few walks each stands for several days and nights.
  const nights = walks < 6 ? 2 : 1;
  const grows = (dice.between(60, 150) * (walks < 6 ? 3 : 1)) / walks;
  const ahead: Ahead = {
    farm,
    crops,
    first,
    walks,
    week: Array.from({ length: walks }, (_, i) => Math.floor(i / week)),
    picks: picks(dice, markets, first, walks),
    weathers: groups.map((share) => share / groups.reduce((sum, each) => sum + each, 0)),
    growth: Array.from(
      { length: walks },
      (_, i) => grows * dice.between(0.6, 1.4) * (i % 2 === 0 ? 1.4 : 0.6),
    ),
    heat: Array.from({ length: walks }, (_, i) =>
      i % 2 === 0 && dice.happens(0.3) ? dice.between(5, 40) : 0,
    ),
    danger: Array.from({ length: walks }, (_, i) =>
      i % 2 === 1 && dice.happens(0.7) ? nights * dice.between(0.1, 2) : 0.001,
    ),
    windy: Array.from({ length: walks }, () => dice.happens(0.06)),
    frozen: Array.from({ length: walks }, (_, i) => i % 2 === 0 && dice.happens(0.1)),
    frozenThrough: Array.from({ length: walks }, (_, i) => i % 2 === 0 && dice.happens(0.03)),
    snow: Array.from({ length: walks }, () => dice.happens(0.06)),
    troubled: dice.happens(0.25),
    changesPerWeek: dice.whole(...size.changesPerWeek),
    successions: size.successions,
    outlets: size.outlets,
  };
  const liked = new Map<string, number>();
  const liking = (key: string): number => {
    if (!liked.has(key)) liked.set(key, dice());
    return liked.get(key)!;
  };
  const takenNow = (id: string): TunnelNow["taken"] =>
    now.get(id)!.map((layer) => {
      const piece = farm.pieces.find(({ cover, liesOn }) => cover === layer.cover && liesOn.includes(id))!;
      return { ...layer, piece, over: piece.spans > 1 ? piece.liesOn : [id] };
    });
  return {
    farm,
    settings,
    picks: [],
    keptCold: [],
    tunnels: tunnels.map((tunnel) => {
      const lying = now.get(tunnel.id)!;
      const options = [
        ...new Map([...SETTINGS, lying].map((setting) => [settingKey(setting), setting] as const)).values(),
      ];
      const at = { tunnel, now: lying, taken: takenNow(tunnel.id) } as unknown as TunnelNow;
      const lays = someLays([...laysOf(farm, at, options)], options, dice.whole(...size.lays), liking);
      return { id: tunnel.id, problem: randomTunnel(dice, tunnel, options, lays, ahead) };
    }),
  };
}
